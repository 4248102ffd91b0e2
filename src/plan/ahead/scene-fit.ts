import { isHardline } from '../../day/cast-in-order.ts';
import type { Day, VoiceId } from '../../day/model.ts';
import type { Scene, SceneId } from '../../day/scene.ts';
import { scenesToShoot, voicesIn } from '../../day/scenes-in-order.ts';
import { problemOf } from '../day/day-problem.ts';
import { neededNow } from '../day/plan-facts.ts';
import type { PlanProblem } from '../plan-problem.ts';
import { type Addition, bestAdditionSteps } from '../setup/best-addition.ts';
import type { LeftOutVoice } from '../setup/left-out.ts';
import { planSteps } from '../setup/plan-next-setup.ts';
import { FIRST_BUDGET, type Steps } from '../steps.ts';

/** What a scene needs, or what there is to give it. */
export interface Counts {
  readonly packs: number;
  readonly channels: number;
  readonly tracks: number;
}

/** A scene against the rig, with everybody in it recorded as well as can be. */
export interface SceneFit {
  readonly scene: SceneId;
  readonly needs: Counts;
  readonly there: Counts;
  readonly leftOut: readonly LeftOutVoice[];
  /** Those who share a track with others so that all fit. */
  readonly ganged: readonly VoiceId[];
  /** One more of what would record the most of those left out. */
  readonly addition: Addition | undefined;
  /** Proven that nobody else can be recorded. */
  readonly exact: boolean;
}

/** Who is to be recorded in a scene: those in it, and the hardlines that are up. */
export function wantedIn(day: Day, scene: Scene): ReadonlySet<VoiceId> {
  const up = [...neededNow(day)].filter((id) => isHardline(day.voices.get(id)?.kind ?? 'performer'));
  return new Set([...voicesIn(day, scene).map(({ id }) => id), ...up]);
}

/** The scenes still to shoot, each with how it fits the rig. Pausable; one scene a yield. */
export function* sceneFits(day: Day): Generator<SceneFit | undefined, void> {
  for (const scene of scenesToShoot(day)) {
    const fit = yield* sceneFitSteps(scene.id, problemOf(day, wantedIn(day, scene)));
    if (fit) yield fit;
  }
}

/** How one scene fits; undefined if it cannot be planned at all. */
export function* sceneFitSteps(scene: SceneId, problem: PlanProblem): Steps<SceneFit | undefined> {
  const planned = yield* planSteps(problem, FIRST_BUDGET);
  if (!planned.ok) return undefined;
  const { leftOut, recorded, exact } = planned.value;
  return {
    scene,
    needs: needsOf(problem),
    there: thereIn(problem),
    leftOut,
    ganged: recorded.filter(({ gangedWith }) => gangedWith.length > 0).map(({ voice }) => voice),
    addition: leftOut.length > 0 ? yield* bestAdditionSteps(problem) : undefined,
    exact: exact.leftOut,
  };
}

function needsOf({ voices }: PlanProblem): Counts {
  const needed = voices.filter((voice) => voice.needed);
  const packs = needed.filter(({ hardline }) => hardline === undefined).length;
  return { packs, channels: packs, tracks: needed.length };
}

const thereIn = ({ transmitters, channels, tracks }: PlanProblem): Counts => ({
  packs: transmitters.filter(({ out }) => !out).length,
  channels: channels.filter(({ out }) => !out).length,
  tracks: tracks.filter(({ out, iso }) => iso && !out).length,
});
