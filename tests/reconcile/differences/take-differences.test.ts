import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../src/facts/fact.ts';
import { speaker, take } from '../../day/say.ts';
import type { CardFile } from '../build-card.ts';
import { cardOf, recordCard } from '../build-card.ts';
import { checkFiles, choiceOf, openOn } from '../check-card.ts';

const SECOND = 48_000;
const times = (at: number) => ({ start: { frames: 900_000 + at * 1500, rate: '25' } });

/** Takes a minute apart on one roll, with what else is said of each. */
function dayOf(...takes: object[]) {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { date: '2026-10-07' } }, { kind: 'roll-changed', roll: '7A' });
  const ids = takes.map((more, at) => phone.id(take('24', 1, at + 1, { ...times(at), ...more })));
  return { phone, ids, day: phone.day, files: cardOf(phone.day()) };
}
const found = async (
  day: ReturnType<typeof dayOf>,
  change: (file: CardFile, at: number) => Partial<CardFile>,
) =>
  (
    await checkFiles(
      day.day(),
      day.files.map((file, at) => ({ ...file, ...change(file, at) })),
    )
  ).map(({ code, was, is, settlements }) => ({ code, was, is, first: choiceOf(settlements[0]) }));
const describing = (id: string, fields: object) => ({
  kind: 'describe-takes',
  takes: [{ take: id, fields }],
});

describe('types', () => {
  test.each<[string, object, string[], unknown, object | null]>([
    ['a false start nobody logged', {}, ['FALSE_START'], ['take'], { falseStart: true }],
    [
      'no good, which is not circled',
      { circled: true },
      ['NO_GOOD'],
      ['take'],
      { noGood: true, circled: false },
    ],
    ['a pickup', {}, ['PICKUP'], ['take'], { kind: 'pickup' }],
    [
      'no good of a false start',
      { falseStart: true },
      ['NO_GOOD'],
      ['take', 'false-start'],
      { noGood: true, circled: false },
    ],
    [
      'a false start of no good',
      { noGood: true },
      ['FALSE_START'],
      ['take', 'no-good'],
      { falseStart: true },
    ],
    ['what both say', { kind: 'pickup', falseStart: true }, ['PICKUP', 'FALSE_START'], null, null],
    ['what only the log says', { falseStart: true, noGood: true }, [], null, null],
    ['a wild track of room tone', { kind: 'tone' }, ['WILD_TRACK'], null, null],
    ['words without a field', {}, ['REHEARSAL'], null, null],
  ])('%s', async (_, more, types, was, fields) => {
    const day = dayOf(more);
    const all = await found(day, (file) => ({ types, scene: file.scene ?? '', circled: undefined as never }));
    const told = all.filter(({ code }) => code === 'take-type-differs');
    expect(told).toEqual(
      fields ? [{ code: 'take-type-differs', was, is: types, first: describing(day.ids[0]!, fields) }] : [],
    );
  });
});

describe('circles', () => {
  test.each([
    [false, true, { circled: true, noGood: false }],
    [true, false, { circled: false }],
    [true, true, null],
    [false, undefined, null],
  ])('logged %s, file %s', async (logged, circled, fields) => {
    const day = dayOf({ circled: logged });
    const told = await found(day, () => ({ circled: circled as boolean }));
    // A file whose iXML says nothing says that it is not circled.
    const expected = circled === undefined && logged === false ? null : fields;
    expect(told.map(({ first }) => first)).toEqual(expected ? [describing(day.ids[0]!, expected)] : []);
  });
});

describe('notes', () => {
  const noted = async (logged: string[], note: string) => {
    const day = dayOf({});
    for (const text of logged) day.phone.say({ kind: 'note-added', take: day.ids[0]!, text });
    const told = await found(day, () => ({ note }));
    return told.map(({ code, was, is, first }) => [code, was, is, first?.kind]);
  };

  test.each([
    [[], 'Plane', true],
    [[], ' ', false],
    [['Plane'], 'plane', false],
    [['Plane over the jetty'], 'Plane', false],
    [['Plane'], 'Plane over the jetty', false],
    [['Plane', 'Wind'], 'plane  wind', false],
    [['Plane'], 'Boat', true],
    [[' '], 'Boat', true],
  ])('logged %j, file %j', async (logged, note, isTold) => {
    expect(await noted(logged, note)).toEqual(isTold ? [['note-not-logged', logged, note, 'add-note']] : []);
  });

  test('are taken over without what surrounds them', async () => {
    expect(await noted([], ' Boat ')).toEqual([['note-not-logged', [], 'Boat', 'add-note']]);
  });

  test('are cut to what a log holds', async () => {
    const [[, , is] = []] = await noted([], ` ${'x'.repeat(4001)}`);
    expect(is).toBe('x'.repeat(4000));
  });
});

describe('names of files', () => {
  const renamed = async (takes: number, count: number, name = (at: number) => `K${at}.wav`) => {
    const day = dayOf(...Array.from({ length: takes }, () => ({})));
    return { day, told: await found(day, (file, at) => ({ name: at < count ? name(at) : file.name })) };
  };

  test('that differ for four takes, and for more than half of them, are one difference', async () => {
    const { day, told } = await renamed(7, 4);
    expect(told).toEqual([
      {
        code: 'file-names-differ',
        was: '24AT1.wav',
        is: 'K0.wav',
        first: {
          kind: 'describe-takes',
          takes: day.ids.slice(0, 4).map((id, at) => ({ take: id, fields: { file: `K${at}.wav` } })),
        },
      },
    ]);
  });

  test.each([
    [3, 3],
    [8, 4],
  ])('of %i takes that differ for %i are told one by one', async (takes, count) => {
    const { told } = await renamed(takes, count);
    expect(told.map(({ code, is }) => [code, is])).toEqual(
      Array.from({ length: count }, (_, at) => ['file-name-differs', `K${at}.wav`]),
    );
  });

  test('that no log can hold are told without that way to settle them', async () => {
    const { told } = await renamed(1, 1, () => `${'x'.repeat(197)}.wav`);
    expect(told[0]!.first).toEqual({ kind: 'keep-log' });
    const { told: fitting } = await renamed(1, 1, () => `${'x'.repeat(196)}.wav`);
    expect(fitting[0]!.first).toMatchObject({ takes: [{ fields: { file: `${'x'.repeat(196)}.wav` } }] });
  });

  test('with a mark after the name of a single file are told', async () => {
    const { told } = await renamed(1, 1, () => '24AT1_1.wav');
    expect(told.map(({ code, is }) => [code, is])).toEqual([['file-name-differs', '24AT1_1.wav']]);
  });
});

describe('rolls', () => {
  const rolls = async (tapes: readonly string[], changes: Record<number, string> = {}) => {
    const phone = speaker();
    phone.say({ kind: 'roll-changed', roll: '7A' });
    const ids = tapes.map((_, at) => {
      const roll = changes[at];
      if (roll !== undefined) phone.say({ kind: 'roll-changed', roll } as Draft);
      return phone.id(take('24', 1, at + 1, times(at)));
    });
    const files = cardOf(phone.day()).map((file, at) => ({ ...file, tape: tapes[at]! }));
    const told = openOn(phone.day(), await recordCard(files)).filter(({ code }) => code === 'roll-differs');
    return told.map(({ take: id, was, is, settlements }) => ({
      at: ids.indexOf(id!),
      was,
      is,
      ways: settlements.slice(0, -1).map(({ kind, ...way }) => {
        const { before, back } = way as { before?: string; back?: { roll: string; before: string } | null };
        return [kind, ids.indexOf(before!), back && [back.roll, ids.indexOf(back.before)]];
      }),
    }));
  };

  test('that differ to the end of the day do not go back', async () => {
    expect(await rolls(['7A', '7B', '7B'])).toEqual([
      { at: 1, was: '7A', is: '7B', ways: [['change-roll', 1, null]] },
    ]);
  });

  test('that differ for a while go back before the take that has the old one again', async () => {
    expect(await rolls(['7A', '7B', '7B', '7A'])).toEqual([
      { at: 1, was: '7A', is: '7B', ways: [['change-roll', 1, ['7A', 3]]] },
    ]);
  });

  test('do not go back where a change of its own stands before that take', async () => {
    expect(await rolls(['7A', 'X', '7C'], { 2: '7C' })).toEqual([
      { at: 1, was: '7A', is: 'X', ways: [['change-roll', 1, null]] },
    ]);
  });

  test('that were said one take late are moved there', async () => {
    expect(await rolls(['7A', '7B', '7B'], { 2: '7B' })).toEqual([
      {
        at: 1,
        was: '7A',
        is: '7B',
        ways: [
          ['move-changes', 1, undefined],
          ['change-roll', 1, null],
        ],
      },
    ]);
  });

  test('that differ in two ways one after the other are two differences', async () => {
    expect((await rolls(['7A', 'X', 'Y', 'Y'])).map(({ at, is }) => [at, is])).toEqual([
      [1, 'X'],
      [2, 'Y'],
    ]);
  });

  test('that the file does not say do not differ', async () => {
    expect(await rolls(['7A', '', '7A'])).toEqual([]);
  });
});

describe('slates and numbers', () => {
  test('of a file that does not say them do not differ', async () => {
    const day = dayOf({});
    const { scene: _, take: __, ...bare } = day.files[0]!;
    expect(await checkFiles(day.day(), [bare])).toEqual([]);
  });

  test('of a numbered slate may be the scene alone', async () => {
    const day = dayOf({ slate: { style: 'numbered', number: 118, scene: '24' } });
    expect(await found(day, () => ({ scene: '24' }))).toEqual([]);
    expect((await found(day, () => ({ scene: '25' }))).map(({ code, was, is }) => [code, was, is])).toEqual([
      ['slate-differs', '118', '25'],
    ]);
  });
});

describe('recordings of another day', () => {
  const dated = async (date: string) => {
    const day = dayOf({});
    const extra = { ...day.files[0]!, name: 'OLD.wav', scene: '99', date, start: 50_000 * SECOND };
    return (await checkFiles(day.day(), [...day.files, extra])).map(({ code }) => code);
  };

  test.each([
    ['2026-10-06', 'recordings-of-another-day'],
    ['2026-10-07', 'recording-not-logged'],
    ['2026-10-08', 'recording-not-logged'],
    ['2026-10-09', 'recordings-of-another-day'],
    ['2025-10-07', 'recordings-of-another-day'],
  ])('are told by their date %s: %s', async (date, code) => {
    expect(await dated(date)).toEqual([code]);
  });

  test('are not told on a day without a date', async () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const extra = { ...file!, name: 'OLD.wav', scene: '99', date: '2020-01-01', start: 50_000 * SECOND };
    expect((await checkFiles(phone.day(), [file!, extra])).map(({ code }) => code)).toEqual([
      'recording-not-logged',
    ]);
  });
});
