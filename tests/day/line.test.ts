import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { MORNING, type Speaker, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

const numbers = (day: Day): number[] => takesInOrder(day).map(({ number }) => number);

describe('the line', () => {
  test('keeps the order in which things were said', () => {
    const phone = speaker();
    for (const number of [1, 2, 3]) phone.say(take('24', 1, number));
    expect(numbers(phone.day())).toEqual([1, 2, 3]);
  });

  test('puts a take before an earlier one, and back where it was said', () => {
    const phone = speaker();
    const [first, , third] = [1, 2, 3].map((number) => phone.id(take('24', 1, number)));
    phone.say({ kind: 'fact-moved', target: third!, to: first! });
    expect(numbers(phone.day())).toEqual([3, 1, 2]);
    phone.say({ kind: 'fact-moved', target: third!, to: null });
    expect(numbers(phone.day())).toEqual([1, 2, 3]);
  });

  test('lets the later said stand later when two are put before one take', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const at = phone.id(take('24', 1, 1));
    const early = phone.id({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora', before: at });
    phone.say({ kind: 'fact-moved', target: early, to: at });
    expect(answersAtTake(phone.day(), at).tracks[2]!.name).toBe('Ines');
  });

  test('keeps the place of what was put before a take that is then taken back', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    const [first, second, third] = [1, 2, 3].map((number) => phone.id(take('24', 1, number)));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora', before: second });
    phone.say({ kind: 'fact-retracted', targets: [second!], by: 'hand' });
    const day = phone.day();
    expect(numbers(day)).toEqual([1, 3]);
    expect([first!, third!].map((id) => answersAtTake(day, id).tracks[2]!.name)).toEqual(['Ines', 'Dora']);
  });

  test('survives takes that two phones put before each other: the placement said first gives way', () => {
    const phone = speaker();
    const [first, second] = [1, 2].map((number) => phone.id(take('24', 1, number)));
    phone.say({ kind: 'fact-moved', target: first!, to: second! });
    phone.say({ kind: 'fact-moved', target: second!, to: first! });
    expect(numbers(phone.day())).toEqual([2, 1]);
  });

  test('survives placements nested as deep as there are takes', () => {
    const phone = speaker();
    const ids = Array.from({ length: 5000 }, (_, at) => phone.id(take('24', 1, at + 1)));
    for (let at = 1; at < ids.length; at += 1)
      phone.say({ kind: 'fact-moved', target: ids[at]!, to: ids[at - 1]! });
    expect(numbers(phone.day()).slice(0, 2)).toEqual([5000, 4999]);
  });
});

describe('taking back', () => {
  test('undoes a fact, and taking that back restores it', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const worn = phone.id({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    const name = (): string => answersNow(phone.day()).tracks[2]!.name;
    expect(name()).toBe('Ines');
    const back = phone.id({ kind: 'fact-retracted', targets: [worn], by: 'hand' });
    expect(name()).toBe('');
    phone.say({ kind: 'fact-retracted', targets: [back], by: 'hand' });
    expect(name()).toBe('Ines');
  });

  test('ignores a forged retraction of something said later', () => {
    const phone = speaker();
    phone.say({ kind: 'fact-retracted', targets: ['zzzzzz-phonea00000'], by: 'hand' });
    phone.say(take('24', 1, 1));
    expect(numbers(phone.day())).toEqual([1]);
  });
});

describe('two phones', () => {
  const pair = (): { a: Speaker; b: Speaker } => {
    const a = speaker('phonea');
    a.say(...SMALL_RIG, ...SMALL_CAST);
    const b = speaker('phoneb');
    return { a, b };
  };
  /** Facts of b that knew of everything a had said. */
  const informed = (a: Speaker, counter: number, draft: Draft): Fact[] =>
    stampFacts([draft], {
      day: 'day-1',
      at: MORNING,
      zone: 0,
      seen: { phonea: a.facts.length },
      nextId: idSource('phoneb00000', counter).next,
    });

  test('contradict each other when neither knew, and a later word settles it', () => {
    const { a, b } = pair();
    a.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    b.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
    const both = [...a.facts, ...b.facts];
    expect(conflictsOf(foldDay('day-1', both))).toMatchObject([{ kind: 'link-conflict', link: 'worn:A1' }]);
    const settled = stampFacts([{ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' }], {
      day: 'day-1',
      at: MORNING,
      zone: 0,
      seen: { phoneb: 1 },
      nextId: idSource('phonea00000', 50).next,
    });
    expect(conflictsOf(foldDay('day-1', [...both, ...settled]))).toEqual([]);
  });

  test('do not contradict each other when the second knew of the first, or both said the same', () => {
    const { a, b } = pair();
    a.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    const knowing = informed(a, 60, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
    expect(conflictsOf(foldDay('day-1', [...a.facts, ...knowing]))).toEqual([]);
    b.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    expect(conflictsOf(foldDay('day-1', [...a.facts, ...b.facts]))).toEqual([]);
  });

  test('show one take number that both logged, but not a false start or a pickup beside it', () => {
    const { a, b } = pair();
    a.say(take('24', 1, 1));
    b.say(take('24', 1, 1));
    b.say(take('24', 1, 1, { falseStart: true }), take('24', 1, 1, { kind: 'pickup' }));
    const all = conflictsOf(foldDay('day-1', [...a.facts, ...b.facts]));
    const conflicts = all.filter(({ kind }) => kind === 'take-twice');
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({ kind: 'take-twice', takes: [{ number: 1 }, { number: 1 }] });
  });
});

/** Anything anybody might say, about few things so that they meet. */
const anyDraft = (known: readonly string[]): fc.Arbitrary<Draft> => {
  const transmitter = fc.constantFrom('A1', 'A2', 'A3');
  const voice = fc.constantFrom('ines', 'dora', 'tomas', null);
  const target = known.length > 0 ? fc.constantFrom(...known) : fc.constant('000001-phonea00000');
  const before = fc.option(target, { nil: undefined });
  return fc.oneof(
    fc.record({ kind: fc.constant('transmitter-worn' as const), transmitter, voice, before }),
    fc.record({
      kind: fc.constant('channels-tuned' as const),
      tunings: fc.array(
        fc.record({ channel: fc.constantFrom('near1', 'near2'), transmitter: fc.option(transmitter) }),
        { minLength: 1, maxLength: 2 },
      ),
      before,
    }),
    fc.record({ number: fc.integer({ min: 1, max: 4 }) }).map(({ number }) => take('24', 1, number)),
    fc.record({ kind: fc.constant('fact-moved' as const), target, to: fc.option(target) }),
    fc.record({
      kind: fc.constant('fact-retracted' as const),
      targets: fc.array(target, { minLength: 1, maxLength: 3 }),
      by: fc.constantFrom('hand' as const, 'undo' as const),
    }),
    fc.record({
      kind: fc.constant('mute-set' as const),
      what: fc.constant('input' as const),
      part: fc.constantFrom('aes1', 'aes2'),
      muted: fc.boolean(),
      before,
    }),
  );
};

/** Facts of a few actions, each of which may speak of any before it. */
const anyFacts = fc.array(fc.nat(), { minLength: 1, maxLength: 40 }).chain((seeds) => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  for (const seed of seeds) {
    const known = phone.facts.map(({ id }) => id);
    phone.say(fc.sample(anyDraft(known), { seed, numRuns: 1 })[0]!);
  }
  return fc.constant(phone.facts);
});

const picture = (day: Day) => ({
  line: day.line.map(({ fact, takenBack }) => [fact.id, takenBack]),
  takes: takesInOrder(day).map((one) => [
    one.number,
    answersAtTake(day, one.id).tracks.map(({ name, state }) => [name, state]),
  ]),
  now: answersNow(day).summary,
});

describe('folding', () => {
  const SEED = 20261007;

  test(`gives the same day in pieces, in one, and in any order (seed ${SEED})`, () => {
    fc.assert(
      fc.property(anyFacts, fc.nat(), (facts, cut) => {
        const whole = picture(foldDay('day-1', facts));
        const at = cut % facts.length;
        const pieces = facts
          .slice(at)
          .reduce((day, fact) => appendFacts(day, [fact]), foldDay('day-1', facts.slice(0, at)));
        expect(picture(pieces)).toEqual(whole);
        expect(picture(foldDay('day-1', facts.toReversed()))).toEqual(whole);
      }),
      { seed: SEED, numRuns: 150 },
    );
  });

  test(`is as before when something is taken back and brought back (seed ${SEED})`, () => {
    fc.assert(
      fc.property(anyFacts, fc.nat(), (facts, pick) => {
        const before = picture(foldDay('day-1', facts));
        const ids = idSource('phonec00000', 500);
        const say = (draft: Draft): Fact[] =>
          stampFacts([draft], { day: 'day-1', at: MORNING, zone: 0, nextId: ids.next });
        const back = say({ kind: 'fact-retracted', targets: [facts[pick % facts.length]!.id], by: 'undo' });
        const again = say({ kind: 'fact-retracted', targets: [back[0]!.id], by: 'redo' });
        expect(picture(foldDay('day-1', [...facts, ...back, ...again]))).toEqual(before);
      }),
      { seed: SEED, numRuns: 100 },
    );
  });

  test('keeps the id and the notes of a take whose fields a stranger has given those names', () => {
    const phone = speaker();
    const one = phone.id(take('24', 1, 1));
    phone.say({ kind: 'take-described', take: one, fields: { circled: true } });
    phone.say({ kind: 'note-added', take: one, text: 'rustle' });
    const strange = phone.facts.map((fact) =>
      'fields' in fact ? { ...fact, fields: { ...fact.fields, id: 'none', notes: 5 } } : fact,
    ) as Fact[];
    const described = { id: one, circled: true, notes: [{ text: 'rustle' }] };
    expect(takesInOrder(foldDay('day-1', strange))).toMatchObject([described]);
    const pieces = strange.reduce((day, fact) => appendFacts(day, [fact]), foldDay('day-1', []));
    expect(takesInOrder(pieces)).toMatchObject([described]);
  });

  test('leaves a take that somebody holds as it is when more is said of it', () => {
    const phone = speaker();
    const one = phone.id(take('24', 1, 1));
    phone.say({ kind: 'note-added', take: one, text: 'rustle' });
    const day = phone.day();
    const [held] = takesInOrder(day);
    const ids = idSource('phonea00000', 100);
    const said: Draft[] = [
      { kind: 'take-described', take: one, fields: { circled: true } },
      { kind: 'note-added', take: one, text: 'plane' },
    ];
    const next = appendFacts(day, stampFacts(said, { day: 'day-1', at: MORNING, zone: 0, nextId: ids.next }));
    expect(held).toMatchObject({ circled: false, notes: [{ text: 'rustle' }] });
    expect(takesInOrder(next)).toMatchObject([
      { circled: true, notes: [{ text: 'rustle' }, { text: 'plane' }] },
    ]);
  });

  test('does not change the facts it is given', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const one = phone.id(take('24', 1, 1));
    phone.say({ kind: 'take-described', take: one, fields: { circled: true } });
    phone.say({ kind: 'note-added', take: one, text: 'rustle' });
    const before = structuredClone(phone.facts);
    const day = foldDay('day-1', phone.facts);
    answersNow(day);
    expect(phone.facts).toEqual(before);
  });

  test('gives the same links from a checkpoint as from the start, at every place of a long line', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    for (let at = 0; at < 200; at += 1) {
      phone.say({
        kind: 'transmitter-worn',
        transmitter: `A${(at % 3) + 1}`,
        voice: ['ines', 'dora', null][at % 3]!,
      });
      if (at % 4 === 0) phone.say(take('24', 1, at + 1));
    }
    const day = phone.day();
    const all = phone.facts;
    for (const one of takesInOrder(day)) {
      const until = foldDay(
        'day-1',
        all.filter(({ id }) => id < one.id),
      );
      expect(answersAtTake(day, one.id).tracks.map(({ name }) => name)).toEqual(
        answersNow(until).tracks.map(({ name }) => name),
      );
    }
  });
});
