import { describe, expect, test } from 'vitest';
import { checkingOf } from '../../../src/reconcile/differences/checking.ts';
import { DEFAULT_TOLERANCE, SEVERITY_OF } from '../../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../../src/reconcile/differences/differences-of.ts';
import { placesByTime } from '../../../src/reconcile/differences/unmatched.ts';
import { matchRecordings } from '../../../src/reconcile/pairing/match-recordings.ts';
import { speaker, take } from '../../day/say.ts';
import { type CardFile, cardOf, recordCard } from '../build-card.ts';
import { openOn } from '../check-card.ts';

const SECOND = 48_000;
const times = (minute: number) => ({ start: { frames: 900_000 + minute * 1500, rate: '25' } });

function dayOf(...minutes: number[]) {
  const phone = speaker();
  phone.say({ kind: 'roll-changed', roll: '7A' });
  const ids = minutes.map((minute, at) => phone.id(take('24', 1, at + 1, times(minute))));
  return { phone, ids, day: phone.day, files: cardOf(phone.day()) };
}
const extra = (file: CardFile, second: number, more: Partial<CardFile> = {}): CardFile => ({
  ...file,
  name: `X${second}.wav`,
  scene: '99',
  start: (36_000 + second) * SECOND,
  ...more,
});

describe('a difference', () => {
  test('says how it is known, how much it matters, and that the log may be kept', async () => {
    const { day, ids, files } = dayOf(0);
    const [found] = openOn(day(), await recordCard([{ ...files[0]!, circled: true }]));
    expect(found).toMatchObject({
      code: 'circled-differs',
      take: ids[0],
      key: { file: '24AT1.wav' },
      severity: 'wrong',
      kept: false,
      was: false,
      is: true,
    });
    expect(found!.settlements.at(-1)).toEqual({
      kind: 'keep-log',
      settles: { code: 'circled-differs', take: ids[0], file: '24AT1.wav', values: '[false,true]' },
    });
  });

  test('of a kind that comes several times at one place is known by what it is about', async () => {
    const { day, files } = dayOf(0);
    const file = extra(files[0]!, 3);
    const [overlap] = openOn(day(), await recordCard([...files, file])).filter(
      ({ code }) => code === 'recordings-overlap',
    );
    expect(overlap!.settlements.at(-1)).toEqual({
      kind: 'keep-log',
      settles: {
        code: 'recordings-overlap 24AT1.wav',
        file: 'X3.wav',
        values: '["24AT1.wav","X3.wav",7000]',
      },
    });
    expect(overlap!.code).toBe('recordings-overlap');
  });

  test('is known by two hundred characters of a long name', async () => {
    const { day, files } = dayOf(0);
    const long = extra(files[0]!, 100, { name: `${'x'.repeat(300)}.wav` });
    const open = openOn(day(), await recordCard([...files, long]));
    expect(open.map(({ key }) => key.file)).toEqual(['x'.repeat(200)]);
  });

  test('of any code has a severity, those of lost sound first', () => {
    const lost = Object.entries(SEVERITY_OF).filter(([, severity]) => severity === 'lost');
    expect(lost.map(([code]) => code).sort()).toEqual([
      'file-damaged',
      'file-set-incomplete',
      'match-unsure',
      'mos-recorded',
      'recording-not-logged',
      'take-not-recorded',
      'track-not-recorded',
    ]);
    const odd = Object.entries(SEVERITY_OF).filter(([, severity]) => severity === 'odd');
    expect(odd.map(([code]) => code).sort()).toEqual([
      'clock-drifts',
      'field-never-changes',
      'file-twice',
      'file-warning',
      'files-disagree',
      'length-not-logged',
      'note-not-logged',
      'pre-record-undeclared',
      'recordings-of-another-day',
      'recordings-of-another-unit',
      'start-not-logged',
      'take-on-backup-only',
    ]);
  });
});

describe('the place of a recording nobody logged', () => {
  const places = async (minutes: number[], second: number, more: Partial<CardFile> = {}) => {
    const { day, ids, files } = dayOf(...minutes);
    const recordings = await recordCard([...files, extra(files[0]!, second, more)]);
    const found = differencesOf(day(), matchRecordings(day(), recordings));
    const one = found.find(({ code }) => code === 'recording-not-logged')!;
    const [settlement] = one.settlements;
    const before = settlement?.kind === 'log-recording' ? settlement.before : undefined;
    return before === null ? 'end' : ids.indexOf(before!);
  };

  test.each([
    [[0, 10, 20], -300, 0],
    [[0, 10, 20], 300, 1],
    [[0, 10, 20], 900, 2],
    [[0, 10, 20], 1500, 'end'],
    [[0, 20, 10], 900, 'end'],
  ])('among takes at %j minutes, %i s after the first, is before take %s', async (minutes, second, place) => {
    expect(await places(minutes, second)).toBe(place);
  });

  test('is the end of the day without a start', async () => {
    expect(await places([0, 10], 0, { start: undefined })).toBe('end');
  });

  test('goes by the starts of the files, and of takes without one by their own', async () => {
    const { day, files } = dayOf(0, 10, 20);
    const recordings = await recordCard([files[0]!, files[2]!]);
    const checking = checkingOf(day(), matchRecordings(day(), recordings), DEFAULT_TOLERANCE);
    const [one] = await recordCard([extra(files[0]!, 900)]);
    expect(placesByTime(checking)(one!)).toBe([...day().takes.keys()][2]);
  });

  test('stands in the list just before the take that follows', async () => {
    const { day, files } = dayOf(0, 10);
    const changed = files.map((file) => ({ ...file, circled: true }));
    const recordings = await recordCard([...changed, extra(files[0]!, 300)]);
    expect(openOn(day(), recordings).map(({ code }) => code)).toEqual([
      'circled-differs',
      'recording-not-logged',
      'circled-differs',
    ]);
  });
});

test('the take that follows another is the next on the line, and none after the last', () => {
  const { day, ids } = dayOf(0, 10);
  const { nextTake } = checkingOf(day(), matchRecordings(day(), []), DEFAULT_TOLERANCE);
  expect([nextTake(ids[0]!), nextTake(ids[1]!), nextTake('000zzz-phoneb00000')]).toEqual([
    ids[1],
    null,
    null,
  ]);
});

test('what a take in question may have is told up to twenty', async () => {
  const phone = speaker();
  phone.say(take('24', 1, 1, { start: null, length: null }));
  const [file] = cardOf(phone.day());
  const alike = Array.from({ length: 22 }, (_, at) => ({
    ...file!,
    name: `R${at}.wav`,
    start: (1000 + at * 100) * SECOND,
  }));
  const others = Array.from({ length: 6 }, (_, at) => ({
    ...file!,
    name: `S${at}.wav`,
    scene: `9${at}`,
    take: '7',
    start: (9000 + at * 100) * SECOND,
  }));
  const match = matchRecordings(phone.day(), await recordCard([...alike, ...others]));
  expect(match.questions.map(({ choices }) => choices.length)).toEqual([20]);
  expect(match.recordingsWithout).toHaveLength(6);
});
