import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { linesOf, readCopies } from '../../src/storage/copy-lines.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { DAY, everyKind, sealed } from '../facts/day-file-samples.ts';
import { phoneWith } from './phone.ts';

const SEED = 20_261_061;
const RUNS = LONG ? 5000 : 100;

const FACTS: readonly Envelope[] = everyKind();
const GOOD = writeDayFile(DAY, 'Day 4', FACTS);
/** The same as an app wrote it that knew no checks of entries. */
const OLD = sealed(FACTS.map((fact) => JSON.stringify(fact)));
const COPY = FACTS.flatMap((fact) => linesOf([fact]).map(([, line]) => line)).join('');

const places = fc.array(fc.tuple(fc.nat(), fc.nat(7)), { minLength: 1, maxLength: 4 });
const utf8 = { encode: new TextEncoder(), decode: new TextDecoder() };

function flip(text: string, flips: readonly (readonly [number, number])[]): string {
  const bytes = utf8.encode.encode(text);
  for (const [at, bit] of flips) bytes[at % bytes.length]! ^= 1 << bit;
  return utf8.decode.decode(bytes);
}

const asSaid = new Map(FACTS.map((fact) => [fact.id, JSON.stringify(fact)]));
/** Those that say what nobody said, under an id that somebody used or under another. */
const untrueOf = (facts: readonly unknown[]): number =>
  facts.filter((fact) => asSaid.get((fact as Envelope).id) !== JSON.stringify(fact)).length;

describe(`flipped bits, seed ${SEED}`, () => {
  test(`${RUNS} day files with bits flipped leave nothing untrue, and the good file makes the day whole`, async () => {
    let untrue = 0;
    let kept = 0;
    await fc.assert(
      fc.asyncProperty(places, async (flips) => {
        const { app, journal } = await phoneWith([]);
        const damaged = readAsFarAsPossible('damaged.txt', flip(GOOD, flips));
        expect(damaged.file?.unchecked).toBeUndefined();
        await app.importFiles([damaged]);
        const partly = await journal.read(DAY);
        kept += partly.length;
        untrue += untrueOf(partly);
        expect(untrueOf(partly)).toBe(0);
        const good = await app.importFiles([readAsFarAsPossible('good.txt', GOOD)]);
        expect(good).toMatchObject({ refused: [], entries: FACTS.length, verified: FACTS.length });
        expect(untrueOf(await journal.read(DAY))).toBe(0);
        expect(await journal.read(DAY)).toHaveLength(FACTS.length);
      }),
      { seed: SEED, numRuns: RUNS, endOnFailure: true },
    );
    noteFault('bits flipped in day files, then the good one', `${RUNS} files, ${kept} entries kept`, untrue);
    // What was not touched is there: a flip costs an entry or two, not the file.
    expect(kept / RUNS).toBeGreaterThan(FACTS.length * 0.8);
  }, 240_000);

  test(`${RUNS} files of an older app, which has no checks, are no obstacle to the good file either`, async () => {
    await fc.assert(
      fc.asyncProperty(places, async (flips) => {
        const { app, journal } = await phoneWith([]);
        await app.importFiles([readAsFarAsPossible('damaged.txt', flip(OLD, flips))]);
        const good = await app.importFiles([readAsFarAsPossible('good.txt', GOOD)]);
        expect(good).toMatchObject({ refused: [], verified: FACTS.length });
        const there = new Map(
          (await journal.read(DAY)).map((fact) => [(fact as Envelope).id, JSON.stringify(fact)]),
        );
        for (const [id, said] of asSaid) expect(there.get(id)).toBe(said);
      }),
      { seed: SEED + 1, numRuns: RUNS, endOnFailure: true },
    );
  }, 240_000);

  test(`${RUNS} copies beside the database with bits flipped give back what was said, or nothing`, () => {
    let untrue = 0;
    let lost = 0;
    fc.assert(
      fc.property(places, (flips) => {
        const { whole, unchecked } = readCopies(flip(COPY, flips));
        untrue += untrueOf([...whole, ...unchecked]);
        lost += FACTS.length - whole.length;
        expect(untrueOf([...whole, ...unchecked])).toBe(0);
      }),
      { seed: SEED + 2, numRuns: RUNS, endOnFailure: true },
    );
    noteFault('bits flipped in the copy', `${RUNS} copies, ${lost} damaged entries left out`, untrue);
    // One flip, one entry: two where it joins two lines.
    expect(lost / RUNS).toBeLessThan(6);
  }, 240_000);
});
