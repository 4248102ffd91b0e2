import { describe, expect, test } from 'vitest';
import { writeDayFile } from '../../../src/facts/day-file/day-file.ts';
import { readDayFileLeniently } from '../../../src/facts/day-file/salvage-day-file.ts';
import { DAY, envelopeOf, everyKind, sealed } from '../day-file-samples.ts';

const FACTS = everyKind();
const LINES = writeDayFile(DAY, 'Day 4', FACTS).trimEnd().split('\n');
const roll = (counter: number, value = '004', more: object = {}) =>
  envelopeOf(counter, 'roll-changed', { roll: value, ...more });
const json = (value: unknown): string => JSON.stringify(value);

const salvaged = (text: string) => {
  const read = readDayFileLeniently(text);
  if (!read.ok) throw new Error(json(read.problem));
  return read.value;
};

describe('salvaging a day file', () => {
  test('a sound file gives all of it and nothing to complain of', () => {
    const file = salvaged(LINES.join('\n'));
    expect(file.stored).toEqual(FACTS);
    expect(file).toMatchObject({ day: DAY, title: 'Day 4', damaged: 0, missing: 0, problems: [] });
  });

  test('cut in the middle of a line, the facts before the cut are there and the others counted', () => {
    const file = salvaged(`${LINES.slice(0, 5).join('\n')}\n${LINES[5]!.slice(0, 30)}`);
    expect(file.stored).toEqual(FACTS.slice(0, 4));
    expect(file).toMatchObject({
      damaged: 1,
      missing: FACTS.length - 4,
      problems: [{ code: 'line-not-json', line: 6 }],
    });
  });

  test('a damaged line costs that line only', () => {
    const file = salvaged(
      LINES.with(3, 'noise')
        .with(7, json({ ...roll(7), at: -1 }))
        .join('\n'),
    );
    expect(file.stored).toEqual(FACTS.filter((_, index) => index !== 2 && index !== 6));
    expect(file).toMatchObject({
      damaged: 2,
      missing: 2,
      problems: [
        { code: 'line-not-json', line: 4 },
        { code: 'fact-damaged', line: 8, where: 'at' },
      ],
    });
  });

  test('without its head the day is the one most facts speak of', () => {
    const file = salvaged(
      ['{"rollbook":"day-f', json(roll(1, 'x', { day: 'day-9' })), ...LINES.slice(2)].join('\n'),
    );
    expect(file).toMatchObject({ day: DAY, title: '', damaged: 2, missing: 0 });
    expect(file.stored).toEqual(FACTS.slice(1));
    expect(file.problems).toMatchObject([
      { code: 'day-file-not-json', line: 1 },
      { code: 'fact-of-another-day', line: 2 },
    ]);
  });

  test('facts that claim one id with different bodies are all left out', () => {
    const file = salvaged(sealed([roll(1, 'a'), roll(2), roll(1, 'b'), roll(1, 'a')].map(json)));
    expect(file.stored).toEqual([roll(2)]);
    expect(file).toMatchObject({
      damaged: 2,
      problems: [{ code: 'fact-id-twice', line: 4, first: 2, id: roll(1).id }],
    });
  });

  test('reasons are given for the first hundred lines, and all are counted', () => {
    const file = salvaged(sealed([json(roll(1)), ...Array<string>(300).fill('noise')]));
    expect(file.damaged).toBe(300);
    expect(file.problems).toHaveLength(100);
  });

  test.each([
    ['nothing', '', 'day-file-empty'],
    ['prose', 'Dear all,\nhere is the day.', 'day-file-nothing-readable'],
    ['another kind of file', sealed([json(roll(1))], { rollbook: 'rig-file' }), 'day-file-other-kind'],
    ['a newer version', sealed([json(roll(1))], { version: 2 }), 'day-file-newer'],
    ['fifty megabytes', ' '.repeat(50_000_000), 'day-file-too-large'],
  ])('%s is refused', (_, text, code) => {
    const read = readDayFileLeniently(text);
    expect(read.ok ? null : read.problem.code).toBe(code);
  });
});
