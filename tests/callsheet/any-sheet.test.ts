import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CallSheet, readCallSheet } from '../../src/callsheet/call-sheet.ts';
import { type MadePerformer, sheets } from './sheet-maker.ts';

const lower = (text: string): string => text.toLowerCase();
const namesOf = (part: string, person: string): string => [part, person].map(lower).join(' / ');
const isRead = ({ cast }: CallSheet, { part, person }: MadePerformer): boolean =>
  cast.some((one) => namesOf(one.part, one.person) === namesOf(part, person));
const isTurned = ({ cast }: CallSheet, { part, person }: MadePerformer): boolean =>
  cast.some((one) => namesOf(one.person, one.part) === namesOf(part, person) && one.how.part === 'guessed');
const isListed = ({ unread, aside }: CallSheet, { person }: MadePerformer): boolean =>
  [...unread, ...aside].some(({ text }) => text.includes(person));

/** Every line of a text that is not blank must be in one list, and in one only. */
function expectAccounted(text: string, sheet: CallSheet): void {
  const told = [
    ...sheet.scenes.flatMap(({ lines }) => lines),
    ...sheet.cast.flatMap(({ line, more }) => [line, ...more]),
    ...sheet.aside.map(({ line }) => line),
    ...sheet.unread.map(({ line }) => line),
    ...sheet.headings,
  ].sort((a, b) => a - b);
  const isBlank = (line: string): boolean => line.replace(/[\p{Cc}\p{Cf}\p{Cs}\s]/gu, '') === '';
  const lines = text.split(/\r\n|[\n\r\u2028\u2029]/).flatMap((line, at) => (isBlank(line) ? [] : [at + 1]));
  expect(told).toEqual(lines);
}

describe('made-up sheets with columns in any order', () => {
  test.each([false, true])(
    'are read whole under their headings; noise between the rows: %s (seed 51)',
    (noise) => {
      fc.assert(
        fc.property(sheets({ headings: ['scenes', 'cast'], noise }), ({ text, scenes, cast }) => {
          const sheet = readCallSheet(text);
          expect(
            sheet.scenes.map(({ number, intExt, set, dayNight, pages, cast: who }) => ({
              number,
              intExt,
              set,
              dayNight,
              pages,
              cast: who,
            })),
          ).toEqual(scenes.map(({ synopsis: _, ...scene }) => scene));
          expect(
            sheet.cast.map(({ number, part, person, pickUp, onSet }) => [
              number,
              lower(part),
              person,
              pickUp,
              onSet,
            ]),
          ).toEqual(
            cast.map(({ number, part, person, pickUp, onSet }) => [
              number,
              lower(part),
              person,
              pickUp,
              onSet,
            ]),
          );
          expectAccounted(text, sheet);
        }),
        { seed: 51, numRuns: 150 },
      );
    },
  );

  test.each([{ headings: [] }, { headings: ['scenes'] as const }, { headings: ['cast'] as const }])(
    'with headings of $headings only nobody is invented, and nobody lost who is not listed (seed 52)',
    ({ headings }) => {
      fc.assert(
        fc.property(sheets({ headings, noise: true }), ({ text, scenes, cast }) => {
          const sheet = readCallSheet(text);
          const lost = cast.filter(
            (one) => !isRead(sheet, one) && !isTurned(sheet, one) && !isListed(sheet, one),
          );
          expect(lost).toEqual([]);
          const known = new Set(
            cast.flatMap(({ part, person }) => [namesOf(part, person), namesOf(person, part)]),
          );
          expect(
            sheet.cast.map(({ part, person }) => namesOf(part, person)).filter((one) => !known.has(one)),
          ).toEqual([]);
          for (const { number, cast: who, how } of sheet.scenes) {
            const made = scenes.find((one) => one.number === number);
            expect(made?.cast).toEqual(how.cast === 'guessed' ? (made?.cast ?? who) : who);
          }
          expectAccounted(text, sheet);
        }),
        { seed: 52, numRuns: 120 },
      );
    },
  );

  test('without headings most are read all the same (seed 53)', () => {
    let [read, all] = [0, 0];
    fc.assert(
      fc.property(sheets({ headings: [], noise: false }), ({ text, scenes, cast }) => {
        const sheet = readCallSheet(text);
        read += sheet.scenes.filter(({ number }) => scenes.some((one) => one.number === number)).length;
        read += cast.filter((one) => isRead(sheet, one)).length;
        all += scenes.length + cast.length;
      }),
      { seed: 53, numRuns: 120 },
    );
    expect(read / all).toBeGreaterThan(0.97);
  });
});

const piece = fc.oneof(
  fc.constantFrom(
    '46',
    '46A',
    'INT. KITCHEN',
    'DAY',
    '2 3/8',
    '1, 2, 5-8',
    'INES',
    'Anna Berg',
    '0630',
    'LUNCH',
    'Scene',
    'CAST',
  ),
  fc.constantFrom(
    '\t',
    ';',
    ' | ',
    '  ',
    ' - ',
    ', ',
    'Set',
    'Pages',
    'ATMOS',
    '<td>',
    '</td><td>',
    '<tr>',
    '"',
    '\u202e',
  ),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
const pasted = fc
  .array(
    fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
    { maxLength: 12 },
  )
  .map((lines) => lines.join('\n'));

describe('any paste', () => {
  test('has every line in one list only, where it is no page of tables (seed 54)', () => {
    fc.assert(
      fc.property(pasted, (text) => {
        const sheet = readCallSheet(text);
        if (!/<t/.test(text)) expectAccounted(text, sheet);
        for (const { number, how } of sheet.scenes) {
          expect(number).toMatch(/^[\dA-Zpt./&+-]{1,20}$/);
          expect(how.number).toBeDefined();
        }
      }),
      { seed: 54, numRuns: 600 },
    );
  });
});

describe('what is no call sheet', () => {
  const PROSE = [
    'When the boat came in that night, nobody was on the quay but Ines and the old man.',
    'She had waited since noon. “Come,” he said, and took her bag.',
    'The road to the farm',
    'was long, and Tomas',
    'walked behind them without a word. In the kitchen the lamp was lit.',
    'Later, much later - she would tell this - Dora laughed.',
    '46 steps led to the attic, and INT. is no word they knew.',
  ].join('\n');

  test('a page of prose is nobody and no scene', () => {
    const sheet = readCallSheet(`${PROSE}\n\n${PROSE}\n${PROSE}`);
    expect(sheet.cast).toEqual([]);
    expect(sheet.scenes).toEqual([]);
    expect(sheet.unread.length + sheet.aside.length).toBe(21);
  });

  test('of five thousand rows those beyond the limits are listed, within a second of work', () => {
    const rows = Array.from(
      { length: 5000 },
      (_value, at) => `${at + 1}\tINT\tKITCHEN\tDAY\t1 2/8\t1, 2, ${at}\tShe waits.`,
    );
    const from = process.cpuUsage();
    const sheet = readCallSheet(`Scene\tI/E\tSet\tD/N\tPages\tCast\tSynopsis\n${rows.join('\n')}`);
    expect(process.cpuUsage(from).user / 1000).toBeLessThan(1500);
    expect(sheet.scenes).toHaveLength(300);
    expect(sheet.unread).toHaveLength(4700);
    expect(new Set(sheet.unread.map(({ why }) => why))).toEqual(new Set(['too-many']));
  });

  test.each([
    ['INT. ', 'INT. KITCHEN - DAY '.repeat(20)],
    ['numbers', '1 2/8 '.repeat(80)],
    ['commas', '1,'.repeat(240)],
    ['day', 'DAY - NIGHT '.repeat(40)],
    ['tags', '<td><tr>"'.repeat(55)],
    ['spaces', `46${' '.repeat(200)}INT.${' '.repeat(200)}x`],
  ])('two thousand lines of %s are answered within four seconds of work', (_name, line) => {
    const from = process.cpuUsage();
    readCallSheet(`46 ${line}\n`.repeat(2000));
    expect(process.cpuUsage(from).user / 1000).toBeLessThan(4000);
  });
});

describe('how a cell was found is said', () => {
  const sheet = readCallSheet(
    'Scene\tSet\tCast\tPages\n46\tINT. HALL - DAY\t1, 2\t1/8\n\n7\tINES\tAnna Berg\t0600\t0730',
  );

  test('by its heading, or by its shape', () => {
    expect(sheet.scenes[0]?.how).toEqual({
      number: 'heading',
      intExt: 'shape',
      set: 'heading',
      dayNight: 'shape',
      cast: 'heading',
      pages: 'heading',
    });
  });

  test('times without a heading are a guess', () => {
    expect(sheet.cast[0]).toMatchObject({ pickUp: '0600', onSet: '0730' });
    expect(sheet.cast[0]?.how).toEqual({
      number: 'shape',
      part: 'shape',
      person: 'shape',
      pickUp: 'guessed',
      onSet: 'guessed',
    });
  });

  test('a count that can be a person is a guess', () => {
    const [scene] = readCallSheet('56 EXT. HILL - NIGHT 2 4/8').scenes;
    expect(scene).toMatchObject({ pages: '2 4/8', cast: [] });
    expect(scene?.how.pages).toBe('guessed');
  });

  test('a column that contradicts its heading is a guess', () => {
    const { cast } = readCallSheet('No\tArtist\tCharacter\n2\tINES\tAnna Berg');
    expect(cast[0]?.how.part).toBe('guessed');
  });
});
