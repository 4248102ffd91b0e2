import type { Answers } from '../../day/answers/answers.ts';
import type { Day, PartId, TakeId, VoiceId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { rollingBefore } from '../../day/recorders/rolling.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Move } from '../moves.ts';
import type { PlanProblem } from '../plan-problem.ts';
import type { Plan } from '../setup/plan-next-setup.ts';
import { problemOf } from './day-problem.ts';
import { keepPromises } from './kept-promises.ts';
import { type Beside, besidesIn, needDrafts, sayMoves } from './plan-facts.ts';
import { PlannedChain } from './planned-chain.ts';

/** Who is to be recorded, and on which recorders. */
export interface Setup {
  readonly wanted: ReadonlySet<VoiceId>;
  /**
   * The unit goes to these, which roll from there on: the main one first, in the order of the day's recorders.
   * Left out, it stays where it is.
   */
  readonly recorders?: readonly PartId[];
  /** Just before this take; now if it is left out. */
  readonly before?: TakeId | undefined;
}

/** Those moves of each plan that are made, in the order of the plans. */
type Accepted = readonly (readonly Move[])[];

/** The recorders that are planned, one after another: those that record the same are planned once. */
export function recordersPlanned(day: Day, { recorders, before }: Setup): PartId[] {
  const seen = new Set<PartId>();
  return (recorders ?? rollingBefore(day, before).map(({ id }) => id)).filter((recorder) => {
    const as = recordsAs(day.rig, recorder);
    if (seen.has(as)) return false;
    seen.add(as);
    return true;
  });
}

/**
 * The problem of the next recorder, given the plans of those before it; null once all are planned. So the main
 * one comes first in every order, and a backup gets what it can of what the main one left.
 */
export function setupProblem(day: Day, setup: Setup, plans: readonly Plan[]): PlanProblem | null {
  const recorder = recordersPlanned(day, setup)[plans.length];
  if (recorder === undefined) return null;
  const { answers } = saidBy(day, setup, plans);
  return problemOf(day, setup.wanted, { recorder, before: setup.before, answers: answers() });
}

/** What one recorder's plan does besides its moves. */
export interface PlanBesides {
  readonly recorder: PartId;
  /** Who is muted or unmuted, and what is tuned away, rerouted or unplugged. */
  readonly besides: readonly Beside[];
}

/** For each recorder planned, what its plan does besides its moves: shown before accepting. */
export const setupBesides = (
  day: Day,
  setup: Setup,
  plans: readonly Plan[],
  accepted?: Accepted,
): PlanBesides[] =>
  saidBy(day, setup, plans, accepted).besides.map(({ recorder, drafts }) => ({
    recorder,
    besides: besidesIn(drafts),
  }));

/**
 * The plans, or what of them is accepted, as the facts of one action: who rolls if the unit moves, who is needed, the
 * moves in their order, and whatever else it takes to record everybody as promised whose chain then stands.
 */
export const setupFacts = (day: Day, setup: Setup, plans: readonly Plan[], accepted?: Accepted): Draft[] =>
  saidBy(day, setup, plans, accepted).drafts.map((draft) =>
    setup.before === undefined ? draft : ({ ...draft, before: setup.before } as Draft),
  );

interface Said {
  readonly drafts: readonly Draft[];
  readonly besides: readonly { readonly recorder: PartId; readonly drafts: readonly Draft[] }[];
  readonly answers: () => Answers;
}

function saidBy(
  day: Day,
  setup: Setup,
  plans: readonly Plan[],
  accepted: Accepted = plans.map(({ moves }) => moves),
): Said {
  const chain = new PlannedChain(day, setup.before);
  if (setup.recorders) chain.say({ kind: 'recorders-rolling', recorders: [...setup.recorders] });
  chain.say(...needDrafts(chain.before, setup.wanted));
  const planned = recordersPlanned(day, setup);
  const besides = plans.map((_, at) => {
    sayMoves(chain, accepted[at] ?? []);
    const moved = chain.drafts.length;
    // Those before it come last: what they were promised stands, whatever a backup is given.
    for (let own = at; own >= 0; own -= 1) {
      const isWhole = (accepted[own] ?? []).length >= plans[own]!.moves.length;
      keepPromises(chain, recordsAs(day.rig, planned[own]!), plans[own]!.recorded, isWhole);
    }
    return { recorder: planned[at]!, drafts: chain.drafts.slice(moved) };
  });
  return { drafts: chain.drafts, besides, answers: () => chain.answers() };
}
