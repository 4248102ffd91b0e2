import { describe, expect, test } from 'vitest';
import { columnsOf, isHeading, isRule, orderNamed } from '../../../src/callsheet/cast/cast-columns.ts';
import { readCastLine } from '../../../src/callsheet/cast/cast-line.ts';
import { CAST_LIST_LIMITS, readCastList } from '../../../src/callsheet/cast/cast-list.ts';
import { orderOf, splitByCase } from '../../../src/callsheet/cast/cast-order.ts';
import {
  cellKind,
  cellsAt,
  isStatus,
  numberIn,
  withoutTimes,
} from '../../../src/callsheet/cells/sheet-cells.ts';
import {
  isLower,
  isName,
  isUpper,
  tidyName,
  withoutUnseen,
} from '../../../src/callsheet/cells/sheet-names.ts';

// Words and abbreviations of call sheets: common practice, no source. All names are invented.

const words = (text: string): string[] => text.split(' ');

describe('a cell', () => {
  test.each([
    ...words('W SW WF SWF H R T S F D SF WD SWD HF HW WH SH TW WT RW PW PU PUW PWF SR SWT WFT SWFT'),
    ...words('0630 06:30 6.30 6h30 23:59 6:30am 6:30p 06:30a.m. 6am 12pm 0630h 0630hrs 0630-0715 6:30–7:15'),
    ...[
      'o/c',
      'O/C',
      'w/n',
      'n/a',
      'TBC',
      'tba',
      'tbd',
      'T.B.C.',
      'on call',
      'will notify',
      'per AD',
      'per a.d.',
    ],
    ...['on set', 'HOLD', '-', '–', '—', '---', '✓', '✔', 'x', 'X'],
    ...['anna@example.org', '555 010 0199', '+46 (0)8-555 01', '555.010.0'],
  ])('%j is aside', (cell) => {
    expect(cellKind(cell)).toBe('aside');
  });

  test.each([
    ['1', '1'],
    ['1.', '1'],
    ['1A', '1A'],
    ['(12)', '12'],
    ['[12]', '12'],
    ['#7', '7'],
    ['№ 7', '7'],
    ['No. 7', '7'],
    ['nr 7', '7'],
    ['Cast #7', '7'],
    ['101-110', '101-110'],
    ['101–110', '101–110'],
    ['1.1', '1.1'],
    ['555-0100', '555-0100'],
    ['9999', '9999'],
    ['7:', '7'],
  ])('%j is number %s', (cell, number) => {
    expect([cellKind(cell), numberIn(cell)]).toEqual(['number', number]);
  });

  test.each([
    'Ines',
    'w',
    'sw',
    'WX',
    '10000',
    'no',
    '2400',
    '1AB',
    '1.123',
    '555 01',
    '@home',
    '25:00',
    'on-call',
  ])('%j is text or a number, and not aside', (cell) => {
    expect(cellKind(cell)).not.toBe('aside');
    expect(numberIn(cell)).toBe(cell === '2400' ? '2400' : '');
  });

  test('of nothing is empty, and letters are of a status as capitals only', () => {
    expect(cellKind('')).toBe('empty');
    expect([isStatus('SW'), isStatus('sw')]).toEqual([true, false]);
  });

  test.each([
    ['INES W 0630 0715', 'INES'],
    ['INES SW', 'INES'],
    ['INES W', 'INES W'],
    ['INES W 0630', 'INES'],
    ['0630 INES', 'INES'],
    ['SW INES', 'INES'],
    ['W 0630 INES', 'W INES'],
    ['INES -- ', 'INES'],
    ['INES - 0630', 'INES'],
    ['INES 0630, Anna', 'INES , Anna'],
    ['W SW', 'W'],
    ['INES  Anna', 'INES Anna'],
  ])('%j without times is %j', (text, rest) => {
    expect(withoutTimes(text)).toBe(rest);
  });

  // RFC 4180 section 2: quoted cells may hold the delimiter, and a quote is doubled.
  test('is trimmed, and may be quoted', () => {
    expect(cellsAt(' a ;b  c; ', ';')).toEqual(['a', 'b c', '']);
    expect(cellsAt('"a;b";"say ""c"""', ';')).toEqual(['a;b', 'say "c"']);
    expect(cellsAt('"a";b', ',')).toEqual(['"a";b']);
    expect(cellsAt('  a b  c   d', 'spaces')).toEqual(['a b', 'c', 'd']);
  });
});

describe('a heading of columns', () => {
  test.each(['No', 'Nr.', 'Num', 'Number', '#', 'ID', 'Cast No.', 'Cast #', 'Cast Number', 'Cast ID', '№'])(
    '%j is of numbers',
    (heading) => {
      expect(columnsOf(`${heading}\tRole\tActor`)).toEqual({
        delimiter: '\t',
        width: 3,
        number: 0,
        part: [1],
        person: [2],
        pickUp: -1,
        onSet: -1,
      });
    },
  );

  test.each([
    'Character',
    'Characters',
    'Character Name',
    'Role',
    'Roles',
    'Part',
    'Parts',
    'Char.',
    'Plays',
  ])('%j is of parts', (heading) => {
    expect(columnsOf(`Actor;${heading}`)).toMatchObject({ part: [1], person: [0], number: -1 });
  });

  test.each(
    ['Artist', 'Artiste', 'Artists', 'Actor', 'Actress', 'Performer', 'Player', 'Talent', 'Person'].flatMap(
      (word) => [word, `${word} name`],
    ),
  )('%j is of persons', (heading) => {
    expect(columnsOf(`Role | ${heading}`)).toMatchObject({ part: [0], person: [1] });
  });

  test.each([
    ['First name', 'Last name'],
    ['First', 'Last'],
    ['Forename', 'Surname'],
    ['Given name', 'Family name'],
  ])('%j and %j are of persons together, the first name first', (first, last) => {
    expect(columnsOf(`${last},${first},Role`)).toMatchObject({ part: [2], person: [1, 0] });
  });

  test.each([
    'Status',
    'W/H',
    'Pick up',
    'Pickup',
    'P/U',
    'Call',
    'Call time',
    'Report',
    'Makeup',
    'M/U',
    'MU',
  ])('%j is known and aside', (heading) => {
    expect(columnsOf(`Role\t${heading}`)).toMatchObject({ part: [0], person: [], width: 2 });
    expect(columnsOf('Role\tMoon')).toBeNull();
  });

  test('of cast is of numbers beside persons, and of persons beside numbers', () => {
    expect(columnsOf('Cast\tActor')).toMatchObject({ number: 0, person: [1] });
    expect(columnsOf('Cast\tSurname')).toMatchObject({ number: 0, person: [1] });
    expect(columnsOf('No\tCast')).toMatchObject({ number: 0, person: [1] });
    expect(columnsOf('No\tCast member')).toMatchObject({ number: 0, person: [1] });
    expect(columnsOf('Role\tPlayed by')).toMatchObject({ part: [0], person: [1] });
    expect(columnsOf('Actor\tName')).toMatchObject({ part: [1], person: [0] });
    expect(columnsOf('Cast\tFull name')).toMatchObject({ part: [1], person: [0] });
    expect(columnsOf('Role\tName')).toMatchObject({ part: [0], person: [1] });
  });

  test('has two columns or more that name people, and no row under it', () => {
    expect(columnsOf('Role')).toBeNull();
    expect(columnsOf('No\tStatus')).toBeNull();
    expect(columnsOf('No\tFirst name')).toBeNull();
    expect(columnsOf('Role\tActor\t7')).toBeNull();
    expect(columnsOf('Role\tActor\t0630')).toBeNull();
    expect(columnsOf('Role\tActor\t\t')).toMatchObject({ width: 4 });
    expect(columnsOf('Part\tPart\tActor')).toMatchObject({ part: [0], person: [2] });
  });
});

describe('a line that is no entry', () => {
  test.each([
    'Cast',
    'PRINCIPALS',
    'Extras:',
    'Background',
    'Stunts',
    'Cast list day 4',
    'No. Role',
    '(Cast)',
    'Role/ Cast',
  ])('%j is a heading', (line) => expect(isHeading(line)).toBe(line !== 'Role/ Cast'));

  test.each(['4 Cast', 'List', 'Cast of Ines', 'Day 4', '', '***', 'Hair Wardrobe'])('%j is none', (line) => {
    expect(isHeading(line)).toBe(false);
  });

  // Other columns that stand beside cast: each word is known in a heading.
  test.each([
    ...words(
      'list sheet members principal principals supporting featured stunts stunt background extras day days',
    ),
    ...words(
      'dayplayers w/n up hair wardrobe w’drobe costume cos set on ready remarks notes comments travel wrap est',
    ),
    ...words('make make-up hmu mu/h h/mu unit and of the scene scenes sc phone email age agent time times'),
    ...words('first last name member played by call report status swf w/h pick p/u m/u mu'),
  ])('cast %s is a heading', (word) => {
    expect(isHeading(`Cast ${word}`)).toBe(true);
  });

  test('of ornament alone is a rule', () => {
    expect(['-----', ' = = ', '***', '_', '~.•·+|#,;', '–—'].map(isRule)).toEqual(Array(6).fill(true));
    expect(['- a -', '(', ''].map(isRule)).toEqual([false, false, false]);
  });

  test.each([
    ['No. Character Artist', 'part-first'],
    ['No. Artist Character', 'person-first'],
    ['Cast No. Character', null],
    ['Cast No. Character Cast', 'part-first'],
    ['Cast # Name Role', 'person-first'],
    ['Role Name', 'part-first'],
    ['Cast Role', 'person-first'],
    ['Role', null],
    ['Artist', null],
  ])('%j names the order %s', (line, order) => {
    expect(orderNamed(line)).toBe(order);
  });
});

describe('a line', () => {
  const read = (line: string) => {
    const result = readCastLine(line);
    return result.ok ? result.value : result.problem.code;
  };
  const said = (number: string, first: string, second: string, more: object = {}) => ({
    number,
    first,
    second,
    ...more,
  });

  test.each<[string, object | string]>([
    ['1 | INES | Anna | Berg', said('1', 'INES', 'Anna', { clear: false })],
    ['Ines, Anna Berg', said('', 'Ines', 'Anna Berg', { order: 'part-first', sign: 'likely', clear: true })],
    ['Ines: Anna Berg', said('', 'Ines', 'Anna Berg', { clear: false })],
    ['1 Ines: Anna Berg', said('1', 'Ines', 'Anna Berg', { clear: true })],
    ['Ines, played by Anna Berg', said('', 'Ines,', 'Anna Berg', { order: 'part-first', sign: 'worded' })],
    ['Ines portrayed by Anna Berg', said('', 'Ines', 'Anna Berg', { order: 'part-first', sign: 'worded' })],
    ['Anna Berg plays Ines', said('', 'Anna Berg', 'Ines', { order: 'person-first', sign: 'worded' })],
    ['Anna Berg playing Ines', said('', 'Anna Berg', 'Ines', { order: 'person-first', sign: 'worded' })],
    ['Anna Berg as Ines', said('', 'Anna Berg', 'Ines', { order: 'person-first', sign: 'worded' })],
    ['Anna Berg (Ines)', said('', 'Anna Berg', 'Ines', { order: 'person-first', sign: 'looks' })],
    ['Anna (Ines)', said('', 'Anna', 'Ines', { order: 'person-first', sign: 'likely' })],
    ['Ines (Anna Berg)', said('', 'Ines', 'Anna Berg', { order: 'part-first', sign: 'likely' })],
    ['INES (Anna Berg)', said('', 'INES', 'Anna Berg', { order: 'part-first', sign: 'looks' })],
    ['Ines Berg (V.O.)', said('', 'Ines Berg (V.O.)', '', { clear: false })],
    ['7 Old Grey Man Per Dahl', said('7', 'Old Grey Man', 'Per Dahl', { sign: 'likely', clear: false })],
    ['7 Per Olof Dahl', said('7', 'Per', 'Olof Dahl', { order: 'part-first' })],
    ['7 Old Grey Man of Per Dahl', said('7', 'Old Grey Man of', 'Per Dahl')],
    ['7 Old Grey Man of The Per Dahl', said('7', 'Old Grey Man of The Per Dahl', '', { clear: false })],
    ['7 The Old Man', said('7', 'The Old Man', '', { clear: false })],
    ['7 an Old Man', said('7', 'an Old Man', '')],
    ['7 Per Dahl', said('7', 'Per Dahl', '', { clear: false })],
    ['7 ines', said('7', 'ines', '', { clear: true })],
    ['INES BERG', said('', 'INES BERG', '', { clear: true })],
    ['INES ANNA BERG', said('', 'INES ANNA BERG', '', { clear: false })],
    ['INES ANNA BERG LUND', 'not-understood'],
    ['ines berg', 'not-understood'],
    ['ines', said('', 'ines', '', { clear: true })],
    ['10 x Villagers', 'not-understood'],
    ['10 × Villagers', 'not-understood'],
    ['(12A) Ines', said('12A', 'Ines', '')],
    ['Ines (12) Anna Berg', said('12', 'Ines', 'Anna Berg', { clear: true })],
    ['0630 Ines', said('', 'Ines', '', { clear: false })],
    ['7 Ines 0630', said('7', 'Ines', '', { clear: true })],
    ['P/U 0600', 'no-name'],
    ['', 'no-name'],
    ['Lunch at noon - rain', 'not-understood'],
    ['7 lunch - Rain', said('7', 'lunch', 'Rain')],
    ['Mia - rain', 'not-understood'],
    ['mia - rain', said('', 'mia', 'rain')],
    ['one two three - four five six seven', 'not-understood'],
    ['One Two Three - Four Five Six Seven', said('', 'One Two Three', 'Four Five Six Seven')],
  ])('%j', (line, expected) => {
    const found = read(line);
    if (typeof expected === 'string') expect(found).toBe(expected);
    else expect(found).toMatchObject(expected);
  });

  test('is cut by a comma behind a number, or between three cells', () => {
    expect(read('1, Ines')).toMatchObject(said('1', 'Ines', ''));
    expect(read('Ines, 1, Anna Berg')).toMatchObject(said('1', 'Ines', 'Anna Berg', { clear: true }));
    expect(read('1, Ines, Anna, Berg')).toMatchObject(said('1', 'Ines', 'Anna', { clear: false }));
  });
});

describe('which of two names is the part', () => {
  test.each([
    ['INES', 'Anna Berg', 'part-first', 'looks'],
    ['Anna Berg', 'INES', 'person-first', 'looks'],
    ['ANNA BERG', 'Ines', 'person-first', 'likely'],
    ['Ines', 'ANNA BERG', 'part-first', 'likely'],
    ['INES BERG', 'Anna Lund', 'part-first', 'looks'],
    ['The Miller', 'Per Dahl', 'part-first', 'looks'],
    ['Per Dahl', 'The Miller', 'person-first', 'looks'],
    ['Per Dahl', 'Guard 2', 'person-first', 'looks'],
    ['“Fox”', 'Per', 'part-first', 'looks'],
    ['Ines', 'Anna Berg', 'part-first', 'likely'],
    ['Anna Berg', 'Ines', 'person-first', 'likely'],
    ['Ines', 'Anna', null, null],
    ['Old Man', 'Per Dahl', null, null],
  ])('%s, %s: %s, %s', (first, second, order, sign) => {
    expect(orderOf(first, second)).toEqual({ order, sign });
  });

  test.each<[string, [string, string] | null]>([
    ['INES Anna Berg', ['INES', 'Anna Berg']],
    ['OLD MAN Per Dahl', ['OLD MAN', 'Per Dahl']],
    ['GUARD 2 Per Dahl', ['GUARD 2', 'Per Dahl']],
    ['Anna Berg INES', ['Anna Berg', 'INES']],
    ['Anna B. INES', ['Anna B.', 'INES']],
    ['INES A. Berg', ['INES', 'A. Berg']],
    ['INES Anna B. Berg', ['INES', 'Anna B. Berg']],
    ['INES Anna BERG', null],
    ['A Berg', null],
    ['Karl III', null],
    ['Per Dahl JR.', null],
    ['Per Dahl SR', null],
    ['Anna Berg I', null],
    ['INES BERG', null],
    ['Anna Berg', null],
    ['Anna B. Berg', null],
  ])('%j is split by case: %j', (line, pair) => {
    expect(splitByCase(words(line))).toEqual(pair);
  });
});

describe('a name', () => {
  test('is of capitals or small letters only where there is case', () => {
    expect(['DR. O’NEIL 2', 'Ines', 'アンナ', '2'].map(isUpper)).toEqual([true, false, false, false]);
    expect(['ines 2', 'Ines', 'アンナ', '2'].map(isLower)).toEqual([true, false, false, false]);
  });

  test.each([
    ['one two three four five six seven eight', true],
    ['one two three four five six seven eight nine', false],
    ['123', false],
    ['anna@example', false],
    ['see http://x', false],
    ['Anna?', false],
    ['Anna!', false],
    ['Anna;', false],
    ['Anna Berg Jr.', true],
    ['Anna Berg.', false],
    ['Ana.', true],
  ])('%j can be one: %s', (text, can) => {
    expect(isName(text)).toBe(can);
  });

  test.each([
    [' - INES - ', 'Ines'],
    ['"INES"', 'Ines'],
    ['«Ines»', 'Ines'],
    ['ANNA', 'Anna'],
    ['ANN', 'ANN'],
    ['A.N.N.A.', 'A.N.N.A.'],
    ['KARL II', 'Karl II'],
    ['KARL I', 'Karl I'],
    ['CPT HOLM', 'CPT Holm'],
    ['MR HOLM', 'Mr Holm'],
    ['MRS HOLM', 'Mrs Holm'],
    ['MS HOLM', 'Ms Holm'],
    ['ST HOLM', 'St Holm'],
    ['SGT HOLM', 'Sgt Holm'],
    ['HOLM JR', 'Holm Jr'],
    ['HOLM SR', 'Holm Sr'],
    ['D’ARCY HOLM', 'D’Arcy Holm'],
    ["CHILDREN'S MAID", "Children's Maid"],
    ['SMITH-HOLM', 'Smith-Holm'],
    ['e\u0301ME', 'éME'],
    ['INES   BERG', 'Ines Berg'],
    // Small words stay small within a name and not at its head.
    ...words('of the and in at with de da van von der den').map((word) => [
      `${word.toUpperCase()} MOON ${word.toUpperCase()} SUN`,
      `${word[0]!.toUpperCase()}${word.slice(1)} Moon ${word} Sun`,
    ]),
  ])('%j is written %j', (typed, written) => {
    expect(tidyName(typed!)).toBe(written);
  });

  test('keeps the joiners that some scripts need, and tabs', () => {
    expect(withoutUnseen('a\u200cb\u200dc\td\u200be\u00a0f\vg\fh')).toBe('a\u200cb\u200dc\tde f g h');
  });
});

describe('what a list holds', () => {
  const why = (text: string) => readCastList(text).unread.map((unread) => unread.why);

  test('is 2000 lines of 500 characters', () => {
    const blank = '\n'.repeat(CAST_LIST_LIMITS.lines - 1);
    expect(why(`${blank}Ines`)).toEqual([]);
    expect(why(`${blank}\nInes`)).toEqual(['too-many']);
    expect(why(`INES\t${'A'.repeat(195)}${' '.repeat(300)}`)).toEqual([]);
    expect(why(`INES\t${'A'.repeat(195)}${' '.repeat(301)}`)).toEqual(['line-too-long']);
  });

  test('is names of 200 characters and numbers of 20', () => {
    expect(why(`1\tINES\t${'A'.repeat(200)}`)).toEqual([]);
    expect(why(`1\t${'A'.repeat(201)}\tAnna`)).toEqual(['name-too-long']);
    expect(why(`No\tRole\tArtist\n${'1'.repeat(20)}\tInes\tAnna`)).toEqual([]);
  });

  test('is lines that end in any way a text can', () => {
    const parts = readCastList('Ines\rDora\nTomas\r\nMira\u2028Una\u2029Ulf').entries;
    expect(parts.map(({ part, line }) => [part, line])).toEqual([
      ['Ines', 1],
      ['Dora', 2],
      ['Tomas', 3],
      ['Mira', 4],
      ['Una', 5],
      ['Ulf', 6],
    ]);
  });

  test('a line of what is not seen is blank, however long', () => {
    const list = readCastList(`\u200b${' '.repeat(1100)}\n${' '.repeat(1100)}Ines`);
    expect(list.unread).toMatchObject([{ line: 2, why: 'line-too-long' }]);
  });

  test('rows under columns need them, and a number may be any word', () => {
    const rows = (text: string) =>
      readCastList(text).entries.map(({ number, part, person }) => [number, part, person]);
    expect(rows('ID\tRole\tActor\nX7\tInes\tAnna\n-\tDora\tLea')).toEqual([
      ['X7', 'Ines', 'Anna'],
      ['', 'Dora', 'Lea'],
    ]);
    expect(rows('Role\tActor\nInes')).toEqual([['', 'Ines', '']]);
    expect(rows('Role\tActor\tStatus\nInes\tAnna')).toEqual([['', 'Ines', 'Anna']]);
    expect(why('Role\tActor\n\t555 010 0199')).toEqual(['no-name']);
  });

  test('two that look the same way settle a third that is likely', () => {
    const sure = (text: string) => readCastList(text).entries.map((entry) => entry.sure);
    expect(sure('1. INES - Anna Berg\n2. DORA - Lea Holm\n3. Mira - Ada Lund')).toEqual([true, true, true]);
    expect(sure('1. INES - Anna Berg\n3. Mira - Ada Lund')).toEqual([true, false]);
    expect(sure('1. INES - Anna Berg\n2. DORA - Lea Holm\n3. Ada Lund - Mira')).toEqual([true, true, false]);
  });
});
