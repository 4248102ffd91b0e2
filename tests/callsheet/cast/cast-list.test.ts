import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CastEntry } from '../../../src/callsheet/cast/cast-entry.ts';
import { CAST_LIST_LIMITS, readCastList } from '../../../src/callsheet/cast/cast-list.ts';

// Arrangements and abbreviations of call sheets: common practice, no source. All names are invented.

const rows = (text: string) =>
  readCastList(text).entries.map(({ number, part, person }) => [number, part, person].join(' / '));
const one = (line: string): CastEntry | undefined => readCastList(line).entries[0];
const why = (line: string) => readCastList(line).unread.map((unread) => unread.why);

describe('a line that tells which name is the part', () => {
  test.each([
    ['1. INES - Anna Berg', '1 / Ines / Anna Berg'],
    ['1 INES Anna Berg', '1 / Ines / Anna Berg'],
    ['1) INES – Anna Berg', '1 / Ines / Anna Berg'],
    ['(1) INES — Anna Berg', '1 / Ines / Anna Berg'],
    ['#1 INES: Anna Berg', '1 / Ines / Anna Berg'],
    ['No. 1 INES = Anna Berg', '1 / Ines / Anna Berg'],
    ['1.INES / Anna Berg', '1 / Ines / Anna Berg'],
    ['1\tINES\tAnna Berg', '1 / Ines / Anna Berg'],
    ['1;INES;Anna Berg', '1 / Ines / Anna Berg'],
    ['1,INES,Anna Berg', '1 / Ines / Anna Berg'],
    ['1, INES, Anna Berg', '1 / Ines / Anna Berg'],
    ['1 | INES | Anna Berg', '1 / Ines / Anna Berg'],
    ['1    INES    Anna Berg', '1 / Ines / Anna Berg'],
    ['1 - INES - Anna Berg', '1 / Ines / Anna Berg'],
    ['INES (1) Anna Berg', '1 / Ines / Anna Berg'],
    ['INES - Anna Berg (1)', '1 / Ines / Anna Berg'],
    ['INES [1A] - Anna Berg', '1A / Ines / Anna Berg'],
    ['INES .......... Anna Berg', ' / Ines / Anna Berg'],
    ['INES____Anna Berg', ' / Ines / Anna Berg'],
    ['INES -> Anna Berg', ' / Ines / Anna Berg'],
    ['Anna Berg as Ines', ' / Ines / Anna Berg'],
    ['4. Anna Berg as “Ines”', '4 / Ines / Anna Berg'],
    ['ANNA BERG AS INES', ' / Ines / Anna Berg'],
    ['Ines, played by Anna Berg', ' / Ines / Anna Berg'],
    ['Anna Berg (Ines)', ' / Ines / Anna Berg'],
    ['INES (Anna Berg)', ' / Ines / Anna Berg'],
    ['Anna Berg INES', ' / Ines / Anna Berg'],
    ['Anna Berg, INES, 9', '9 / Ines / Anna Berg'],
    ['"Berg, Anna",INES,9', '9 / Ines / Berg, Anna'],
    ['"17","LENA ""FOX""","Eva Strand"', '17 / Lena "Fox" / Eva Strand'],
    ['INES - Berg, Anna', ' / Ines / Berg, Anna'],
    ['• 5. TOMAS – Jon Holm', '5 / Tomas / Jon Holm'],
    ['- TOMAS – Jon Holm', ' / Tomas / Jon Holm'],
    ['* 5 TOMAS Jon Holm', '5 / Tomas / Jon Holm'],
    ['[x] 5 TOMAS Jon Holm', '5 / Tomas / Jon Holm'],
    ['•\t5\tTOMAS\tJon Holm', '5 / Tomas / Jon Holm'],
    ['1A INES Anna Berg', '1A / Ines / Anna Berg'],
    ['101 INES Anna Berg', '101 / Ines / Anna Berg'],
    ['101-110 SOLDIERS - Bo Ek', '101-110 / Soldiers / Bo Ek'],
    ['1.1 INES - Anna Berg', '1.1 / Ines / Anna Berg'],
    ['12. Guard 2 - Tom Hall', '12 / Guard 2 / Tom Hall'],
    ['2nd Guard - Tom Hall', ' / 2nd Guard / Tom Hall'],
    ['8 The Miller - Per Dahl', '8 / The Miller / Per Dahl'],
    ['INES (V.O.) - Anna Berg', ' / Ines (V.O.) / Anna Berg'],
    ['3. INES Anna B. Berg', '3 / Ines / Anna B. Berg'],
    ['3. INES A. Berg', '3 / Ines / A. Berg'],
    ['3. J.R. - Jon Holm', '3 / J.R. / Jon Holm'],
  ])('%j is read and sure', (line, expected) => {
    expect(rows(line)).toEqual([expected]);
    expect(one(line)?.sure).toBe(true);
  });
});

describe('times, status letters and contacts are left out', () => {
  test.each([
    ['7 INES Anna Berg W 0630 0715 0800', '7 / Ines / Anna Berg'],
    ['7 INES Anna Berg SW 06:30 07:15 O/C', '7 / Ines / Anna Berg'],
    ['7 SWF INES Anna Berg 6:30am', '7 / Ines / Anna Berg'],
    ['7   INES   Anna Berg   SWF   6:30a   7:00 PM   TBC', '7 / Ines / Anna Berg'],
    ['7\tINES\tAnna Berg\tH\t\t6.30\tN/A', '7 / Ines / Anna Berg'],
    ['7;W;INES;R;Anna Berg;06h30', '7 / Ines / Anna Berg'],
    ['7 | W | INES | Anna Berg | 555 010 0199 | anna@example.org', '7 / Ines / Anna Berg'],
    ['7 - INES - Anna Berg - 0630', '7 / Ines / Anna Berg'],
    ['7, INES, Anna Berg, P/U 0600', '7 / Ines / Anna Berg'],
    ['0630 INES Anna Berg', ' / Ines / Anna Berg'],
    ['INES, Anna Berg, 0630 - 1800', ' / Ines / Anna Berg'],
  ])('%j', (line, expected) => {
    expect(rows(line)).toEqual([expected]);
  });

  test('a last letter without a time beside it stays the initial of a name', () => {
    expect(rows('7 INES Anna W')).toEqual(['7 / Ines / Anna W']);
  });
});

describe('a line that does not tell is guessed at, and says so', () => {
  test.each([
    ['4; Old Man; Per Dahl', '4 / Old Man / Per Dahl'],
    ['4. Ines - Anna Berg', '4 / Ines / Anna Berg'],
    ['Anna Berg - Ines', ' / Ines / Anna Berg'],
    ['ANNA BERG - Ines', ' / Ines / Anna Berg'],
    ['12 Ines Anna Berg', '12 / Ines / Anna Berg'],
    ['13 Anna Berg', '13 / Anna Berg / '],
    ['Anna Berg', ' / Anna Berg / '],
    ['INES ANNA BERG', ' / Ines Anna Berg / '],
    ['19. ines - anna berg', '19 / ines / anna berg'],
    ['1\tInes\tAnna Berg\tYellow coat', '1 / Ines / Anna Berg'],
    ['アンナ - イネス', ' / アンナ / イネス'],
    ['Lunch 12:30', ' / Lunch / '],
  ])('%j', (line, expected) => {
    expect(rows(line)).toEqual([expected]);
    expect(one(line)?.sure).toBe(false);
  });

  test('lines that agree on an order settle those that only suggest it', () => {
    const list = readCastList(
      '1. INES - Anna Berg\n2. TOMAS - Jon Holm\n3. Mira - Ada Lund\n4. Ulf Ek - Odd Moe',
    );
    expect(list.entries.map(({ part, sure }) => [part, sure])).toEqual([
      ['Ines', true],
      ['Tomas', true],
      ['Mira', true],
      ['Ulf Ek', false],
    ]);
  });

  test('lines that agree on persons first turn those that say nothing', () => {
    expect(rows('Anna Berg, INES\nJon Holm, TOMAS\nOdd Moe, Old Man')[2]).toBe(' / Old Man / Odd Moe');
  });

  test('three lines that suggest one order and none that differs are believed', () => {
    const agreeing = readCastList('1. Ines - Anna Berg\n2. Tomas - Jon Holm\n3. Mira - Ada Lund');
    expect(agreeing.entries.map(({ sure }) => sure)).toEqual([true, true, true]);
    const differing = readCastList('1. Ines - Anna Berg\n2. Tomas - Jon Holm\n3. Ada Lund - Mira');
    expect(differing.entries.map(({ sure }) => sure)).toEqual([false, false, false]);
  });

  test('a line that says nothing follows the one beside it', () => {
    expect(rows('Anna Berg\tInes\t1\nPer Dahl\tOld Man\t2')).toEqual([
      '1 / Ines / Anna Berg',
      '2 / Old Man / Per Dahl',
    ]);
  });

  test('a single word is a part, and sure', () => {
    expect(one('Ines')).toMatchObject({ part: 'Ines', person: '', sure: true });
  });
});

describe('headings', () => {
  test.each([
    'CAST',
    'Cast:',
    '--- CAST ---',
    'CAST LIST',
    'Principals',
    'BACKGROUND',
    'No. Character Artist',
    '# CAST CHARACTER SWF P/U MU SET',
    'Cast No.\tRole\tActor\tPick up\tM/U\tOn set',
    'CAST - DAY 4',
    '==========',
    '- - -',
    ';;;',
  ])('%j is no entry and not unread', (line) => {
    expect(readCastList(line)).toEqual({ entries: [], unread: [], headings: [1] });
  });

  test.each([
    ['Artist,No,Character\nAnna Berg,1,Ines', '1 / Ines / Anna Berg'],
    ['Character;Call;Artist;No.\nInes;0630;Anna Berg;1A', '1A / Ines / Anna Berg'],
    ['ID\tStatus\tRole\tActor\n1\tW\tOld Man\tPer Dahl', '1 / Old Man / Per Dahl'],
    ['ID\tStatus\tActor\tRole\n\tW\tPer Dahl\tOld Man', ' / Old Man / Per Dahl'],
    ['No  Artist  Character  Call\n1  Anna Berg  Ines  0630', '1 / Ines / Anna Berg'],
    ['No  Artist  Character  Call\n1  Per Dahl  Old Man', '1 / Old Man / Per Dahl'],
    ['No. Artist Character\n1. Per Dahl - Old Man', '1 / Old Man / Per Dahl'],
    ['Role,First name,Last name\nInes,Anna,Berg', ' / Ines / Anna Berg'],
    ['Character,Artist\n"Ines, the fox",Anna Berg', ' / Ines, the fox / Anna Berg'],
    ['Character\tArtist\nW\tTBC\nInes\tTBC', ' / Ines / '],
    ['#\tCast\tCharacter\n1\tPer Dahl\tOld Man', '1 / Old Man / Per Dahl'],
    ['Cast #\tCharacter\tName\n1\tOld Man\tPer Dahl', '1 / Old Man / Per Dahl'],
  ])('%j names the columns, in any order', (text, expected) => {
    expect(rows(text)).toEqual([expected]);
    expect(readCastList(text).entries[0]?.sure).toBe(true);
  });

  test('columns hold until the next heading', () => {
    const text = 'Artist\tCharacter\nPer Dahl\tOld Man\n\nCharacter\tArtist\nYoung Man\tOdd Moe';
    expect(rows(text)).toEqual([' / Old Man / Per Dahl', ' / Young Man / Odd Moe']);
  });

  test('a line without the columns is still read', () => {
    expect(rows('Artist\tCharacter\nTOMAS - Jon Holm')).toEqual([' / Tomas / Jon Holm']);
  });
});

describe('a heading with words that nobody knows', () => {
  test.each([
    ['No\tCharacter\tArtist\tHotel\tVan\tShuttle\n1\tInes\tAnna Berg\tWest\t2\tA', '1 / Ines / Anna Berg'],
    ['#\tCHARACTER\tARTIST\tPICK UP\tON SET\tVAN\n1\tINES\tAnna Berg\t0600\t0730\t2', '1 / Ines / Anna Berg'],
    ['Artist\tCharacter\tPU\tVan\nAnna Berg\tInes\t0600\t2', ' / Ines / Anna Berg'],
    ['Character\tON SET\tRemarques\nInes\t0730\tx', ' / Ines / '],
    ['Character Performer Shuttle\n1 INES Anna Berg', '1 / Ines / Anna Berg'],
    ['Character - Artist - Shuttle\n1. INES - Anna Berg', '1 / Ines / Anna Berg'],
  ])('%j is still one', (text, expected) => {
    expect(rows(text)).toEqual([expected]);
    expect(readCastList(text)).toMatchObject({ unread: [], headings: [1] });
    expect(readCastList(text).entries[0]?.sure).toBe(true);
  });

  test.each(['Character\tVan', 'Artist\tAnna Berg', 'Character - Ines'])(
    '%j may be one, and is no performer',
    (line) => {
      expect(readCastList(line).entries).toEqual([]);
      expect(why(line)).toEqual(['not-understood']);
    },
  );

  test('on set is still left out of a row', () => {
    expect(rows('Character\tArtist\nInes\tON SET\n7\tINES\tAnna Berg\tON SET')[0]).toBe(' / Ines / ');
    expect(rows('7\tINES\tAnna Berg\tON SET')).toEqual(['7 / Ines / Anna Berg']);
  });
});

describe('names that look the other way round than their heading says', () => {
  test.each([
    'No. Artist Character\n2. INES - Anna Berg',
    'No. Artist Character\n2. Ines - Anna Berg',
    'No\tArtist\tCharacter\n2\tINES\tAnna Berg',
  ])('%j is not sure', (text) => {
    expect(readCastList(text).entries.map(({ sure }) => sure)).toEqual([false]);
  });

  test('persons in capitals under persons are sure', () => {
    expect(readCastList('No\tCharacter\tArtist\n1\tInes\tANNA BERG').entries[0]?.sure).toBe(true);
  });
});

describe('a quote or a sign at the beginning of a cell', () => {
  test.each([
    ['Character\tArtist\n"Ines the fox\tAnna Berg', ' / "Ines the fox / Anna Berg'],
    ['1\t"Big" Tom\tAnna Berg', '1 / "Big" Tom / Anna Berg'],
    ['1;"Red;Anna Berg;W', '1 / "Red / Anna Berg'],
    ['1;"Red; the fox";Anna Berg', '1 / Red; the fox / Anna Berg'],
    ['1\t=SUM(A1)\tAnna Berg', '1 / =SUM(A1) / Anna Berg'],
    ['=SUM(A1)', ' / =SUM(A1) / '],
    ['1. =SUM(A1) - Anna Berg', '1 / =SUM(A1) / Anna Berg'],
    ['1. INES == Anna Berg', '1 / Ines / Anna Berg'],
  ])('%j keeps what follows, and the sign', (text, expected) => {
    expect(rows(text)).toEqual([expected]);
  });
});

describe('whole call sheets', () => {
  test('as columns copied from a page', () => {
    const text = [
      'CAST',
      '#   CHARACTER      ARTIST      SWF  P/U   MU/H  SET',
      '1   INES           Anna Berg   W    0600  0630  0730',
      '2   THE OLD MAN    Per Dahl    SW   0615  0645  0730',
      '4   TOMAS          Jon Holm    H',
      '',
      '12  YOUNG GUARD    Odd Moe     R    -     -     0800',
      'BACKGROUND',
    ].join('\n');
    expect(rows(text)).toEqual([
      '1 / Ines / Anna Berg',
      '2 / The Old Man / Per Dahl',
      '4 / Tomas / Jon Holm',
      '12 / Young Guard / Odd Moe',
    ]);
    expect(readCastList(text)).toMatchObject({ unread: [], headings: [1, 2, 8] });
    expect(readCastList(text).entries.every(({ sure }) => sure)).toBe(true);
  });

  test('as CSV from a spreadsheet', () => {
    const text =
      'No,Character,Artist,Status,Pick up\r\n1,INES,Anna Berg,W,06:00\r\n2,OLD MAN,"Dahl, Per",SW,\r\n,,,,\r\n3,MIRA,,H,\r\n';
    expect(rows(text)).toEqual(['1 / Ines / Anna Berg', '2 / Old Man / Dahl, Per', '3 / Mira / ']);
    expect(readCastList(text)).toMatchObject({ unread: [], headings: [1, 4] });
  });
});

describe('capitals', () => {
  test.each([
    ['ANNE-MARIE O’NEIL', 'Anne-Marie O’Neil'],
    ["QUEEN'S GUARD", "Queen's Guard"],
    ['MAN OF THE HOUSE', 'Man of the House'],
    ['DR HOLM', 'Dr Holm'],
    ['DJ MIRA', 'DJ Mira'],
    ['J.R. HOLM', 'J.R. Holm'],
    ['KARL III', 'Karl III'],
    ['UNA', 'UNA'],
    ['ØYVIND ÅS', 'Øyvind Ås'],
    ['McCoy', 'McCoy'],
    ['Officer ONE', 'Officer ONE'],
    ['ines', 'ines'],
  ])('%s is written %s', (part, written) => {
    expect(one(`1\t${part}\tAnna Berg-Lund the Younger`)?.part).toBe(written);
  });
});

describe('what is not read is returned with a reason', () => {
  test.each([
    ['14', 'no-name'],
    ['14\t\t0630', 'no-name'],
    ['0630', 'no-name'],
    ['555 010 0199', 'no-name'],
    ['!!! ??? @@@', 'no-name'],
    ['The unit base is at the farm, please park there.', 'not-understood'],
    ['Weather: mostly dry', 'not-understood'],
    ['10 x Villagers 0700', 'not-understood'],
    ['please bring rain cover', 'not-understood'],
    ['Call https://example.org', 'not-understood'],
    ['x'.repeat(501), 'line-too-long'],
    [`1\tINES\t${'Anna '.repeat(1)}${'B'.repeat(201)}`, 'name-too-long'],
    [`No\tRole\tArtist\n${'1'.repeat(21)}\tInes\tAnna`, 'number-too-long'],
  ])('%j: %s', (line, reason) => {
    expect(why(line)).toEqual([reason]);
    expect(readCastList(line).entries).toEqual([]);
  });

  test('with the line as pasted and its number', () => {
    expect(readCastList('1. INES - Anna Berg\r\n\r\n  ?!\t').unread).toEqual([
      { line: 3, text: '  ?!\t', why: 'no-name' },
    ]);
  });

  test('markup and formulas stay plain text', () => {
    expect(one('1. <img src=x onerror=alert(1)> - Anna Berg')?.part).toBe('<img src=x onerror=alert(1)>');
    expect(one('1\t=HYPERLINK("x")\tAnna Berg')?.person).toBe('Anna Berg');
  });

  test('characters that are not seen are left out of names', () => {
    expect(rows('1\u00a0\u200bINES \u2013 \u202eAnna\u202c Berg\ufeff')).toEqual(['1 / Ines / Anna Berg']);
  });
});

describe('size', () => {
  test('after 200 entries the other lines are unread', () => {
    const text = Array.from({ length: 230 }, (_, index) => `${index + 1}. INES - Anna Berg`).join('\n');
    const list = readCastList(text);
    expect(list.entries).toHaveLength(CAST_LIST_LIMITS.entries);
    expect(list.unread.map((unread) => unread.why)).toEqual(Array(30).fill('too-many'));
    expect(list.unread[0]?.line).toBe(201);
  });

  test.each([
    ['one line', 'a, b; '.repeat(170_000)],
    ['lines of one letter', 'a\n'.repeat(500_000)],
    ['blank lines', '\n'.repeat(1_000_000)],
    ['brackets', `${'('.repeat(499)}\n`.repeat(2000)],
    ['numbers', `${'1 '.repeat(249)}\n`.repeat(2000)],
    ['separators', `${'a - '.repeat(124)}\n`.repeat(2000)],
    ['nearly times', `${'1:2 3. '.repeat(70)}x\n`.repeat(2000)],
    ['quotes', `${'",'.repeat(240)}\n`.repeat(2000)],
    ['blanks', `a${' '.repeat(490)}b - \n`.repeat(2000)],
    ['dots', `a${'. '.repeat(245)}\n`.repeat(2000)],
  ])(
    'a megabyte of %s is answered within three seconds of work',
    (_, text) => {
      const from = process.cpuUsage();
      const { entries, unread, headings } = readCastList(text);
      expect(process.cpuUsage(from).user / 1000).toBeLessThan(3000);
      expect(entries.length + unread.length + headings.length).toBe(
        text.split('\n').filter((line) => line.trim() !== '').length,
      );
    },
    60_000,
  );
});

const piece = fc.oneof(
  fc.constantFrom(
    'INES',
    'Anna Berg',
    'Old Man',
    '1',
    '1A',
    '0630',
    'W',
    'SWF',
    '(',
    ')',
    '"',
    'as',
    'CAST',
    'Artist',
  ),
  fc.constantFrom(
    '\t',
    ';',
    ',',
    ' - ',
    ' | ',
    '  ',
    ': ',
    '.',
    '…',
    '•',
    '<b>',
    '\u200b',
    '\u202e',
    'Character',
    'No',
  ),
  fc.string({ unit: 'binary', maxLength: 6 }),
);
const pasted = fc
  .array(
    fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
    { maxLength: 12 },
  )
  .chain((lines) => fc.constantFrom('\n', '\r\n', '\r').map((end) => lines.join(end)));

describe('any paste', () => {
  test('every line that is not blank is in one list only, in order (seed 41)', () => {
    fc.assert(
      fc.property(pasted, (text) => {
        const { entries, unread, headings } = readCastList(text);
        const told = [
          ...entries.flatMap(({ line, more }) => [line, ...more]),
          ...unread.map(({ line }) => line),
          ...headings,
        ];
        const lines = text.split(/\r\n|[\n\r\u2028\u2029]/);
        const blank = (line: string) => line.replace(/[\p{Cc}\p{Cf}\p{Cs}\s]/gu, '') === '';
        const unaccounted = lines.flatMap((line, index) =>
          told.includes(index + 1) || blank(line) ? [] : [line],
        );
        expect(unaccounted).toEqual([]);
        expect(new Set(told).size).toBe(told.length);
        for (const { line, text: kept } of unread) expect(kept).toBe(lines[line - 1]);
        for (const list of [entries, unread])
          expect(list.map(({ line }) => line)).toEqual(list.map(({ line }) => line).sort((a, b) => a - b));
      }),
      { seed: 41, numRuns: 2000 },
    );
  }, 60_000);

  test('entries are fit for a voice: named, within its lengths, nothing unseen (seed 42)', () => {
    fc.assert(
      fc.property(pasted, (text) => {
        for (const { number, part, person } of readCastList(text).entries) {
          expect(part + person).toMatch(/\p{L}/u);
          expect(number.length).toBeLessThanOrEqual(20);
          expect(Math.max(part.length, person.length)).toBeLessThanOrEqual(200);
          expect(number + part + person).not.toMatch(/[\u0000-\u001f\u202a-\u202e\u2066-\u2069\ufeff]/);
        }
      }),
      { seed: 42, numRuns: 2000 },
    );
  }, 60_000);
});
