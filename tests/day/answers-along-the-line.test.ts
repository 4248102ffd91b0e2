import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { generateDay } from '../../sample-days/generate.ts';
import { loadSample } from '../../sample-days/load.ts';
import { type Answers, answersAt, answersFrom, answersNow } from '../../src/day/answers/answers.ts';
import { linksAt } from '../../src/day/chain/links.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { expectSame } from '../expect-same.ts';
import { MORNING, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

const SEED = 20_261_125;

const told = ({ inputs, tracks, voices, summary }: Answers) => ({ inputs, tracks, voices, summary });

/** The same, computed from the links alone, by nothing that was there before. */
const alone = (day: Day, index: number) => told(answersFrom(day, linksAt(day, index)));

/** Answers of the places in this order, each beside what it is alone. */
function expectAlone(day: Day, places: readonly number[]): void {
  for (const at of places) {
    const answers = answersAt(day, at);
    expectSame(told(answers), alone(day, at));
    expectSame([...answers.links], [...linksAt(day, at)]);
  }
}

const some = <T>(...values: readonly T[]) => fc.constantFrom(...values);
const packs = some('A1', 'A2', 'A3');
const voices = some('ines', 'dora', 'tomas', 'boom', 'nobody-known');
const inputs = some('in1', 'aes1', 'aes2', 'aes3');
const tracks = some('tr1', 'tr2', 'tr3', 'tr4', 'tr5');
const channels = some('near1', 'near2', 'near3');
const sources = fc.subarray(['near1', 'near2', 'near3', 'boom']);

/** Anything that can be said of the chain of the small rig, sense or not. */
const changes: fc.Arbitrary<Draft> = fc.oneof(
  fc.record({
    kind: some('transmitter-worn' as const),
    transmitter: packs,
    voice: fc.option(voices),
  }),
  fc.record({
    kind: some('channels-tuned' as const),
    tunings: fc.array(fc.record({ channel: channels, transmitter: fc.option(packs) }), {
      minLength: 1,
      maxLength: 3,
    }),
  }),
  fc.record({
    kind: some('leads-plugged' as const),
    leads: fc.array(
      fc.record({
        lead: some('l1', 'l2', 'l3', 'boom', 'spare'),
        from: fc.option(some('near1out', 'near2out', 'near3out', 'boom', 'dora')),
        to: fc.option(inputs),
        position: some('a' as const, 'b' as const),
      }),
      { minLength: 1, maxLength: 2 },
    ),
  }),
  fc.record({
    kind: some('selectors-thrown' as const),
    selectors: fc.constant<string[]>(['sel']),
    position: some('a' as const, 'b' as const),
  }),
  fc.record({
    kind: some('inputs-sent' as const),
    routes: fc.array(fc.record({ input: inputs, tracks: fc.subarray(['tr1', 'tr2', 'tr3', 'tr4']) }), {
      minLength: 1,
      maxLength: 2,
    }),
  }),
  fc.record({
    kind: some('mute-set' as const),
    what: some('input' as const),
    part: inputs,
    muted: fc.boolean(),
  }),
  fc.record({
    kind: some('mute-set' as const),
    what: some('transmitter' as const),
    part: packs,
    muted: fc.boolean(),
  }),
  fc.record({ kind: some('gang-declared' as const), track: tracks, sources }),
  fc.record({
    kind: some('gang-ended' as const),
    track: tracks,
    sources: fc.subarray(['near1', 'near2', 'near3', 'boom'], { minLength: 1 }),
  }),
  fc.record({ kind: some('track-named' as const), track: tracks, name: some(null, 'Door', '') }),
  fc.record({
    kind: some('voices-needed' as const),
    voices: fc.array(fc.record({ voice: voices, need: some('needed' as const, 'resting' as const) }), {
      minLength: 1,
      maxLength: 2,
    }),
  }),
  fc.record({ kind: some('roll-changed' as const), roll: some('R1', 'R2') }),
  fc.constant(take('24', 1, 1)),
);

const WITH_SELECTOR: Draft = {
  kind: 'rig-laid',
  parts: [{ part: 'sel', fields: { type: 'selector', name: 'sel', input: 'aes1' } }],
};

describe('answers, gone through in any order', () => {
  test.each(['small', 'full'] as const)('are those of each place alone, in the sample day "%s"', (name) => {
    const day = loadSample(name);
    const along = day.line.map((_, at) => at);
    const jumping = along.map((at) => (at * 61) % (day.line.length + 1));
    expectAlone(foldDay(day.id, day.facts), along.toReversed());
    expectAlone(day, [...jumping, ...along]);
  });

  test('are those of each place alone, in days of any shape (fast-check)', () => {
    fc.assert(
      fc.property(
        fc.record({ seed: fc.integer(), takes: fc.integer({ min: 5, max: 40 }) }),
        fc.array(fc.nat(), { minLength: 10, maxLength: 40 }),
        (size, places) => {
          const { day: id, facts } = generateDay({ ...size, tracks: 12, performers: 9 });
          const day = foldDay(id, facts);
          expectAlone(
            day,
            places.map((at) => at % (day.line.length + 1)),
          );
        },
      ),
      { seed: SEED, numRuns: 25 },
    );
  });

  test('are those of each place alone, whatever was said, by two phones that did not know of each other (fast-check)', () => {
    fc.assert(
      fc.property(
        fc.array(changes, { minLength: 1, maxLength: 30 }),
        fc.array(changes, { maxLength: 15 }),
        fc.array(fc.nat(), { minLength: 10, maxLength: 30 }),
        (said, elsewhere, places) => {
          const phone = speaker();
          phone.say(...SMALL_RIG, WITH_SELECTOR, ...SMALL_CAST);
          const other = speaker('phoneb', MORNING + 1000);
          for (const one of said) phone.say(one);
          for (const one of elsewhere) other.say(one);
          const day = foldDay('day-1', [...phone.facts, ...other.facts]);
          expectAlone(
            day,
            places.map((at) => at % (day.line.length + 1)),
          );
        },
      ),
      { seed: SEED, numRuns: 400 },
    );
  });

  test('go on with the day: more facts, another cast and another rig (fast-check)', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(
            { weight: 5, arbitrary: changes },
            fc.record({
              kind: some('voice-described' as const),
              voice: voices,
              fields: fc.record({ part: some('Ines', 'Dora', 'Mrs Halm'), struck: fc.boolean() }),
            }),
            fc.record({
              kind: some('part-described' as const),
              part: some('in1', 'tr3', 'near1out', 'A1'),
              fields: fc.record({ struck: fc.boolean() }),
            }) as fc.Arbitrary<Draft>,
          ),
          { minLength: 1, maxLength: 25 },
        ),
        (said) => {
          const phone = speaker();
          phone.say(...SMALL_RIG, WITH_SELECTOR, ...SMALL_CAST);
          let day = phone.day();
          const ids = idSource('phonea00000', 1000);
          for (const [at, draft] of said.entries()) {
            const facts = stampFacts([draft], { day: day.id, at: MORNING + at, zone: 0, nextId: ids.next });
            day = appendFacts(day, facts);
            expectSame(told(answersNow(day)), alone(day, day.line.length));
            expectAlone(day, [at % (day.line.length + 1)]);
          }
        },
      ),
      { seed: SEED, numRuns: 200 },
    );
  });

  test('keep the links of their own place when the day goes on', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const day = phone.day();
    const before = answersNow(day);
    const links = [...before.links];
    const ids = idSource('phonea00000', 1000);
    const worn: Draft = { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' };
    const next = appendFacts(
      day,
      stampFacts([worn], { day: day.id, at: MORNING, zone: 0, nextId: ids.next }),
    );
    expect([...before.links]).toEqual(links);
    expect(answersNow(next).links.get('worn:A1')?.value).toBe('ines');
  });
});
