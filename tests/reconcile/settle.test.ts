import { describe, expect, test } from 'vitest';
import { describeTake } from '../../src/commands/line/log-takes.ts';
import { noteCardCheck, settleAll, settleCard } from '../../src/commands/line/settle-card.ts';
import { undo } from '../../src/commands/line/undo.ts';
import type { Day } from '../../src/day/model.ts';
import { cardCheckOf } from '../../src/day/wrap/card-check.ts';
import { readFact } from '../../src/facts/fact.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { reportOf } from '../../src/report/model.ts';
import type { Speaker } from '../day/say.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, checkedNow, checkFiles, openOn, settle, told } from './check-card.ts';
import { filmDay, seeded } from './film-day.ts';

const SECOND = 48_000;

const line = (day: Day, at: number) => reportOf(day).takes[at]!;

/** A plain day of a few takes, and the files of a recorder that agrees. */
function plainDay(takes = 8) {
  const filmed = filmDay({ takes, seed: 11 });
  return { ...filmed, files: cardOf(filmed.day()) };
}

const takeBackLast = (phone: Speaker): void => {
  const said = undo(phone.day(), 'phonea');
  if (said.ok) phone.say(...said.value);
};

describe('taking what the file says', () => {
  const CHANGED: readonly (readonly [string, Partial<CardFile>, object])[] = [
    ['slate-differs', { scene: '31C' }, { scene: '31', slate: '31C', text: '31C/2' }],
    ['take-number-differs', { take: '9' }, { take: '9' }],
    ['circled-differs', { circled: true }, { circled: true }],
    ['take-type-differs', { types: ['NO_GOOD'] }, { status: ['no-good'] }],
    ['note-not-logged', { note: 'Boat horn' }, {}],
    ['file-name-differs', { name: 'K7.wav' }, { file: 'K7.wav' }],
    ['roll-differs', { tape: '9Z' }, { roll: '9Z' }],
  ];

  test.each(CHANGED)(
    '%s: changes the line of the report, and one undo takes it back',
    async (code, change, expected) => {
      const { phone, day, files } = plainDay();
      const before = reportOf(day());
      const recordings = await recordCard(files.with(1, { ...files[1]!, ...change }));
      const [found, ...others] = openOn(day(), recordings);
      expect([found?.code, others]).toEqual([code, []]);
      settle(phone, byFile(found!));
      expect(line(day(), 1)).toMatchObject(expected);
      if (code === 'note-not-logged') expect(line(day(), 1).notes.at(-1)?.text).toBe('Boat horn');
      expect(reportOf(day()).takes.filter((_, at) => at !== 1)).toMatchObject(
        before.takes.filter((_, at) => at !== 1).map(({ takeId, roll, text }) => ({ takeId, roll, text })),
      );
      takeBackLast(phone);
      expect(reportOf(day())).toEqual(before);
    },
  );

  test.each([
    ['13', { number: 13, scene: '5A' }],
    ['5B', { number: 12, scene: '5B' }],
  ])(
    'scene %s of a file is read as the slate of its take is, whatever slates the day has now',
    async (scene, now) => {
      const { phone, takes, day, files } = plainDay();
      const slate = { style: 'numbered' as const, number: 12, scene: '5A' };
      phone.say({ kind: 'take-described', take: takes[1]!, fields: { slate, file: files[1]!.name } });
      expect(day().header.slateStyle).toBe('lettered');
      const [found] = await checkFiles(day(), files.with(1, { ...files[1]!, scene }));
      expect(found?.code).toBe('slate-differs');
      settle(phone, byFile(found!));
      expect(day().takes.get(takes[1]!)!.slate).toEqual({ style: 'numbered', ...now });
    },
  );

  test('a recording nobody logged becomes a take at its place, with a line in the report', async () => {
    const { phone, day, files } = plainDay();
    const extra: CardFile = {
      ...files[2]!,
      name: '24Z9T4.wav',
      scene: '60B',
      take: '4',
      start: files[2]!.start! + files[2]!.length + 3 * SECOND,
      length: 20 * SECOND,
      circled: true,
      note: 'Unasked',
      types: [],
    };
    const recordings = await recordCard([...files, extra]);
    const [found] = openOn(day(), recordings);
    settle(phone, byFile(found!));
    expect(line(day(), 3)).toMatchObject({
      text: '60B/4',
      file: '24Z9T4.wav',
      circled: true,
      length: '0:20',
      roll: '7A',
    });
    const [note, ...others] = openOn(day(), recordings);
    expect([note?.code, others]).toEqual(['note-not-logged', []]);
    settle(phone, byFile(note!));
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('a logged take without a file becomes MOS, or is taken back', async () => {
    const { phone, day, files, takes } = plainDay();
    const found = (await checkFiles(day(), files.slice(1)))[0]!;
    expect([found.code, found.take]).toEqual(['take-not-recorded', takes[0]]);
    const takeBack = found.settlements.find(({ kind }) => kind === 'take-back')!;
    settle(phone, byFile(found));
    expect(await checkFiles(day(), files.slice(1))).toEqual([]);
    takeBackLast(phone);
    settle(phone, takeBack);
    expect(await checkFiles(day(), files.slice(1))).toEqual([]);
    expect(reportOf(day()).takes.map(({ takeId }) => takeId)).not.toContain(takes[0]);
  });

  test.each([1, 2, 3, 4, 5, 6])(
    'whatever the card says, again and again, ends with an empty list (seed %i)',
    async (seed) => {
      const random = seeded(seed);
      const { phone, day } = filmDay({ takes: 30, seed });
      const chance = <T>(value: T): T | undefined => (random() < 0.15 ? value : undefined);
      const files = cardOf(day()).flatMap((file, at): CardFile[] => {
        const scene = chance(`${40 + (at % 7)}D`);
        const take = chance(String(50 + at));
        const name = chance(`Z${at}.wav`);
        const tape = chance('X1');
        const length = chance(file.length + 9 * SECOND);
        const changed: CardFile = {
          ...file,
          circled: random() < 0.5,
          ...(scene !== undefined && { scene }),
          ...(take !== undefined && { take }),
          ...(name !== undefined && { name }),
          ...(tape !== undefined && { tape }),
          ...(length !== undefined && { length }),
        };
        return random() < 0.08 ? [] : [changed];
      });
      const recordings = await recordCard(files);
      let rounds = 0;
      for (let open = openOn(day(), recordings); open.length > 0 && rounds < 400; rounds += 1) {
        settle(
          phone,
          open[0]!.code === 'recordings-overlap' ? open[0]!.settlements.at(-1)! : byFile(open[0]!),
        );
        open = openOn(day(), recordings);
      }
      expect(told(day(), openOn(day(), recordings))).toEqual([]);
      expect(rounds).toBeGreaterThan(5);
      for (const fact of phone.facts)
        expect(readFact(JSON.parse(JSON.stringify(fact)))).toMatchObject({ ok: true });
    },
  );
});

describe('keeping the log', () => {
  test('settles a difference without changing the log, until that is taken back or the card says something else', async () => {
    const { phone, day, files } = plainDay();
    const changed = files.with(1, { ...files[1]!, circled: true, scene: '31C' });
    const recordings = await recordCard(changed);
    const before = reportOf(day()).takes;
    const [slate] = openOn(day(), recordings);
    settle(phone, slate!.settlements.at(-1)!);
    expect(reportOf(day()).takes).toEqual(before);
    expect(openOn(day(), recordings).map(({ code }) => code)).toEqual(['circled-differs']);
    const all = differencesOf(day(), matchRecordings(day(), recordings));
    expect(all.map(({ code, kept }) => [code, kept])).toEqual([
      ['slate-differs', true],
      ['circled-differs', false],
    ]);
    takeBackLast(phone);
    expect(openOn(day(), recordings)).toHaveLength(2);
  });

  test('holds for these two values only: another on the card or in the log is open', async () => {
    const { phone, day, files } = plainDay();
    const card = async (scene: string) => recordCard(files.with(1, { ...files[1]!, scene }));
    const one = await card('31C');
    settle(phone, openOn(day(), one)[0]!.settlements.at(-1)!);
    expect(openOn(day(), one)).toEqual([]);
    const other = await card('31D');
    expect(openOn(day(), other).map(({ code, is }) => [code, is])).toEqual([['slate-differs', '31D']]);
    const take = [...day().takes.keys()][1]!;
    const slate = { style: 'lettered' as const, scene: '32', setup: 1 };
    const said = describeTake(day(), take, { slate });
    if (said.ok) phone.say(...said.value);
    expect(openOn(day(), one).map(({ code }) => code)).toContain('slate-differs');
  });

  test('as an earlier version said it, without values, holds for any', async () => {
    const { phone, day, files } = plainDay();
    const recordings = await recordCard(files.with(1, { ...files[1]!, scene: '31C' }));
    const [found] = openOn(day(), recordings);
    const kept = found!.settlements.at(-1)!;
    if (kept.kind !== 'keep-log') throw new Error('not a way to keep the log');
    const { values: _, ...difference } = kept.settles;
    phone.say({ kind: 'difference-kept', ...difference });
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('one warning of a file says nothing of another', async () => {
    const { phone, day, files } = plainDay();
    const odd = {
      ...files[1]!,
      more: '<TRACK_LIST><TRACK_COUNT>9</TRACK_COUNT></TRACK_LIST>',
      date: 'yesterday!',
    };
    const recordings = await recordCard(files.with(1, odd));
    const open = openOn(day(), recordings);
    expect(open.every(({ code }) => code === 'file-warning')).toBe(true);
    expect(open.length).toBeGreaterThan(0);
    settle(phone, open[0]!.settlements.at(-1)!);
    expect(openOn(day(), recordings)).toHaveLength(open.length - 1);
  });
});

describe('a settled card', () => {
  test('is told with its files and what is open, and never after the check is taken back', async () => {
    const { phone, day, files } = plainDay();
    expect(cardCheckOf(day())).toBeNull();
    const recordings = await recordCard(files.with(1, { ...files[1]!, circled: true }));
    const [found] = openOn(day(), recordings);
    settle(phone, found!.settlements.at(-1)!);
    const said = noteCardCheck(checkedNow(day(), recordings));
    if (said.ok) phone.say(...said.value);
    expect(cardCheckOf(day())).toMatchObject({
      files: files.length,
      recordings: files.length,
      open: 0,
      takes: { asLogged: 1 },
    });
    takeBackLast(phone);
    expect(cardCheckOf(day())).toBeNull();
  });

  test('can be settled whole in one action', async () => {
    const { phone, day, files } = plainDay();
    const changed = files.map((file) => ({ ...file, circled: !file.circled }));
    const recordings = await recordCard(changed);
    const open = openOn(day(), recordings);
    expect(open).toHaveLength(files.length);
    const said = settleAll(day(), open.map(byFile));
    if (said.ok) phone.say(...said.value);
    expect(openOn(day(), recordings)).toEqual([]);
    takeBackLast(phone);
    expect(openOn(day(), recordings)).toHaveLength(files.length);
  });
});

describe('a settlement that does not fit the day is refused as a value', () => {
  const { day } = plainDay();
  const take = [...day().takes.keys()][0]!;
  test.each([
    [
      'a take not there',
      { kind: 'describe-takes', takes: [{ take: '000zzz-phoneb00000', fields: {} }] },
      'not-on-this-day',
    ],
    [
      'a number no log holds',
      { kind: 'describe-takes', takes: [{ take, fields: { number: 1e6 } }] },
      'file-value-unfit',
    ],
    ['a take before nothing', { kind: 'log-recording', fields: {}, before: 'x' }, 'not-on-this-day'],
    [
      'a track not there',
      { kind: 'name-track', track: 'tr99', name: 'A', take, until: null },
      'not-on-this-day',
    ],
    [
      'a name of nothing',
      { kind: 'name-track', track: 'tr2', name: ' ', take, until: null },
      'file-value-unfit',
    ],
    ['a roll of nothing', { kind: 'change-roll', roll: ' ', before: take, back: null }, 'roll-name'],
    ['a roll before nothing', { kind: 'change-roll', roll: 'A', before: 'x', back: null }, 'not-on-this-day'],
    ['a change not there', { kind: 'move-changes', changes: ['x'], before: take }, 'not-on-this-day'],
    ['a take back of nothing', { kind: 'take-back', take: 'x' }, 'not-on-this-day'],
    ['an empty note', { kind: 'add-note', take, text: '  ' }, 'note-empty'],
  ] as const)('%s', (_, settlement, code) => {
    expect(settleCard(day(), { ...settlement, settles: { code: 'x' } })).toMatchObject({
      ok: false,
      problem: { code },
    });
  });
});
