import fc from 'fast-check';
import { expect, test } from 'vitest';
import { answersAt, answersFrom } from '../../../src/day/answers/answers.ts';
import { linksAt } from '../../../src/day/chain/links.ts';
import { appendFacts, chainAt, foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { idSource } from '../../../src/shared/ids.ts';
import { expectSame } from '../../expect-same.ts';
import { MORNING, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { SetPhone } from '../three-phones.ts';

const SEED = 20_261_126;

/** Everything that a day says, with its maps in their order; chains by which places have one in common. */
function saidBy(day: Day) {
  const chains = [...day.line.keys(), day.line.length].map((at) => chainAt(day, at));
  return {
    ...day,
    line: day.line.map(({ fact, takenBack, resolved, place }) => ({ fact, takenBack, resolved, place })),
    takeItems: new Map([...day.takeItems].map(([take, item]) => [take, day.line.indexOf(item)])),
    changed: chains.slice(1).map((chain, at) => chain !== chains[at]),
    takes: [...day.takes],
    voices: [...day.voices],
    tail: [...day.tail],
    memory: { checkpoints: day.memory.checkpoints.map((links) => [...links]) },
  };
}

function expectFoldedAtOnce(day: Day): void {
  expectSame(saidBy(day), saidBy(foldDay(day.id, day.facts)));
  for (const at of [...day.line.keys(), day.line.length].reverse()) {
    const { links, roll, ...answers } = answersAt(day, at);
    const { links: alone, roll: aloneRoll, ...others } = answersFrom(day, linksAt(day, at));
    expectSame([answers, roll, [...links]], [others, aloneRoll, [...alone]]);
  }
}

type Saying = Draft | { readonly back: number } | { readonly beforeTake: number };

const sayings: fc.Arbitrary<Saying> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ back: fc.nat({ max: 6 }) }) },
  { weight: 2, arbitrary: fc.record({ beforeTake: fc.nat() }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('transmitter-worn' as const),
      transmitter: fc.constantFrom('A1', 'A2', 'A3'),
      voice: fc.constantFrom('ines', 'dora', null),
    }),
  },
  { weight: 3, arbitrary: fc.nat({ max: 9 }).map((number) => take('24', 1, number + 1)) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('roll-changed' as const),
      roll: fc.constantFrom('R1', 'R2', 'R3'),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.constant<Draft>({ kind: 'take-described', take: 'last', fields: { circled: true } }),
  },
  { weight: 2, arbitrary: fc.constant<Draft>({ kind: 'note-added', take: 'last', text: 'plane' }) },
  {
    weight: 1,
    arbitrary: fc.constant<Draft>({ kind: 'voice-described', voice: 'ines', fields: { part: 'Mrs Halm' } }),
  },
  {
    weight: 1,
    arbitrary: fc.constant<Draft>({ kind: 'day-described', fields: { production: 'The lock' } }),
  },
);

/** What is said, with `last` standing for the take logged last. */
function draftOf(saying: Saying, facts: readonly Fact[]): Draft | undefined {
  const takes = facts.filter(({ kind }) => kind === 'take-logged').map(({ id }) => id);
  if ('back' in saying) {
    const target = facts.at(-1 - saying.back)!;
    return { kind: 'fact-retracted', targets: [target.id], by: 'hand' };
  }
  if ('beforeTake' in saying) {
    // A change can only be put before a take; before anything else it stays where it was said.
    const among = saying.beforeTake % 3 === 0 || takes.length === 0 ? facts.map(({ id }) => id) : takes;
    const before = among[saying.beforeTake % among.length]!;
    return { kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora', before };
  }
  if ('take' in saying) return takes.length === 0 ? undefined : { ...saying, take: takes.at(-1)! };
  return saying;
}

test('a day whose facts are put before takes and taken back, one after the other, is that day folded at once (fast-check)', () => {
  fc.assert(
    fc.property(fc.array(sayings, { minLength: 5, maxLength: 40 }), (said) => {
      const phone = speaker();
      phone.say(...SMALL_RIG, ...SMALL_CAST);
      let day = phone.day();
      const ids = idSource('phonea00000', 1000);
      for (const [at, saying] of said.entries()) {
        const draft = draftOf(saying, day.facts);
        if (!draft) continue;
        const moment = { day: day.id, at: MORNING + at, zone: 0, nextId: ids.next };
        day = appendFacts(day, stampFacts([draft], moment));
        expectFoldedAtOnce(day);
      }
    }),
    { seed: SEED, numRuns: 150 },
  );
});

test('on a line of several copies of the links, taking back and late corrections reach behind the last copy', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  const worn: string[] = [];
  for (let number = 1; number <= 1200; number += 1) {
    const voice = number % 2 ? 'ines' : 'dora';
    worn.push(phone.id({ kind: 'transmitter-worn', transmitter: 'A1', voice }));
    phone.say(take(String(24 + (number % 3)), 1, number));
  }
  let day = phone.day();
  expect(day.memory.checkpoints.length).toBeGreaterThan(2);
  const ids = idSource('phonea00000', 9000);
  const early = day.takeOrder[510]!;
  const said: Draft[] = [
    ...[1199, 511, 512, 0].map((at): Draft => ({ kind: 'fact-retracted', targets: [worn[at]!], by: 'hand' })),
    { kind: 'transmitter-worn', transmitter: 'A2', voice: 'ines', before: early },
    { kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora', before: early },
  ];
  for (const draft of said) {
    const moment = { day: day.id, at: MORNING, zone: 0, nextId: ids.next };
    day = appendFacts(day, stampFacts([draft], moment));
    expectFoldedAtOnce(day);
  }
  expect(answersAt(day, day.takeItems.get(early)!.place).links.get('worn:A2')?.value).toBe('dora');
});

test('taking back what was said last lays nothing before it anew, and keeps the answers of every earlier take', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const early = phone.id(take('24', 1, 1));
  const last = phone.id({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  const day = phone.day();
  const place = day.takeItems.get(early)!.place;
  const [item, answers] = [day.line[place], answersAt(day, place)];
  const ids = idSource('phonea00000', 1000);
  const moment = { day: day.id, at: MORNING, zone: 0, nextId: ids.next };
  const back: Draft = { kind: 'fact-retracted', targets: [last], by: 'undo' };
  const undone = appendFacts(day, stampFacts([back], moment));
  expect(undone.line[place]).toBe(item);
  expect(answersAt(undone, place)).toBe(answers);
});

test('a take that comes back stands where it was among the takes', () => {
  const phone = speaker();
  const [first, second] = [1, 2].map((number) => phone.id(take('24', 1, number)));
  let day = phone.day();
  const ids = idSource('phonea00000', 1000);
  const moment = { day: day.id, at: MORNING, zone: 0, nextId: ids.next };
  const back: Draft = { kind: 'fact-retracted', targets: [first!], by: 'undo' };
  const said = stampFacts([back], moment);
  day = appendFacts(day, said);
  const again: Draft = { kind: 'fact-retracted', targets: [said[0]!.id], by: 'redo' };
  day = appendFacts(day, stampFacts([again], moment));
  expect([...day.takes.keys()]).toEqual([first, second]);
});

test('a change put before an earlier take of a merged day, where it was said what is true, is that day folded at once', () => {
  const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  let at = MORNING;
  const say = (phone: SetPhone, draft: Draft): Fact => {
    at += 60_000;
    return phone.say(draft, at);
  };
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) say(a, draft);
  b.take(a);
  const gang = (sources: string[]): Draft => ({ kind: 'gang-declared', track: 'tr3', sources });
  const early = say(a, take('24', 1, 1));
  const worn = say(a, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const lead = say(a, { kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'near1out', to: 'in1' }] });
  const ended = say(a, gang([]));
  const wornThere = say(b, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
  const leadThere = say(b, { kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: 'in1' }] });
  const declared = say(b, gang(['near1', 'near2']));
  say(a, take('24', 1, 2));
  a.take(b);
  const resolved = (link: string, stands: Fact, other: Fact): Draft => ({
    kind: 'conflict-resolved',
    link,
    among: [stands.id, other.id],
    stands: stands.id,
  });
  say(a, resolved('worn:A1', wornThere, worn));
  say(a, resolved('socket:in1', lead, leadThere));
  const gangLink = [...a.day().tail.keys()].find((name) => name.startsWith('gang:'))!;
  say(a, resolved(gangLink, ended, declared));
  let day = a.day();
  expect(day.line.filter((item) => item.resolved).length).toBeGreaterThan(4);
  const late: Draft[] = [
    gang(['near1', 'near3']),
    { kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas' },
    { kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: 'in1' }] },
    { kind: 'transmitter-worn', transmitter: 'A2', voice: 'ines' },
  ];
  for (const draft of late) {
    day = appendFacts(day, [say(a, { ...draft, before: early.id } as Draft)]);
    expectFoldedAtOnce(day);
  }
});
