import { describe, expect, test } from 'vitest';
import { noteCardCheck, settleAll } from '../../src/commands/line/settle-card.ts';
import { reportOf } from '../../src/report/model.ts';
import { totalsLines } from '../../src/report/printed/words.ts';
import { take as takeLog } from '../day/say.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { checkedNow, openOn, settle, told } from './check-card.ts';
import { type Filmed, filmDay } from './film-day.ts';
import { named, onTrack, wiredDay } from './wired-day.ts';

const SECOND = 48_000;

function plainDay(takes = 8) {
  const filmed = filmDay({ takes, seed: 11 });
  return { ...filmed, files: cardOf(filmed.day()) };
}

type Recordings = Awaited<ReturnType<typeof recordCard>>;

const check = ({ phone, day }: Filmed, recordings: Recordings, stopped = false): void => {
  const said = noteCardCheck(checkedNow(day(), recordings, stopped));
  if (said.ok) phone.say(...said.value);
};
const cardLine = ({ day }: Filmed): string =>
  totalsLines(reportOf(day())).find(([label]) => label === 'Card')?.[1] ?? '';
const keepAll = ({ phone, day }: Filmed, recordings: Recordings): void => {
  const open = openOn(day(), recordings);
  const said = settleAll(
    day(),
    open.flatMap(({ settlements }) => settlements.at(-1) ?? []),
  );
  if (said.ok) phone.say(...said.value);
};

describe('the report after a check', () => {
  test('of a card on which no file was matched says so of every take, whatever was tapped', async () => {
    const filmed = plainDay();
    const strange = filmed.files.map((file, at) => ({
      ...file,
      name: `Q${at}.wav`,
      scene: '99',
      take: String(50 + at),
      start: (file.start! + 3600 * 5 * SECOND + at * at * 977 * SECOND) % (86_400 * SECOND),
      length: 600 * SECOND,
      tape: 'ZZ',
      tracks: [],
    }));
    const recordings = await recordCard(strange);
    keepAll(filmed, recordings);
    check(filmed, recordings);
    expect(openOn(filmed.day(), recordings)).toEqual([]);
    const sounding = reportOf(filmed.day()).takes.filter(({ kind }) => kind !== 'mos');
    expect(sounding.every(({ status }) => status.includes('file-missing'))).toBe(true);
    expect(cardLine(filmed)).toContain(`0 takes with a file, ${sounding.length} without`);
    expect(cardLine(filmed)).toContain(`${recordings.length} recordings without a take`);
  });

  test('counts takes with a file and without, and differences as logged and as on the card', async () => {
    const filmed = plainDay();
    const { files } = filmed;
    const changed = files
      .with(2, { ...files[2]!, circled: !files[2]!.circled })
      .with(3, { ...files[3]!, note: 'Gull' });
    const recordings = await recordCard(changed.slice(1));
    const [missing, circle, note] = openOn(filmed.day(), recordings);
    expect([missing?.code, circle?.code, note?.code]).toEqual([
      'take-not-recorded',
      'circled-differs',
      'note-not-logged',
    ]);
    expect(missing!.settlements.map(({ kind }) => kind)).not.toContain('keep-log');
    settle(filmed.phone, missing!.settlements.at(-1)!);
    settle(filmed.phone, circle!.settlements.at(-1)!);
    settle(filmed.phone, note!.settlements[0]!);
    check(filmed, recordings);
    const [first] = reportOf(filmed.day()).takes;
    expect(first!.status).toContain('file-missing');
    expect(cardLine(filmed)).toMatch(
      new RegExp(
        `^checked at \\d\\d:\\d\\d against 7 files: 7 takes with a file, 1 without \\(${first!.text}\\); ` +
          '1 difference as logged, 1 as on the card, 0 open$',
      ),
    );
  });

  test('says file missing as soon as that was tapped, and no more once a check found the file', async () => {
    const filmed = plainDay();
    const recordings = await recordCard(filmed.files.slice(1));
    settle(filmed.phone, openOn(filmed.day(), recordings)[0]!.settlements.at(-1)!);
    expect(reportOf(filmed.day()).takes[0]!.status).toContain('file-missing');
    check(filmed, await recordCard(filmed.files));
    expect(reportOf(filmed.day()).takes[0]!.status).not.toContain('file-missing');
  });

  test('says that the check was stopped, and how many takes were logged since', async () => {
    const filmed = plainDay();
    check(filmed, await recordCard(filmed.files.slice(0, 4)), true);
    expect(cardLine(filmed)).toContain('against 4 files, stopped before the last: 4 takes with a file');
    expect(cardLine(filmed)).not.toContain('since');
    filmed.phone.say(takeLog('90', 1, 1), takeLog('90', 1, 2), takeLog('90', 1, 3, { kind: 'mos' }));
    expect(cardLine(filmed)).toContain('; 2 takes logged since');
  });

  test('of an earlier version reads as it did', () => {
    const filmed = plainDay();
    filmed.phone.say({ kind: 'card-checked', files: 72, recordings: 70, open: 0 });
    filmed.phone.say({ kind: 'difference-kept', code: 'take-not-recorded', take: filmed.takes[0]! });
    expect(cardLine(filmed)).toBe('checked against 72 files, 0 open');
    expect(reportOf(filmed.day()).takes[0]!.status).not.toContain('file-missing');
  });

  test.each(['_1', '_2', ' (2)'])("prints the card's names, told where %s was appended", async (suffix) => {
    const filmed = plainDay();
    const { files } = filmed;
    const recordings = await recordCard(
      files.with(1, { ...files[1]!, name: files[1]!.name.replace('.wav', `${suffix}.wav`) }),
    );
    expect(openOn(filmed.day(), recordings).map(({ code }) => code)).toEqual(['file-name-differs']);
    check(filmed, recordings);
    const stem = files[1]!.name.replace('.wav', '');
    expect(reportOf(filmed.day()).takes[1]!.file).toBe(`${stem}${suffix}.wav`);
    expect(reportOf(filmed.day()).takes[2]!.file).toBe(files[2]!.name);
    filmed.phone.say({ kind: 'take-described', take: filmed.takes[1]!, fields: { file: 'BY-HAND.wav' } });
    expect(reportOf(filmed.day()).takes[1]!.file).toBe('BY-HAND.wav');
  });

  test('prints every part of a split recording', async () => {
    const filmed = plainDay();
    const { start, length, name } = filmed.files[2]!;
    const half = Math.floor(length / 2);
    const part = (mark: string, more: Partial<CardFile>) => ({
      ...filmed.files[2]!,
      name: name.replace('.wav', `_${mark}.wav`),
      ...more,
    });
    const recordings = await recordCard(
      filmed.files.toSpliced(
        2,
        1,
        part('001', { length: half }),
        part('002', { start: start! + half, length: length - half }),
      ),
    );
    check(filmed, recordings);
    expect(reportOf(filmed.day()).takes[2]!.files.map((file) => file.name)).toEqual([
      name.replace('.wav', '_001.wav'),
      name.replace('.wav', '_002.wav'),
    ]);
  });
});

describe('a kept difference', () => {
  test('covers the takes it was kept for: one more of the same run is open again', async () => {
    const { phone, day, files } = wiredDay(5);
    const odd = (last: number) =>
      files.map((file, at) => (at >= 1 && at <= last ? named(file, 3, 'Wind') : file));
    const two = await recordCard(odd(2));
    settle(phone, openOn(day(), two)[0]!.settlements.at(-1)!);
    expect(openOn(day(), two)).toEqual([]);
    expect(told(day(), openOn(day(), await recordCard(odd(3))))).toEqual([
      'track-name-differs at 1 on tr3: "Ines" / "Wind"',
    ]);
  });

  test('of an overlap hides no longer one, and of a roll no further takes', async () => {
    const { phone, day, files } = wiredDay(4);
    const over = (seconds: number, rolls: number) =>
      recordCard(
        files.map((file, at) => ({
          ...file,
          ...(at === 0 && { length: file.length + (50 + seconds) * SECOND }),
          ...(at >= 2 && at < 2 + rolls && { tape: '9Z' }),
        })),
      );
    const first = await over(3, 1);
    for (let [found] = openOn(day(), first); found; [found] = openOn(day(), first))
      settle(phone, found.settlements.at(-1)!);
    const codes = openOn(day(), await over(3.5, 2)).map(({ code }) => code);
    expect(codes).toContain('recordings-overlap');
    expect(codes).toContain('roll-differs');
  });

  test('of an earlier version still covers its whole run', async () => {
    const { phone, day, files, ids } = wiredDay(4);
    const odd = files.map((file, at) => (at >= 1 ? named(file, 3, 'Wind') : file));
    phone.say({
      kind: 'difference-kept',
      code: 'track-name-differs',
      take: ids[1]!,
      file: files[1]!.name,
      track: 'tr3',
      values: '["Ines","Wind"]',
    });
    expect(openOn(day(), await recordCard(odd))).toEqual([]);
  });
});

describe('two swapped tracks', () => {
  const swapped = (file: CardFile): CardFile => named(named(file, 3, 'Dora'), 4, 'Ines');

  test('are one difference, and one tap exchanges the packs from the take on where it begins', async () => {
    const { phone, day, files } = wiredDay(5);
    const recordings = await recordCard(
      files.map((file, at) => (at === 2 || at === 3 ? swapped(file) : file)),
    );
    const open = openOn(day(), recordings);
    expect(told(day(), open)).toEqual(['tracks-swapped at 2 on tr3: "Ines" / "Dora"']);
    expect(open[0]!.settlements.map(({ kind }) => kind)).toEqual(['swap-tracks', 'swap-tracks', 'keep-log']);
    settle(phone, open[0]!.settlements[0]!);
    expect(onTrack(day, 'tr3')).toEqual(['Ines', 'Ines', 'Dora', 'Dora', 'Ines']);
    expect(onTrack(day, 'tr4')).toEqual(['Dora', 'Dora', 'Ines', 'Ines', 'Dora']);
    expect(
      reportOf(day())
        .takes.flatMap(({ tracks }) => tracks)
        .some(({ typed }) => typed),
    ).toBe(false);
    expect(openOn(day(), recordings)).toEqual([]);
  });

  test('to the end of the day stay so, by inputs too', async () => {
    const { phone, day, files } = wiredDay(4);
    const recordings = await recordCard(files.map((file, at) => (at >= 2 ? swapped(file) : file)));
    const [found] = openOn(day(), recordings);
    const byInputs = found!.settlements.find((one) => one.kind === 'swap-tracks' && one.swap.by === 'inputs');
    settle(phone, byInputs!);
    expect(onTrack(day, 'tr3')).toEqual(['Ines', 'Ines', 'Dora', 'Dora']);
    expect(openOn(day(), recordings)).toEqual([]);
  });
});

describe('a pre-record', () => {
  test.each([
    ['SPEED form', (samples: number) => `<PRE_RECORD_SAMPLECOUNT>${samples}</PRE_RECORD_SAMPLECOUNT>`],
    [
      'sync point',
      (samples: number) =>
        `<SYNC_POINT_LIST><SYNC_POINT><SYNC_POINT_TYPE>RELATIVE</SYNC_POINT_TYPE><SYNC_POINT_FUNCTION>PRE_RECORD_SAMPLECOUNT</SYNC_POINT_FUNCTION><SYNC_POINT_LOW>${samples}</SYNC_POINT_LOW><SYNC_POINT_HIGH>0</SYNC_POINT_HIGH></SYNC_POINT></SYNC_POINT_LIST>`,
    ],
  ])('declared in the file (%s) makes no take longer', async (_, more) => {
    const { day, files } = plainDay();
    const early = files.map((file) => ({
      ...file,
      start: file.start! - 10 * SECOND,
      length: file.length + 10 * SECOND,
      more: more(10 * SECOND),
    }));
    expect(openOn(day(), await recordCard(early))).toEqual([]);
  });

  test('undeclared is one difference, and nobody is told to move a clock', async () => {
    const { phone, day, files } = plainDay(12);
    for (const { id, start } of day().takes.values())
      if (start)
        phone.say({ kind: 'take-described', take: id, fields: { rolledAt: 1_000_000 + start.frames * 40 } });
    const early = files.map((file) => ({
      ...file,
      start: file.start! - 10 * SECOND,
      length: file.length + 10 * SECOND,
    }));
    const open = openOn(day(), await recordCard(early));
    expect(open.map(({ code, is }) => [code, is])).toEqual([['pre-record-undeclared', 10_000]]);
    expect(open[0]!.settlements.map(({ kind }) => kind)).toEqual(['keep-log']);
  });
});

test('following the recorder anew settles the difference it is offered for', async () => {
  const filmed = filmDay({ takes: 60, seed: 8 });
  for (const { id, start } of filmed.day().takes.values())
    if (start)
      filmed.phone.say({
        kind: 'take-described',
        take: id,
        fields: { rolledAt: 1_000_000 + start.frames * 40 },
      });
  const files = cardOf(filmed.day());
  const first = files[0]!.start!;
  const drifting = files.map((file) => ({
    ...file,
    start: Math.round(file.start! + 7 * SECOND + (file.start! - first) * 30e-6),
  }));
  const recordings = await recordCard(drifting);
  for (const code of ['clock-apart', 'clock-drifts']) {
    const found = openOn(filmed.day(), recordings).find((one) => one.code === code);
    const follow = found!.settlements.find(({ kind }) => kind === 'follow-recorder');
    settle(filmed.phone, follow!);
    expect(openOn(filmed.day(), recordings).map((one) => one.code)).not.toContain(code);
  }
  expect(openOn(filmed.day(), recordings)).toEqual([]);
  expect(filmed.day().clock).not.toBeNull();
});
