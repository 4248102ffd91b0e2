import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Command } from '../../src/app/day-store.ts';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { addNote, callSlate, cutTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { openTakes } from '../../src/day/takes.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { factId, HIGHEST_COUNTER } from '../../src/shared/ids.ts';
import type { Problem } from '../../src/shared/result.ts';
import { sentenceFor } from '../../src/ui/words/problems.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { MORNING } from '../day/say.ts';
import { DAY, envelopeOf } from '../facts/day-file-samples.ts';
import { phoneWith } from './phone.ts';

const SEED = 20_261_051;
const RUNS = LONG ? 5000 : 400;
const LATEST_MS = 253_402_300_799_999;

const number = (most: number): fc.Arbitrary<number> =>
  fc.oneof(fc.constantFrom(0, 1, most - 1, most, most), fc.nat(most));
const counter = fc.oneof(
  { weight: 20, arbitrary: fc.nat(10_000_000) },
  { weight: 1, arbitrary: fc.constantFrom(9_999_999, 10_000_000, 10_000_001, HIGHEST_COUNTER) },
  { weight: 1, arbitrary: fc.nat(HIGHEST_COUNTER) },
);
const moment = fc.oneof(
  { weight: 12, arbitrary: fc.integer({ min: -86_400_000, max: 86_400_000 }).map((ms) => MORNING + ms) },
  { weight: 1, arbitrary: number(LATEST_MS) },
);
const slate = fc.oneof(
  fc.record({
    style: fc.constant('lettered'),
    scene: fc.constantFrom('24', 'x'.repeat(200)),
    setup: number(20_000),
  }),
  fc.record({ style: fc.constant('numbered'), number: number(999_999), scene: fc.constant('') }),
);
const frames = fc.record({ frames: number(100_000_000), rate: fc.constantFrom('25', '60') });

/** Facts that a reader accepts, with every number anywhere up to its ceiling. */
const body = fc.oneof(
  fc
    .record({ number: number(9999), slate, start: frames, length: fc.option(frames), rolledAt: moment })
    .map((fields) => ({ kind: 'take-logged', fields: { kind: 'take', ...fields } })),
  slate.map((called) => ({ kind: 'slate-called', slate: called })),
  number(100_000).map((order) => ({
    kind: 'part-described',
    part: 'tr1',
    fields: { type: 'track', name: '1', order },
  })),
  number(998).map((below) => ({
    kind: 'voice-described',
    voice: 'v1',
    fields: { kind: 'performer', part: 'Ines', priority: below + 1 },
  })),
  fc.record({
    kind: fc.constant('clock-followed'),
    frames: number(100_000_000),
    rate: fc.constant('25'),
    atMs: moment,
  }),
);
const fact = fc.record({
  counter,
  at: moment,
  body,
  seen: fc.option(counter.map((known) => ({ phonec: known }))),
  phone: fc.constantFrom('phoned', 'phonee'),
});
const file = fc.uniqueArray(fact, {
  minLength: 1,
  maxLength: 5,
  selector: ({ counter: own, phone }) => `${own} ${phone}`,
});

const factsOf = (said: typeof file extends fc.Arbitrary<infer V> ? V : never): Envelope[] =>
  said.map(({ counter: own, at, body: { kind, ...rest }, seen, phone }) => ({
    ...envelopeOf(1, kind, { ...rest, ...(seen && { seen }) }),
    id: factId(own, `${phone}00000`),
    at,
  }));

const inWords = (problem: Problem): boolean => /^(?!.*undefined)./.test(sentenceFor(problem));

/** What somebody does next, in this order, on a day with anything in it. */
const ACTIONS: readonly Command[] = [
  rollTake,
  (day, now) => cutTake(day, now),
  (day) => callSlate(day),
  rollTake,
  (day, now) => cutTake(day, now),
  (day) => addNote(day, day.takeOrder.at(-1) ?? '', 'good'),
];

describe(`hostile counters and ceilings, seed ${SEED}`, () => {
  test(`${RUNS} files are refused at the door, or leave a day on which all that is called saved reads back`, async () => {
    const came = { refused: 0, in: 0, done: 0, declined: 0 };
    let lost = 0;
    await fc.assert(
      fc.asyncProperty(file, async (said) => {
        const facts = factsOf(said);
        expect(facts.filter((one) => !readFact(one).ok)).toEqual([]);
        const { app, journal } = await phoneWith([envelopeOf(1, 'roll-changed', { roll: 'A' })]);
        const imported = await app.importFiles([
          readAsFarAsPossible('file.txt', writeDayFile(DAY, '', facts)),
        ]);
        const wrong: string[] = [];
        const [refusal] = imported.refused;
        came[refusal ? 'refused' : 'in'] += 1;
        if (refusal && (!inWords(refusal.problem) || (await journal.read(DAY)).length !== 1))
          wrong.push('refused');
        const store = await app.open(DAY);
        for (const action of ACTIONS) {
          const result = store.run(action);
          came[result.ok ? 'done' : 'declined'] += 1;
          if (!result.ok && !inWords(result.problem)) wrong.push(`no words for ${result.problem.code}`);
        }
        store.undo();
        await store.flushed();
        const kept = await journal.read(DAY);
        lost += kept.filter((one) => !readFact(one).ok).length;
        if (kept.some((one) => !readFact(one).ok)) wrong.push('saved, and not read back');
        if (kept.length !== store.day.value.facts.length) wrong.push('on the screen, and not on the disk');
        if (!readDayFile(await app.dayFile(DAY)).ok) wrong.push('no day file');
        // Whatever came in, this phone can roll and cut: its own take is not left open.
        if (openTakes(store.day.value).some(({ id }) => id.includes('phoneb')))
          wrong.push('an own take stays open');
        expect(wrong).toEqual([]);
      }),
      { seed: SEED, numRuns: RUNS, endOnFailure: true },
    );
    const tried = `${RUNS} files, ${came.refused} refused at the door; ${came.done} actions after them, ${came.declined} declined in words`;
    noteFault('hostile counters and ceilings', tried, lost);
    expect(Math.min(came.refused, came.in)).toBeGreaterThan(RUNS / 4);
    expect(came.declined).toBeGreaterThan(RUNS / 50);
    expect(came.done).toBeGreaterThan(RUNS * 3);
  }, 240_000);
});
