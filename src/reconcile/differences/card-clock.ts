import type { RateId } from '../../time/rate.ts';
import { rateOf } from '../../time/rate.ts';
import { aroundDay, type DayAxis, nearestFrames, stampMs } from '../log-and-card/label-time.ts';
import { clockPoints, isSteady } from '../pairing/clock-fit.ts';
import { medianOf, type Point, type RobustLine, robustLine } from '../pairing/robust-line.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { ClockSaid } from './difference.ts';

/** How the clock behind the log's start times compares with the recorder's. */
export interface CardClock extends ClockSaid {
  /** About one standard error. */
  readonly ppmError: number;
  /** How many frames the recorder's labels are later than the log's, at the last pair. */
  readonly lastFrames: number;
  /** A label and when it appears on the recorder, UTC ms by the phone's clock, as of the last pair. */
  readonly corrected: { readonly frames: number; readonly rate: RateId; readonly atMs: number } | null;
  /** Milliseconds to add to a label of the log to get the recorder's. */
  readonly laterAt: (logMs: number) => number;
}

const LEAST_PAIRS = 3;

/**
 * A robust line through the starts of all pairs, so that a few wrong pairs or late taps do not bend it. Null
 * for fewer than three. 1 ppm is 3.6 ms an hour; 10 ppm at 25 are 0.9 frames an hour.
 */
export function clockAgainstCard({ pairs, match, header }: Checking): CardClock | null {
  const { axis } = match;
  const points = clockPoints(pairs, axis);
  const line = robustLine(points);
  if (!line || points.length < LEAST_PAIRS) return null;
  const phone = phoneLine(pairs, axis.dayMs);
  const { slope, slopeError } = sureSlope(phone?.line ?? line);
  const laterAt = labelsLater(points, line, axis);
  const last = Math.max(...points.map(({ x }) => x));
  const { num, den } = rateOf(header.timecodeRate);
  return {
    by: phone ? 'phone' : 'log',
    ppm: slope * 1e6,
    ppmError: slopeError * 1e6,
    framesPerHour: (slope * 3600 * num) / den,
    lastFrames: nearestFrames(laterAt(last), header.timecodeRate),
    corrected: phone ? correctedClock(phone, slope, header.timecodeRate, axis.dayMs) : null,
    laterAt: (logMs) => laterAt(axis.at(logMs)),
  };
}

const sureSlope = (line: RobustLine): { slope: number; slopeError: number } => ({
  slope: isSteady(line) ? line.slope : 0,
  slopeError: line.slopeError,
});

/** The log's labels against the recorder's: along the line if its slope is certain, else the median. */
function labelsLater(points: readonly Point[], line: RobustLine, axis: DayAxis): (x: number) => number {
  const { slope } = sureSlope(line);
  const middle = medianOf(points.map(({ x, y }) => y - slope * (x - line.middle.x)));
  return (x) => aroundDay(middle + slope * (x - line.middle.x), axis.dayMs);
}

interface PhoneLine {
  readonly line: RobustLine;
  /** The offset subtracted from every y, and the last time of Roll. */
  readonly apartMs: number;
  readonly lastMs: number;
}

/** The recorder's labels against the phone's own clock, which following the recorder does not change. */
function phoneLine(pairs: readonly CheckedPair[], dayMs: number): PhoneLine | undefined {
  const timed = pairs.flatMap(({ take: { rolledAt }, recorded: { pressMs } }) =>
    rolledAt === undefined || pressMs === undefined ? [] : [{ rolledAt, pressMs }],
  );
  const [first] = timed;
  if (!first || timed.length < LEAST_PAIRS) return undefined;
  const apartMs = first.pressMs - first.rolledAt;
  const line = robustLine(
    timed.map(({ rolledAt, pressMs }) => ({
      x: rolledAt,
      y: aroundDay(pressMs - rolledAt - apartMs, dayMs),
    })),
  );
  return line && { line, apartMs, lastMs: Math.max(...timed.map(({ rolledAt }) => rolledAt)) };
}

function correctedClock(
  { line, apartMs, lastMs }: PhoneLine,
  slope: number,
  rate: RateId,
  dayMs: number,
): CardClock['corrected'] {
  const labelMs = lastMs + apartMs + line.middle.y + slope * (lastMs - line.middle.x);
  const { num, den } = rateOf(rate);
  const inDay = ((labelMs % dayMs) + dayMs) % dayMs;
  const frames = Math.ceil((inDay * num) / (den * 1000));
  const atMs = Math.round(lastMs + stampMs({ frames, rate }) - inDay);
  return { frames, rate, atMs };
}
