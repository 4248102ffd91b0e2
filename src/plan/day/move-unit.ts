import type { Answers } from '../../day/answers/answers.ts';
import type { Day, PartId, TakeId, VoiceId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import type { Draft } from '../../facts/fact.ts';
import type { PlanProblem } from '../plan-problem.ts';
import type { Plan } from '../setup/plan-next-setup.ts';
import { problemOf } from './day-problem.ts';
import { type Beside, besidesIn, needDrafts, sayPlan } from './plan-facts.ts';
import { PlannedChain } from './planned-chain.ts';

/** The unit goes to these recorders, which roll from a place on the line on, for these voices. */
export interface UnitMove {
  /** The main one first, in the order of the day's recorders. */
  readonly recorders: readonly PartId[];
  readonly wanted: ReadonlySet<VoiceId>;
  /** Just before this take; now if it is left out. */
  readonly before?: TakeId | undefined;
}

/** The recorders that are planned, one after another: those that record the same are planned once. */
export function recordersPlanned({ rig }: Pick<Day, 'rig'>, { recorders }: UnitMove): PartId[] {
  const seen = new Set<PartId>();
  return recorders.filter((recorder) => {
    const as = recordsAs(rig, recorder);
    if (seen.has(as)) return false;
    seen.add(as);
    return true;
  });
}

/**
 * The problem of the next recorder, given the plans of those before it; null once all are planned. So the main
 * one comes first in every order, and a backup gets what it can of what the main one left.
 */
export function unitProblem(day: Day, move: UnitMove, plans: readonly Plan[]): PlanProblem | null {
  const recorder = recordersPlanned(day, move)[plans.length];
  if (recorder === undefined) return null;
  const { answers } = movedBy(day, move, plans);
  return problemOf(day, move.wanted, { recorder, before: move.before, answers: answers() });
}

/** What one recorder's plan does besides its moves. */
export interface UnitBesides {
  readonly recorder: PartId;
  readonly besides: readonly Beside[];
}

/** For each recorder planned, what its plan does besides its moves: shown before accepting. */
export const unitBesides = (day: Day, move: UnitMove, plans: readonly Plan[]): UnitBesides[] =>
  movedBy(day, move, plans).besides.map(({ recorder, drafts }) => ({ recorder, besides: besidesIn(drafts) }));

/** The whole move as the facts of one action: who rolls, who is needed, and the moves of every plan. */
export const unitFacts = (day: Day, move: UnitMove, plans: readonly Plan[]): Draft[] =>
  movedBy(day, move, plans).drafts.map((draft) =>
    move.before === undefined ? draft : ({ ...draft, before: move.before } as Draft),
  );

interface Moved {
  readonly drafts: readonly Draft[];
  readonly besides: readonly { readonly recorder: PartId; readonly drafts: readonly Draft[] }[];
  readonly answers: () => Answers;
}

function movedBy(day: Day, move: UnitMove, plans: readonly Plan[]): Moved {
  const chain = new PlannedChain(day, move.before);
  chain.say({ kind: 'recorders-rolling', recorders: [...move.recorders] });
  chain.say(...needDrafts(chain.before, move.wanted));
  const planned = recordersPlanned(day, move);
  const besides = plans.map((plan, at) => ({
    recorder: planned[at]!,
    drafts: sayPlan(chain, planned[at]!, plan),
  }));
  return { drafts: chain.drafts, besides, answers: () => chain.answers() };
}
