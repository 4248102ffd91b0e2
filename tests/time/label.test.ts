import { describe, expect, test } from 'vitest';
import { droppedAt, frameOfLabel, labelOfFrame, sameLabel } from '../../src/time/label.ts';
import { framesPerDay, type RateId, rateOf } from '../../src/time/rate.ts';
import { formatTimecode, parseTimecode } from '../../src/time/timecode.ts';

/** Counts up through every label that exists and reports the first frame where one direction is off. */
function firstWrongFrame(id: RateId): { wrong: string | undefined; counted: number } {
  const { base } = rateOf(id);
  const label = { hours: 0, minutes: 0, seconds: 0, frames: 0 };
  let counted = 0;
  for (let second = 0; second < 86_400; second++) {
    label.hours = Math.floor(second / 3600);
    label.minutes = Math.floor(second / 60) % 60;
    label.seconds = second % 60;
    for (
      label.frames = droppedAt(rateOf(id), label.minutes, label.seconds);
      label.frames < base;
      label.frames++
    ) {
      const back = labelOfFrame(counted, id);
      const same =
        back.hours === label.hours &&
        back.minutes === label.minutes &&
        back.seconds === label.seconds &&
        back.frames === label.frames;
      if (!same || frameOfLabel(label, id) !== counted) return { wrong: JSON.stringify(label), counted };
      counted++;
    }
  }
  return { wrong: undefined, counted };
}

describe('drop-frame', () => {
  test.each(['29.97DF', '30DF', '59.94DF', '25'] as const)(
    'at %s every label of a day and its frame give each other',
    (id) => {
      expect(firstWrongFrame(id)).toEqual({ wrong: undefined, counted: framesPerDay(id) });
    },
    30_000,
  );

  test.each([
    ['29.97DF', 2],
    ['30DF', 2],
    ['59.94DF', 4],
  ] as const)(
    'at %s every left-out label of a day is refused, naming the one that follows',
    (id, dropped) => {
      let refused = 0;
      for (let minute = 0; minute < 1440; minute++) {
        const start = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00;`;
        for (let frames = 0; frames < dropped; frames++) {
          const read = parseTimecode(`${start}0${frames}`, id);
          if (minute % 10 === 0) {
            expect(read.ok).toBe(true);
            continue;
          }
          expect(read).toMatchObject({ problem: { code: 'timecode-dropped', next: `${start}0${dropped}` } });
          refused++;
        }
      }
      expect(refused).toBe(1296 * dropped);
    },
  );

  // The common formula without the test `rest > dropped` gives -2 and -1 here when it floors.
  test.each([0, 1, 17_982, 17_983])(
    'frame %i, among the first two of ten minutes, keeps its label',
    (frame) => {
      const tens = Math.floor(frame / 17_982);
      expect(formatTimecode(frame, '29.97DF')).toBe(`00:${tens}0:00;0${frame % 17_982}`);
    },
  );
});

describe('the same digits at another rate', () => {
  const read = (digits: string, rate: RateId): number => {
    const frames = parseTimecode(digits, rate);
    if (!frames.ok) throw new Error(frames.problem.code);
    return frames.value;
  };

  test.each([
    ['10:00:00:12', '25', '10:00:00:12', '23.976'],
    ['10:00:00:24', '25', '10:00:00:23', '23.976'],
    ['10:00:00:24', '25', '10:00:00:24', '30'],
    ['10:01:00:00', '29.97', '10:01:00;02', '29.97DF'],
    ['10:10:00:00', '29.97', '10:10:00;00', '29.97DF'],
    ['23:59:59;29', '29.97DF', '23:59:59:29', '29.97'],
    ['00:00:00;00', '29.97DF', '00:00:00:00', '24'],
  ] as const)('%s at %s is %s at %s', (digits, from, same, to) => {
    expect(formatTimecode(sameLabel(read(digits, from), from, to), to)).toBe(same);
  });
});
