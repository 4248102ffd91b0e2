import type { Move } from '../moves.ts';
import { type PlanProblem, type PlanVoice, SCENES_AHEAD } from '../plan-problem.ts';
import type { Plan } from '../setup/plan-next-setup.ts';
import { type AheadPack, fewestFits } from './fewest-fits.ts';

/** Who is needed in the scenes to come, the next first. */
export type Coming = readonly ReadonlySet<string>[];

/** The same problem, in which packs of those who are soon needed again are dear. */
export function withComing(problem: PlanProblem, coming: Coming): PlanProblem {
  const near = coming.slice(0, SCENES_AHEAD);
  if (near.length === 0) return problem;
  return {
    ...problem,
    voices: problem.voices.map((voice) => {
      const at = near.findIndex((scene) => scene.has(voice.id));
      return voice.needed || at < 0 ? voice : { ...voice, neededAgain: at + 1 };
    }),
  };
}

/** Somebody who waits and keeps the pack, because of the scene at this index of those to come. */
export interface KeptPack {
  readonly voice: string;
  readonly transmitter: string;
  readonly scene: number;
}

/** What a plan leads to over the scenes looked at. */
export interface Ahead {
  readonly scenes: number;
  /** Packs to fit now and in those scenes, if each gives up what is needed again last. */
  readonly fits: number;
  /** Proven: whatever is done now, there are no fewer. */
  readonly bound: number;
  readonly kept: readonly KeptPack[];
}

/** Judges a plan by the scenes to come; `problem` is the one it was made for. Undefined without scenes. */
export function aheadOf(problem: PlanProblem, plan: Plan, coming: Coming): Ahead | undefined {
  const near = coming.slice(0, SCENES_AHEAD);
  if (near.length === 0) return undefined;
  const packs = packsOf(problem);
  const now = new Set(
    plan.recorded.flatMap(({ voice, transmitter }) => (transmitter === undefined ? [] : [voice])),
  );
  const setups = near.map((scene) => wearersIn(problem, scene, packs.length));
  const after = packsAfter(packs, plan.moves);
  const fitted = plan.moves.filter(({ kind }) => kind === 'fit').length;
  return {
    scenes: near.length,
    fits: fitted + fewestFits(after, setups).fits,
    bound: fewestFits(packs, [now, ...setups]).bound,
    kept: after.flatMap(({ id, wornBy }) => {
      const scene = setups.findIndex((setup) => wornBy !== undefined && setup.has(wornBy));
      const isWaiting = wornBy !== undefined && !now.has(wornBy);
      return isWaiting && scene >= 0 ? [{ voice: wornBy, transmitter: id, scene }] : [];
    }),
  };
}

function packsOf({ transmitters, voices }: PlanProblem): AheadPack[] {
  const pins = new Map(
    voices.flatMap(({ id, pinnedTransmitter }) => (pinnedTransmitter ? [[pinnedTransmitter, id]] : [])),
  );
  return transmitters
    .filter(({ out }) => !out)
    .map(({ id, wornBy }) => {
      const only = pins.get(id);
      return { id, ...(wornBy !== undefined && { wornBy }), ...(only !== undefined && { only }) };
    });
}

/** Those of a scene who wear packs, as many as there are, the most important first. */
function wearersIn({ voices }: PlanProblem, scene: ReadonlySet<string>, packs: number): ReadonlySet<string> {
  const wearing = (voice: PlanVoice): boolean =>
    scene.has(voice.id) && (voice.hardline === undefined || voice.mayWear === true);
  const inOrder = voices.filter(wearing).sort((a, b) => a.priority - b.priority);
  return new Set(inOrder.slice(0, packs).map(({ id }) => id));
}

function packsAfter(packs: readonly AheadPack[], moves: readonly Move[]): AheadPack[] {
  const worn = new Map(packs.map(({ id, wornBy }) => [id, wornBy]));
  for (const move of moves) {
    if (move.kind === 'take') worn.set(move.transmitter, undefined);
    if (move.kind === 'fit') worn.set(move.transmitter, move.to);
  }
  return packs.map(({ wornBy: _, ...pack }) => {
    const wornBy = worn.get(pack.id);
    return { ...pack, ...(wornBy !== undefined && { wornBy }) };
  });
}
