import { aroundDay } from '../log-and-card/label-time.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';

export type ReasonKind = 'name' | 'slate' | 'roll' | 'start' | 'length' | 'type';

/** Why a recording may be a take's; negative points speak against it. */
export interface Reason {
  readonly kind: ReasonKind;
  readonly points: number;
}

export interface Score {
  readonly points: number;
  readonly reasons: readonly Reason[];
}

/** The recorder's label for a take's start, from what is known of the two clocks. */
export type ToRecorder = (logMs: number) => number;

/**
 * The weight of each kind of evidence. Only relations matter: a name or a slate alone outweighs a wrong
 * start, and a matching start and length together outweigh a wrong slate and take.
 */
export const POINTS = {
  nameTyped: 120,
  name: 60,
  shortName: 50,
  slateAndTake: 50,
  looseSlateAndTake: 15,
  slateOnly: 15,
  slateOtherTake: 5,
  takeOnly: 5,
  otherSlateSameTake: -15,
  otherSlateAndTake: -20,
  sameType: 6,
  otherType: -6,
  sameRoll: 8,
  otherRoll: -12,
  start: 40,
  startFarOff: -30,
  length: 15,
  lengthFarOff: -15,
} as const;

/**
 * Fewer points are no pair. Without name, slate or a start within `CLOSE_START_MS` no pair exceeds 34, so
 * candidates can be looked up by those three.
 */
export const LEAST_POINTS = 36;
/** From here on a start speaks against a pair. */
export const CLOSE_START_MS = 15_000;

export function scorePair(logged: Logged, recorded: Recorded, toRecorder: ToRecorder, dayMs: number): Score {
  const reasons: Reason[] = [];
  const add = (kind: ReasonKind, points: number): void => {
    if (points !== 0) reasons.push({ kind, points });
  };
  add('name', namePoints(logged, recorded));
  add('slate', slatePoints(logged, recorded));
  add('type', typePoints(logged, recorded));
  if (logged.roll !== undefined && recorded.roll !== undefined)
    add('roll', logged.roll === recorded.roll ? POINTS.sameRoll : POINTS.otherRoll);
  add('start', startPoints(logged, recorded, toRecorder, dayMs));
  if (logged.lengthMs !== undefined && recorded.lengthMs !== undefined)
    add(
      'length',
      fading(POINTS.length, 5, Math.abs(logged.lengthMs - recorded.lengthMs), POINTS.lengthFarOff),
    );
  return { points: reasons.reduce((sum, { points }) => sum + points, 0), reasons };
}

/** Full points for no distance, and so many fewer with every doubling of a second more. */
const fading = (full: number, perDoubling: number, apartMs: number, least: number): number =>
  Math.max(least, Math.round(full - perDoubling * Math.log2(1 + apartMs / 1000)));

function namePoints({ stem, stems, nameTyped }: Logged, recorded: Recorded): number {
  if (stem === '') return 0;
  if (stems.some((one) => recorded.stems.has(one))) return nameTyped ? POINTS.nameTyped : POINTS.name;
  return recorded.shortStems.has(stem) ? (nameTyped ? POINTS.nameTyped : POINTS.shortName) : 0;
}

function slatePoints({ scenes, looseScenes, take }: Logged, { scene, number }: Recorded): number {
  const sameTake = number === undefined ? undefined : number === take.number;
  if (scene === undefined) return sameTake ? POINTS.takeOnly : 0;
  if (scenes.includes(scene)) {
    if (sameTake === undefined) return POINTS.slateOnly;
    return sameTake ? POINTS.slateAndTake : POINTS.slateOtherTake;
  }
  if (looseScenes.includes(scene)) return sameTake ? POINTS.looseSlateAndTake : 0;
  return sameTake ? POINTS.otherSlateSameTake : POINTS.otherSlateAndTake;
}

/** A log may know more than the file, which was named before the take was over; not the other way round. */
function typePoints({ take }: Logged, { types }: Recorded): number {
  const pairs: readonly [string, boolean][] = [
    ['FALSE_START', take.falseStart],
    ['WILD_TRACK', take.kind === 'wild' || take.kind === 'tone'],
    ['PICKUP', take.kind === 'pickup'],
  ];
  const said = pairs.filter(([word]) => types.has(word));
  if (said.length === 0) return 0;
  return said.every(([, logged]) => logged) ? POINTS.sameType : POINTS.otherType;
}

/** Reaches zero at `CLOSE_START_MS` and is negative beyond it. */
function startPoints({ startMs }: Logged, recorded: Recorded, toRecorder: ToRecorder, dayMs: number): number {
  if (startMs === undefined || recorded.startMs === undefined) return 0;
  const apart = startApartMs(toRecorder(startMs), recorded, dayMs);
  return fading(POINTS.start, 10, apart, POINTS.startFarOff);
}

/** From a label of the log to the file's first sample or to the button press, whichever is nearer. */
export function startApartMs(ms: number, { startMs, pressMs }: Recorded, dayMs: number): number {
  const apart = [startMs, pressMs].map((one) => Math.abs(aroundDay(one! - ms, dayMs)));
  return Math.min(...apart);
}
