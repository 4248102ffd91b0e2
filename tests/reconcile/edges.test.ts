import { describe, expect, test } from 'vitest';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { DEFAULT_TOLERANCE } from '../../src/reconcile/differences/difference.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { detailOf, openOn } from './check-card.ts';

const RATE = 48_000;
/** One frame at 25. */
const FRAME = RATE / 25;
const MS = RATE / 1000;

/** A day of takes of a minute each, ten minutes apart, at 25 frames a second. */
function plainDay(takes: number): Day {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'roll-changed', roll: '7A' });
  for (let at = 0; at < takes; at += 1) phone.say(minute(at));
  return phone.day();
}

const minute = (at: number): Draft =>
  take('24', 1, at + 1, {
    start: { frames: (9 * 60 + 10 * at) * 60 * 25, rate: '25' },
    length: { frames: 60 * 25, rate: '25' },
  });

/** The differences of a card on which each file starts so many samples late and is so many longer. */
async function differences(late: readonly number[], longer: readonly number[] = []) {
  const day = plainDay(late.length);
  const files = cardOf(day).map((file, at) => ({
    ...file,
    start: file.start! + late[at]!,
    length: file.length + (longer[at] ?? 0),
  }));
  return openOn(day, await recordCard(files));
}

const codes = async (late: readonly number[], longer?: readonly number[]) =>
  (await differences(late, longer)).map(({ code }) => code);

const ONE_OF_SIX = (samples: number) => [samples, 0, 0, 0, 0, 0];

describe('two hands on two buttons', () => {
  // 50 frames, two seconds at 25: common practice, no source.
  test('may be 50 frames apart', () => {
    expect(DEFAULT_TOLERANCE).toEqual({ startFrames: 50, lengthFrames: 50 });
  });

  test.each([50, -50])('%i frames at the start are not told, and one more is', async (frames) => {
    const more = frames + Math.sign(frames);
    expect(await codes(ONE_OF_SIX(frames * FRAME))).toEqual([]);
    const [found, ...others] = await differences(ONE_OF_SIX(more * FRAME));
    expect([found?.code, detailOf(found).frames, others]).toEqual(['start-differs', more, []]);
  });

  test.each([50, -50])('%i frames of length are not told, and one more is', async (frames) => {
    const more = frames + Math.sign(frames);
    expect(await codes(ONE_OF_SIX(0), ONE_OF_SIX(frames * FRAME))).toEqual([]);
    const [found, ...others] = await differences(ONE_OF_SIX(0), ONE_OF_SIX(more * FRAME));
    expect([found?.code, detailOf(found).frames, others]).toEqual(['length-differs', more, []]);
  });

  test('are counted in frames to the nearest: half a frame more is one more', async () => {
    expect(await codes(ONE_OF_SIX(50 * FRAME + FRAME / 2 - 1))).toEqual([]);
    expect(await codes(ONE_OF_SIX(50 * FRAME + FRAME / 2 + 1))).toEqual(['start-differs']);
  });

  test('may be as far apart as was asked', async () => {
    const day = plainDay(6);
    const files = cardOf(day).map((file, at) =>
      at === 0 ? { ...file, start: file.start! + 10 * FRAME } : file,
    );
    const recordings = await recordCard(files);
    const at = (startFrames: number) => openOn(day, recordings, { startFrames, lengthFrames: 0 }).length;
    expect([at(9), at(10), at(0)]).toEqual([1, 0, 1]);
  });
});

describe('a clock that differs', () => {
  const LATE = 60 * FRAME;

  test('is one word for three takes, and for two each take has its own', async () => {
    expect(await codes([LATE, LATE, LATE])).toEqual(['clock-apart']);
    expect(await codes([LATE, LATE])).toEqual(['start-differs', 'start-differs']);
  });

  test('is not told of two takes out of three where the third is near enough', async () => {
    expect(await codes([LATE, 40 * FRAME, LATE])).toEqual(['start-differs', 'start-differs']);
  });
});

describe('recordings of one take', () => {
  /** Two files of one take, the second so many samples after the end of the first. */
  async function torn(samples: number, second: Partial<CardFile> = {}) {
    const day = plainDay(1);
    const [file] = cardOf(day);
    const next = { ...file!, name: 'next.wav', start: file!.start! + file!.length + samples, ...second };
    const found = openOn(day, await recordCard([file!, next]));
    return found
      .filter(({ code }) => code.startsWith('recordings-'))
      .map((one) => [one.code, detailOf(one).ms]);
  }

  test('touch where they are a millisecond apart, either way', async () => {
    expect(await torn(0)).toEqual([]);
    expect(await torn(MS)).toEqual([]);
    expect(await torn(-MS)).toEqual([]);
    expect(await torn(MS + 1)).toEqual([['recordings-gap', 1]]);
    expect(await torn(-MS - 1)).toEqual([['recordings-overlap', 1]]);
  });

  test('are torn apart by less than two seconds; from there on they were two on purpose', async () => {
    expect(await torn(2 * RATE - 1)).toEqual([['recordings-gap', 2000]]);
    expect(await torn(2 * RATE)).toEqual([]);
  });

  test('have a gap only where scene, take and roll are one', async () => {
    expect(await torn(RATE)).toEqual([['recordings-gap', 1000]]);
    expect(await torn(RATE, { scene: '25' })).toEqual([]);
    expect(await torn(RATE, { take: '2' })).toEqual([]);
  });

  test('gaps and overlaps are told in whole milliseconds, to the nearest', async () => {
    expect(await torn(100 * MS + MS / 2 - 1)).toEqual([['recordings-gap', 100]]);
    expect(await torn(100 * MS + MS / 2 + 1)).toEqual([['recordings-gap', 101]]);
    expect(await torn(-100 * MS - MS / 2 - 1)).toEqual([['recordings-overlap', 101]]);
  });
});
