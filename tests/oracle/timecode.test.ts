import SmpteTimecode from 'smpte-timecode';
import TimecodeBoss from 'timecode-boss';
import { describe, expect, test } from 'vitest';
import { framesPerDay, RATES, type Rate, type RateId, rateOf } from '../../src/time/rate.ts';
import { addFrames, formatTimecode, parseTimecode } from '../../src/time/timecode.ts';

// Two independent packages judge our labels: smpte-timecode 1.3.6 and timecode-boss 6.2.0.
// Where one of them differs, the test says so and says who is right.

const SEED = 12_1;
const FRAMES_PER_RATE = 4000;

/** Numbers from 0 to under 1 that are the same in every run (the mulberry32 generator). */
function seededRandom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Random frames of the day, and those around every minute of its first hour, where drop-frame goes wrong if it does. */
function framesToTry(rate: Rate): number[] {
  const random = seededRandom(SEED);
  const anywhere = Array.from({ length: FRAMES_PER_RATE }, () =>
    Math.floor(random() * framesPerDay(rate.id)),
  );
  const perMinute = rate.base * 60;
  const atMinutes = Array.from({ length: 60 }, (_, minute) =>
    Array.from({ length: 260 }, (_, near) => minute * perMinute + near - 250),
  );
  return [...anywhere, ...atMinutes.flat().filter((frame) => frame >= 0), framesPerDay(rate.id) - 1];
}

const frameOf = (text: string, rate: RateId): number | undefined => {
  const read = parseTimecode(text, rate);
  return read.ok ? read.value : undefined;
};

describe('smpte-timecode', () => {
  const smpte = (timecode: number | string, { num, den, dropped }: Rate) =>
    SmpteTimecode(timecode, [num, den], dropped > 0);
  const judged = RATES.filter(({ id }) => id !== '30DF');

  test.each(judged)(
    `agrees on label and frame at $id over random frames and minutes (seed ${SEED})`,
    (rate) => {
      const differing = framesToTry(rate).filter((frame) => {
        const label = formatTimecode(frame, rate.id);
        const theirs = smpte(frame, rate).toString();
        return (
          theirs !== label || smpte(label, rate).frameCount !== frame || frameOf(theirs, rate.id) !== frame
        );
      });
      expect(differing).toEqual([]);
    },
  );

  test('refuses drop-frame at true 30; we count it like 29.97 DF, which is common practice', () => {
    const rate = rateOf('30DF');
    expect(() => smpte(1800, rate)).toThrow('Drop frame is only supported');
    const differing = framesToTry(rate).filter(
      (frame) => formatTimecode(frame, '30DF') !== smpte(frame, rateOf('29.97DF')).toString(),
    );
    expect(differing).toEqual([]);
  });

  test('ends the day too early when adding at 23.976 and 29.97: we are right, labels run to 23:59:59', () => {
    const nextOfLast = (id: RateId) => {
      const last = framesPerDay(id) - 1;
      return [formatTimecode(addFrames(last, 1, id), id), smpte(last, rateOf(id)).add(1).toString()];
    };
    expect(nextOfLast('29.97')).toEqual(['00:00:00:00', '00:01:26:12']);
    expect(nextOfLast('23.976')).toEqual(['00:00:00:00', '00:01:12:00']);
    // Drop-frame and whole rates have rate × 86,400 labels in a day, and there it agrees.
    expect(nextOfLast('29.97DF')).toEqual(['00:00:00;00', '00:00:00;00']);
    expect(nextOfLast('25')).toEqual(['00:00:00:00', '00:00:00:00']);
  });
});

describe('timecode-boss', () => {
  // It takes the rate as a decimal and reads every rate between 29 and 30 or 59 and 60 as drop-frame, so that 29.97 NDF,
  // 59.94 NDF and 30 DF cannot be asked of it.
  const DECIMAL: Partial<Record<RateId, number>> = {
    '23.976': 23.98,
    '24': 24,
    '25': 25,
    '29.97DF': 29.97,
    '30': 30,
    '47.952': 47.95,
    '48': 48,
    '50': 50,
    '59.94DF': 59.94,
    '60': 60,
  };
  const judged = RATES.filter(({ id }) => DECIMAL[id] !== undefined);
  const boss = (timecode: number | string, { id }: Rate) => new TimecodeBoss(timecode, DECIMAL[id]);

  test.each(judged)(`agrees on the frame of every label at $id (seed ${SEED})`, (rate) => {
    const differing = framesToTry(rate).filter(
      (frame) => boss(formatTimecode(frame, rate.id), rate).frameCount() !== frame,
    );
    expect(differing).toEqual([]);
  });

  test.each(judged.filter(({ dropped }) => dropped === 0))(
    `agrees on the label of every frame at $id (seed ${SEED})`,
    (rate) => {
      const differing = framesToTry(rate).filter(
        (frame) => boss(frame, rate).toString() !== formatTimecode(frame, rate.id),
      );
      expect(differing).toEqual([]);
    },
  );

  // It counts a minute as 1798 (3596) frames throughout, though the first of ten has 1800 (3600). So the last 2 (4) frames of each
  // minute get labels of the next, some of which do not exist. We are right: its own way back from our label gives the frame.
  test.each(judged.filter(({ dropped }) => dropped > 0))(
    `mislabels just the last $dropped frames of each minute at $id, and we are right (seed ${SEED})`,
    (rate) => {
      const frames = framesToTry(rate);
      const endsMinute = (frame: number) => {
        const [, , seconds, last] = formatTimecode(frame, rate.id).split(/[:;]/).map(Number);
        return seconds === 59 && last! >= rate.base - rate.dropped;
      };
      const differing = frames.filter(
        (frame) => boss(frame, rate).toString() !== formatTimecode(frame, rate.id),
      );
      expect(differing).toEqual(frames.filter(endsMinute));
      expect(differing.length).toBeGreaterThan(100);
      expect(
        differing.filter((frame) => boss(formatTimecode(frame, rate.id), rate).frameCount() !== frame),
      ).toEqual([]);
    },
  );

  test('labels frame 1798 at 29.97 DF as 00:01:00;02, which is frame 1800; we say 00:00:59;28', () => {
    expect(boss(1798, rateOf('29.97DF')).toString()).toBe('00:01:00;02');
    expect(formatTimecode(1798, '29.97DF')).toBe('00:00:59;28');
  });

  test('moves a left-out label on by two even at 59.94 DF, to another that does not exist; we refuse it', () => {
    expect(boss('00:01:00;00', rateOf('59.94DF')).toString()).toBe('00:01:00;02');
    expect(frameOf('00:01:00;00', '59.94DF')).toBeUndefined();
    expect(frameOf('00:01:00;02', '59.94DF')).toBeUndefined();
  });
});
