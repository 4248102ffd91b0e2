import { describe, expect, test } from 'vitest';
import { appStore } from '../../src/app/app-store.ts';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { safekeeping } from '../../src/app/safekeeping.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { sealed } from '../facts/day-file-samples.ts';

/** Windows of one phone, which hear each other. */
function phone() {
  const journal = memoryJournal('phoneb');
  const listeners: ((day: string) => void)[] = [];
  const window = (name: string) =>
    appStore({
      journal,
      clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
      window: name,
      neighbours: {
        tell: (day) => {
          for (const hear of listeners) hear(day);
        },
        listen: (hear) => {
          listeners.push(hear);
          return () => {};
        },
      },
      newDayId: () => 'new',
      safekeeping: safekeeping(undefined),
    });
  return { journal, window };
}

function dayOf(takes: number): Envelope[] {
  const one = speaker('phonea');
  one.say({ kind: 'day-described', fields: { production: 'Harbour Lights' } });
  for (let number = 1; number <= takes; number += 1) one.say(take('24', 1, number));
  return one.facts;
}
const FACTS = dayOf(5);
const GOOD = writeDayFile('day-1', 'Harbour Lights', FACTS);
/** The same from an app that wrote no checks. */
const OLD = sealed(FACTS.map((fact) => JSON.stringify(fact)));
const flip = (text: string): string => text.replace('"production":"Harbour', '"production":"Harbovr');
const read = (text: string) => [readAsFarAsPossible('day.txt', text)];

describe('a damaged file and then the good one', () => {
  test.each([
    ['with checks', GOOD, 5],
    ['of an older app', OLD, 6],
  ])(
    '%s: every entry is as it was said afterwards, on the disk and in every window',
    async (_, file, first) => {
      const { journal, window } = phone();
      const [here, there] = [window('win01'), window('win02')];
      expect(flip(file)).not.toBe(file);
      expect(await here.importFiles(read(flip(file)))).toMatchObject({
        fresh: first,
        verified: first,
        refused: [],
      });
      const other = await there.open('day-1');
      expect(other.unsure.value).toBe(file === OLD ? 6 : 0);
      expect(await here.importFiles(read(GOOD))).toMatchObject({ entries: 6, verified: 6, refused: [] });
      expect((await journal.read('day-1')).map((fact) => JSON.stringify(fact)).sort()).toEqual(
        FACTS.map((fact) => JSON.stringify(fact)).sort(),
      );
      expect((await here.open('day-1')).day.value.header.production).toBe('Harbour Lights');
      await expect.poll(() => other.day.value.header.production).toBe('Harbour Lights');
      expect((await journal.days())[0]).not.toHaveProperty('unsure');
      await expect.poll(() => other.unsure.value).toBe(0);
      // And it goes out again as it was said.
      expect(await here.dayFile('day-1')).toBe(GOOD);
    },
  );

  test('in one go, in any order, give the whole day', async () => {
    for (const texts of [
      [flip(OLD), GOOD],
      [GOOD, flip(GOOD)],
    ]) {
      const { journal, window } = phone();
      const reads = texts.map((text, at) => readAsFarAsPossible(`${at}.txt`, text));
      expect(await window('win01').importFiles(reads)).toMatchObject({
        entries: 6,
        verified: 6,
        refused: [],
      });
      expect(JSON.stringify(await journal.read('day-1'))).toContain('Harbour Lights');
    }
  });
});

describe('two entries under one id that nobody can tell apart', () => {
  const other = writeDayFile('day-1', '', [
    { ...FACTS[0]!, fields: { production: 'Harbour Sights' } } as Envelope,
    ...FACTS.slice(1),
    ...speaker('phonec').say(take('25', 0, 1)),
  ]);

  test('are refused, or settled by whoever has seen both, and what was left out is not called missing', async () => {
    const { window } = phone();
    const app = window('win01');
    await app.importFiles(read(GOOD));
    expect((await app.importFiles(read(other))).refused).toMatchObject([
      { problem: { code: 'fact-id-twice' } },
    ]);
    const production = async (): Promise<string> => (await app.open('day-1')).day.value.header.production;
    expect(await app.importFiles(read(other), 'here')).toMatchObject({ entries: 6, fresh: 1, verified: 6 });
    expect(await production()).toBe('Harbour Lights');
    expect(await app.importFiles(read(other), 'file')).toMatchObject({ entries: 7, fresh: 1, verified: 7 });
    expect(await production()).toBe('Harbour Sights');
  });
});
