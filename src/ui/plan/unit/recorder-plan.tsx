import type { PartId } from '../../../day/model.ts';
import type { Beside } from '../../../plan/day/plan-facts.ts';
import type { Plan } from '../../../plan/setup/plan-next-setup.ts';
import { useDay } from '../../frame/context.ts';
import { Row } from '../../kit/row.tsx';
import { listOf, nameOf } from '../../words/chain.ts';
import { recorderName } from '../../words/recorder-names.ts';
import {
  besideWords,
  costWords,
  leftOutWords,
  moveWords,
  proofWords,
  reasonWords,
  WORKING,
} from '../words.ts';
import { Checklist } from './checklist.tsx';

interface RecorderPlanProps {
  readonly recorder: PartId;
  readonly isMain: boolean;
  /** Undefined until it is worked out: a backup is planned on what the main one left. */
  readonly plan: Plan | undefined;
  readonly isLooking: boolean;
  readonly besides: readonly Beside[];
}

/** What the plan says of one recorder: its cost, whom it does not get, and its moves. */
export function RecorderPlan({ recorder, isMain, plan, isLooking, besides }: RecorderPlanProps) {
  const day = useDay().day.value;
  const name = recorderName(day, recorder);
  return (
    <section aria-label={name}>
      <h2 class="section-title">
        {name} <span class="soft">{isMain ? 'main recorder' : 'backup recorder'}</span>
      </h2>
      <div class="section">
        <p>{plan ? <strong>{costWords(plan)}</strong> : WORKING}</p>
        {plan && (
          <p class="soft" role="status">
            {proofWords(plan, isLooking)}
          </p>
        )}
      </div>
      {plan && plan.leftOut.length > 0 && (
        <ul class="rows">
          {plan.leftOut.map(({ voice, why }) => (
            <li key={voice}>
              <Row
                mark="broken"
                title={nameOf(day, voice)}
                word={<strong>not on {name}</strong>}
                under={leftOutWords(day, why)}
              />
            </li>
          ))}
        </ul>
      )}
      <Checklist
        label={`Moves for ${name}, in their order`}
        items={(plan?.moves ?? []).map((move) => ({
          title: moveWords(day, move),
          under: reasonWords(day, move),
        }))}
      />
      {besides.length > 0 && (
        <p class="section">Also: {listOf(besides.map((beside) => besideWords(day, beside)))}.</p>
      )}
    </section>
  );
}
