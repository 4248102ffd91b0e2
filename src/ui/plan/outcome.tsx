import { useMemo } from 'preact/hooks';
import type { Day } from '../../day/model.ts';
import { bestAddition } from '../../plan/best-addition.ts';
import type { Plan } from '../../plan/plan-next-setup.ts';
import type { PlanProblem } from '../../plan/plan-problem.ts';
import { Row } from '../parts/row.tsx';
import { listOf, nameOf, partName } from '../words/chain.ts';
import { additionWords, costWords, leftOutWords, proofWords } from '../words/plan.ts';

interface OutcomeProps {
  readonly day: Day;
  readonly problem: PlanProblem;
  readonly plan: Plan;
}

/** What comes of the plan: what it costs, who shares a track, who is left out, and what would help. */
export function Outcome({ day, problem, plan }: OutcomeProps) {
  const addition = useMemo(
    () => (plan.leftOut.length > 0 ? bestAddition(problem) : undefined),
    [problem, plan],
  );
  const gangs = [
    ...new Set(plan.recorded.filter(({ gangedWith }) => gangedWith.length > 0).map(({ track }) => track)),
  ];
  return (
    <>
      <div class="plan-cost">
        <p>
          <strong>{costWords(plan)}</strong>
        </p>
        <p class="soft">{proofWords(plan)}</p>
      </div>
      <ul class="rows">
        {plan.leftOut.map(({ voice, why }) => (
          <li key={voice}>
            <Row
              mark="broken"
              title={nameOf(day, voice)}
              word={<strong>left out</strong>}
              under={leftOutWords(day, why)}
            />
          </li>
        ))}
        {gangs.map((track) => (
          <li key={track}>
            <Row
              mark="gang"
              title={listOf(
                plan.recorded.filter((one) => one.track === track).map(({ voice }) => nameOf(day, voice)),
              )}
              word={`share ${partName(day.rig, track)}`}
            />
          </li>
        ))}
      </ul>
      {addition && <p class="section">{additionWords(day, addition)}</p>}
    </>
  );
}
