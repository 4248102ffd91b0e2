import type { Planning } from '../../app/planner.ts';
import type { Day } from '../../day/model.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { Row } from '../kit/row.tsx';
import { listOf, nameOf } from '../words/chain.ts';
import { nameWithRecorder } from '../words/recorder-names.ts';
import { LeftOutRows } from './left-out-rows.tsx';
import { additionWords, costWords, proofWords, WORKING } from './words.ts';

interface OutcomeProps {
  readonly day: Day;
  readonly plan: Plan;
  /** This is the first answer; a better one is being computed. */
  readonly isLooking: boolean;
  /** This answers an earlier question. */
  readonly isStale: boolean;
  readonly addition: Planning['addition'];
}

/** What the plan comes to: its cost, who shares a track, who is left out, and what would help. */
export function Outcome({ day, plan, isLooking, isStale, addition }: OutcomeProps) {
  const gangs = [
    ...new Set(plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0).map(({ track }) => track)),
  ];
  return (
    <>
      <div class="plan-cost" aria-busy={isStale}>
        <p>
          <strong>{costWords(plan)}</strong>
        </p>
        <p class="soft" role="status">
          {isStale ? WORKING : proofWords(plan, isLooking)}
        </p>
      </div>
      <ul class="rows">
        <LeftOutRows day={day} plan={plan} word={<strong>left out</strong>} />
        {gangs.map((track) => (
          <li key={track}>
            <Row
              mark="gang"
              title={listOf(
                plan.recorded.filter((one) => one.track === track).map(({ voice }) => nameOf(day, voice)),
              )}
              word={`share ${nameWithRecorder(day, track)}`}
            />
          </li>
        ))}
      </ul>
      {/* Always rendered, so that the moves below do not shift when the answer comes. */}
      {plan.leftOut.length > 0 && <p class="section">{additionWords(day, addition)}</p>}
    </>
  );
}
