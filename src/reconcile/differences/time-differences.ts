import type { Stamp } from '../../day/model.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import { lengthOfFile, startOfFile } from '../log-and-card/file-fields.ts';
import { aroundDay, nearestFrames } from '../log-and-card/label-time.ts';
import { lengthApartMs } from '../log-and-card/recorded.ts';
import { startApartMs } from '../pairing/likelihood.ts';
import { type CardClock, clockAgainstCard } from './card-clock.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';
import { type Pulldown, pulldownBetween } from './pulldown.ts';

/** Starts and lengths that differ too much, and what the two clocks do overall. */
export function timeDifferences(checking: Checking): Found[] {
  const { pairs, match } = checking;
  const clock = clockAgainstCard(checking);
  const pulldown = pulldownBetween(pairs, match.axis);
  const starts = pairs.filter((pair) => startFramesApart(checking, pair) > checking.tolerance.startFrames);
  const byClock = new Set(clock ? starts.filter((pair) => isByClock(checking, clock, pair)) : []);
  // One or two takes prove nothing about a clock: they are reported singly.
  const grouped = byClock.size >= 3 ? byClock : new Set<CheckedPair>();
  return [
    ...(pulldown ? [pulldownFound(pulldown)] : []),
    ...preRecordFound(checking),
    ...(clock && grouped.size > 0 ? [clockApart(clock, [...grouped])] : []),
    ...(clock && !pulldown && isDrifting(clock) ? [clockDrifts(clock)] : []),
    ...starts.filter((pair) => !grouped.has(pair)).map((pair) => startDiffers(checking, pair)),
    ...pairs.flatMap((pair) => notLogged(pair)),
    ...pairs.flatMap((pair) => lengthDiffers(checking, pair)),
  ];
}

function startFramesApart({ match }: Checking, { logged, recorded, header }: CheckedPair): number {
  if (logged.startMs === undefined || recorded.startMs === undefined) return 0;
  return nearestFrames(startApartMs(logged.startMs, recorded, match.axis.dayMs), header.timecodeRate);
}

/** The start fits once the log's clock is corrected, so the clock is wrong and not the take. */
function isByClock(
  { match, tolerance }: Checking,
  clock: CardClock,
  { logged, recorded, header }: CheckedPair,
): boolean {
  const startMs = logged.startMs!;
  const apart = startApartMs(startMs + clock.laterAt(startMs), recorded, match.axis.dayMs);
  return nearestFrames(apart, header.timecodeRate) <= tolerance.startFrames;
}

const startFields = ({ recording, header }: CheckedPair): { start?: Stamp } => {
  const start = startOfFile(recording, header.timecodeRate);
  return start ? { start } : {};
};

const pulldownFound = ({ ratio, by, ppm }: Pulldown): Found => ({
  code: 'pulldown',
  was: '1',
  is: ratio,
  detail: { by, ppm },
});

/** The takes are as logged: only the files begin before them. */
const preRecordFound = ({ preRecord }: Checking): Found[] =>
  preRecord
    ? [
        {
          code: 'pre-record-undeclared',
          was: 0,
          is: preRecord.ms,
          detail: { takes: preRecord.pairs.map(({ take }) => take.id) },
        },
      ]
    : [];

function clockApart(clock: CardClock, pairs: readonly CheckedPair[]): Found {
  const { corrected, by, ppm, framesPerHour } = clock;
  const takes = pairs.map((pair) => ({ take: pair.take.id, fields: startFields(pair) }));
  return {
    code: 'clock-apart',
    was: 0,
    is: clock.lastFrames,
    detail: { by, ppm, framesPerHour, takes: takes.map(({ take }) => take) },
    settlements: [
      { kind: 'describe-takes', takes },
      ...(corrected ? [{ kind: 'follow-recorder' as const, ...corrected, takes }] : []),
    ],
  };
}

/** Drift is worth mentioning from a quarter of a frame an hour: three frames in a long day. */
const isDrifting = ({ framesPerHour }: CardClock): boolean => Math.abs(framesPerHour) >= 0.25;

function clockDrifts({ corrected, by, ppm, framesPerHour }: CardClock): Found {
  return {
    code: 'clock-drifts',
    was: 0,
    is: ppm,
    detail: { by, ppm, framesPerHour },
    settlements: corrected ? [{ kind: 'follow-recorder', ...corrected, takes: [] }] : [],
  };
}

function startDiffers(checking: Checking, pair: CheckedPair): Found {
  const { match } = checking;
  const { take, recording, logged, recorded, header } = pair;
  const later = aroundDay(recorded.startMs! - logged.startMs!, match.axis.dayMs);
  const fields = startFields(pair);
  return {
    code: 'start-differs',
    take: take.id,
    recording,
    was: take.start,
    is: fields.start ?? null,
    detail: { frames: nearestFrames(later, header.timecodeRate) },
    settlements: [{ kind: 'describe-takes', takes: [{ take: take.id, fields }] }],
  };
}

function notLogged({ take, recording, header }: CheckedPair): Found[] {
  const start = take.start ? undefined : startOfFile(recording, header.timecodeRate);
  const length = take.length ? undefined : lengthOfFile(recording, header.timecodeRate);
  const taking = (fields: TakeFields) => ({
    take: take.id,
    recording,
    was: null,
    settlements: [{ kind: 'describe-takes' as const, takes: [{ take: take.id, fields }] }],
  });
  return [
    ...(start ? [{ code: 'start-not-logged' as const, ...taking({ start }), is: start }] : []),
    ...(length ? [{ code: 'length-not-logged' as const, ...taking({ length }), is: length }] : []),
  ];
}

function lengthDiffers({ tolerance }: Checking, { take, recording, header, ...pair }: CheckedPair): Found[] {
  const { logged, recorded } = pair;
  const length = lengthOfFile(recording, header.timecodeRate);
  if (logged.lengthMs === undefined || recorded.lengthMs === undefined || !length) return [];
  const frames = nearestFrames(lengthApartMs(logged.lengthMs, recorded), header.timecodeRate);
  if (Math.abs(frames) <= tolerance.lengthFrames) return [];
  return [
    {
      code: 'length-differs',
      take: take.id,
      recording,
      was: take.length,
      is: length,
      detail: { frames },
      settlements: [{ kind: 'describe-takes', takes: [{ take: take.id, fields: { length } }] }],
    },
  ];
}
