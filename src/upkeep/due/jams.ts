import { fail, ok, type Problem, type Result } from '../../shared/result.ts';
import type { RateId } from '../../time/rate.ts';
import { actionAt, byName, type DueAction } from '../due-action.ts';
import { firstBadQuantity, moment } from '../quantity.ts';
import { frameMs, LEAST_PPM, tolerance } from './drift.ts';

/** A device was jammed from another, or compared with it, at a UTC ms; `tolerancePpm` is the device's own clock, if known. */
export interface Jam {
  readonly device: string;
  readonly from: string;
  readonly atMs: number;
  readonly tolerancePpm: number | undefined;
  /** How far apart the two may have been already, where that was heard and not put right; 0 after a jam. */
  readonly offMs?: number;
}

export interface JamCheck {
  readonly nowMs: number;
  readonly takeOpen: boolean;
  readonly rate: RateId;
  /** Re-jam before the worst case reaches this many frames; one by default. */
  readonly limitFrames?: number;
  /** The tolerance of the clock everything was first jammed from; 0 if that clock is the reference. */
  readonly referencePpm?: number;
  /** The same if there are several such clocks, by device; undefined if unknown. */
  readonly headPpm?: (device: string) => number | undefined;
}

/** Worst case against the clock at the head of the chain; no `dueAtMs` if nothing can drift. */
export interface JamDue {
  readonly device: string;
  readonly from: string;
  readonly jammedAtMs: number;
  readonly driftFrames: number;
  readonly driftMs: number;
  readonly dueAtMs?: number;
  readonly action: DueAction;
}

export interface JamPlan {
  readonly due: readonly JamDue[];
  readonly unknown: readonly { readonly device: string; readonly problem: Problem }[];
}

/**
 * For each device's last jam: worst drift now, and when it is due again, soonest first. A device jammed from
 * another inherits that one's drift so far; the tolerances of two clocks add. A device goes to `unknown` if
 * the tolerance of any clock in its chain is, or if a jam is invalid. Fails only on a bad check. Example: 1
 * ppm jammed at 07:00 at 25 is due after 11.11 h.
 */
export function planJams(jams: readonly Jam[], check: JamCheck): Result<JamPlan> {
  const { limitFrames = 1, referencePpm = 0, nowMs } = check;
  const problem = firstBadQuantity([
    moment('nowMs', nowMs),
    tolerance(referencePpm),
    { field: 'limitFrames', value: limitFrames, min: 0.01, max: 1e6 },
  ]);
  if (problem) return fail(problem);
  const unknown = jams.flatMap((jam) => {
    const wrong = jamProblem(jam, nowMs);
    return wrong ? [{ device: jam.device, problem: wrong }] : [];
  });
  const sound = jams.filter((jam) => jamProblem(jam, nowMs) === undefined);
  const due: JamDue[] = [];
  const headPpm = check.headPpm ?? (() => referencePpm);
  for (const device of new Set(sound.map((jam) => jam.device))) {
    const last = lastJam(sound, device, nowMs);
    if (!last) continue;
    const one = dueOf(last, sound, { ...check, limitFrames, headPpm });
    if (one.ok) due.push(one.value);
    else unknown.push({ device, problem: one.problem });
  }
  due.sort(
    (a, b) => (a.dueAtMs ?? Number.MAX_VALUE) - (b.dueAtMs ?? Number.MAX_VALUE) || byName(a.device, b.device),
  );
  return ok({ due, unknown });
}

function jamProblem(jam: Jam, nowMs: number): Problem | undefined {
  const problem = firstBadQuantity([tolerance(jam.tolerancePpm ?? 0), moment('atMs', jam.atMs)]);
  if (problem) return problem;
  if (jam.atMs > nowMs) return { code: 'jam-after-now' };
  return jam.from === jam.device ? { code: 'jam-from-itself' } : undefined;
}

const lastJam = (jams: readonly Jam[], device: string, untilMs: number): Jam | undefined =>
  jams
    .filter((jam) => jam.device === device && jam.atMs <= untilMs)
    .reduce<Jam | undefined>((last, jam) => (last && last.atMs > jam.atMs ? last : jam), undefined);

type Chain = Required<Pick<JamCheck, 'headPpm'>>;

function dueOf(
  jam: Jam,
  jams: readonly Jam[],
  check: JamCheck & Chain & { limitFrames: number },
): Result<JamDue> {
  if (jam.tolerancePpm === undefined) return fail({ code: 'no-tolerance', device: jam.device });
  const source = driftOf(jams, jam.from, jam.atMs, check);
  if (!source.ok) return source;
  const ppm = jam.tolerancePpm + source.value.headPpm;
  const inheritedMs = source.value.driftMs + (jam.offMs ?? 0);
  const driftMs = inheritedMs + ppm * 1e-6 * (check.nowMs - jam.atMs);
  const spareMs = Math.max(0, check.limitFrames * frameMs(check.rate) - inheritedMs);
  const isSteady = ppm < LEAST_PPM;
  const neverDue = isSteady && spareMs > 0;
  const dueAtMs = jam.atMs + (isSteady ? 0 : Math.round((spareMs * 1e6) / ppm));
  return ok({
    device: jam.device,
    from: jam.from,
    jammedAtMs: jam.atMs,
    driftFrames: driftMs / frameMs(check.rate),
    driftMs,
    ...(!neverDue && { dueAtMs }),
    action: neverDue ? 'later' : actionAt(dueAtMs, check.nowMs, check.takeOpen),
  });
}

/**
 * Worst drift of a source at a moment, and the clock at the head of its chain: the first that was never
 * jammed itself.
 */
function driftOf(
  jams: readonly Jam[],
  device: string,
  atMs: number,
  chain: Chain,
): Result<{ readonly driftMs: number; readonly headPpm: number }> {
  // Only strictly earlier jams count, so devices jammed from each other in a ring at one moment do not
  // recurse forever.
  const jam = lastJam(jams, device, atMs - 1);
  const ppm = jam ? jam.tolerancePpm : chain.headPpm(device);
  if (ppm === undefined) return fail({ code: 'source-without-tolerance', device });
  if (!jam) return ok({ driftMs: 0, headPpm: ppm });
  const source = driftOf(jams, jam.from, jam.atMs, chain);
  if (!source.ok) return source;
  const { driftMs, headPpm } = source.value;
  const since = (ppm + headPpm) * 1e-6 * (atMs - jam.atMs);
  return ok({ driftMs: driftMs + (jam.offMs ?? 0) + since, headPpm });
}

/**
 * The most two jammed devices can differ, in frames. If both were jammed from one source at different times,
 * the source's own drift between the two jams counts too. Example: 5 and 10 ppm, both jammed an hour ago from
 * one source, are 1.35 frames apart at 25.
 */
export function worstApart(
  one: Jam,
  other: Jam,
  check: Pick<JamCheck, 'nowMs' | 'rate' | 'referencePpm'>,
): Result<number> {
  const { nowMs, rate, referencePpm = 0 } = check;
  const problem =
    firstBadQuantity([moment('nowMs', nowMs), tolerance(referencePpm)]) ??
    jamProblem(one, nowMs) ??
    jamProblem(other, nowMs);
  if (problem) return fail(problem);
  if (one.from !== other.from) return fail({ code: 'different-sources', from: [one.from, other.from] });
  const without = [one, other].find(({ tolerancePpm }) => tolerancePpm === undefined);
  if (without) return fail({ code: 'no-tolerance', device: without.device });
  const own = (jam: Jam): number => (jam.tolerancePpm ?? 0) * (nowMs - jam.atMs);
  const driftMs = (own(one) + own(other) + referencePpm * Math.abs(one.atMs - other.atMs)) * 1e-6;
  const apartMs = driftMs + (one.offMs ?? 0) + (other.offMs ?? 0);
  return ok(apartMs / frameMs(rate));
}
