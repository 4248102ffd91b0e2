import { describe, expect, test } from 'vitest';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { type CardMatch, matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import type { Recording } from '../../src/wave/recording/recordings.ts';
import { cardOf, recordCard } from './build-card.ts';
import { checkFiles, detailOf, told } from './check-card.ts';
import { filmDay, seeded } from './film-day.ts';

const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8];

/** Take and file of every pair. */
const pairsOf = ({ pairs }: CardMatch): [string, string][] =>
  pairs.map(({ take, recording }) => [take, recording.files[0]!.name]);

describe('a card that agrees with the log', () => {
  test.each(SEEDS)('matches take by take with no difference (seed %i)', async (seed) => {
    const rate = (['23.976', '24', '25', '29.97', '29.97DF', '30'] as const)[seed % 6]!;
    const day = filmDay({ takes: 60, rate, seed, fromHour: seed % 2 ? 9 : 21 }).day();
    const files = cardOf(day);
    const recordings = await recordCard(files);
    const match = matchRecordings(day, recordings);
    expect(match.questions).toEqual([]);
    expect(match.takesWithout).toEqual([]);
    expect(match.recordingsWithout).toEqual([]);
    expect(match.pairs.length).toBe(files.length);
    expect(pairsOf(match).map(([, file]) => file)).toEqual(files.map(({ name }) => name));
    expect(told(day, differencesOf(day, match))).toEqual([]);
  });

  test.each(SEEDS)('matches the same in any order of files (seed %i)', async (seed) => {
    const day = filmDay({ takes: 40, seed }).day();
    const recordings = await recordCard(cardOf(day));
    const random = seeded(seed);
    const shuffled: Recording[] = recordings
      .map((recording) => ({ recording, key: random() }))
      .sort((a, b) => a.key - b.key)
      .map(({ recording }) => recording);
    const [one, other] = [matchRecordings(day, recordings), matchRecordings(day, shuffled)];
    expect(pairsOf(other)).toEqual(pairsOf(one));
    expect(other.recordings).toEqual(one.recordings);
  });
});

/** Takes that have a file, and one of them by chance that has its slate and number to itself. */
function oneByChance(seed: number) {
  const filmed = filmDay({ takes: 40, seed });
  const day = filmed.day();
  const files = cardOf(day);
  const random = seeded(seed * 7);
  const plain = files.flatMap(({ types, take, scene }, at) => {
    const alike = files.filter((one) => one.scene === scene && one.take === take);
    return types?.length === 0 && scene !== 'RT' && alike.length === 1 ? [at] : [];
  });
  const at = plain[Math.floor(random() * plain.length)]!;
  const sounding = [...day.takes.values()].filter(({ kind }) => kind !== 'mos');
  const take = [...day.takes.keys()].indexOf(sounding[at]!.id);
  return { filmed, day, files, at, file: files[at]!, take };
}

describe('one thing changed by chance is told as exactly that', () => {
  test.each(SEEDS)('a file that is missing (seed %i)', async (seed) => {
    const { day, files, at, file, take } = oneByChance(seed);
    const found = await checkFiles(day, files.toSpliced(at, 1));
    expect(told(day, found)).toEqual([`take-not-recorded at ${take}: "${file.scene}/${file.take}" / null`]);
  });

  test.each(SEEDS)('a file nobody logged (seed %i)', async (seed) => {
    const { day, files, at, file } = oneByChance(seed);
    const start = file.start! + file.length + 5 * 48_000;
    const extra = { ...file, name: 'X01.wav', scene: '99', take: '1', start, length: 10 * 48_000, note: '' };
    const found = await checkFiles(day, files.toSpliced(at, 0, extra));
    expect(told(day, found)).toEqual(['recording-not-logged: null / "X01.wav"']);
    const next = [...day.takes.values()].filter(({ kind }) => kind !== 'mos')[at + 1]?.id ?? null;
    const [settlement] = found[0]!.settlements;
    const before = settlement?.kind === 'log-recording' ? settlement.before : undefined;
    // A setup without sound may stand between the two.
    const line = [...day.takes.keys()];
    const stands = before === null ? line.length : line.indexOf(before!);
    expect(stands).toBeLessThanOrEqual(next === null ? line.length : line.indexOf(next));
    expect(stands).toBeGreaterThan(
      line.indexOf([...day.takes.values()].filter(({ kind }) => kind !== 'mos')[at]!.id),
    );
  });

  test.each(SEEDS)('a file with another name (seed %i)', async (seed) => {
    const { day, files, at, file, take } = oneByChance(seed);
    const found = await checkFiles(day, files.with(at, { ...file, name: 'REC_0042.WAV' }));
    expect(told(day, found)).toEqual([`file-name-differs at ${take}: "${file.name}" / "REC_0042.WAV"`]);
  });

  test.each(SEEDS)('a file of another slate (seed %i)', async (seed) => {
    const { day, files, at, file, take } = oneByChance(seed);
    const found = await checkFiles(day, files.with(at, { ...file, scene: '77C' }));
    expect(told(day, found)).toEqual([`slate-differs at ${take}: "${file.scene}" / "77C"`]);
  });

  test.each(SEEDS)('a take number, a circle, a start and a length (seed %i)', async (seed) => {
    const { day, files, at, file, take } = oneByChance(seed);
    const circled = !file.circled;
    const number = Number(file.take) + 40;
    const changed = {
      ...file,
      circled,
      take: String(number),
      start: file.start! + 3 * 48_000,
      length: file.length - 3 * 48_000,
    };
    const found = await checkFiles(day, files.with(at, changed));
    expect(found.map(({ code }) => code)).toEqual([
      'take-number-differs',
      'start-differs',
      'length-differs',
      'circled-differs',
    ]);
    expect(found.map(({ take: id }) => [...day.takes.keys()].indexOf(id!))).toEqual([take, take, take, take]);
    expect(found[0]).toMatchObject({ was: Number(file.take), is: number });
    expect(found.slice(1, 3).map(detailOf)).toEqual([{ frames: 75 }, { frames: -75 }]);
    expect(found[3]).toMatchObject({ was: file.circled, is: circled });
  });
});
