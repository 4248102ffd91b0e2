import type { ComponentChildren } from 'preact';
import type { PartId } from '../../day/model.ts';
import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { useDay } from '../frame/context.ts';
import { recorderName } from '../words/recorder-names.ts';
import { LeftOutRows } from './left-out-rows.tsx';
import { costWords, proofWords, WORKING } from './words.ts';

interface RecorderPlanProps {
  readonly recorder: PartId;
  readonly isMain: boolean;
  /** Undefined until it is worked out: a backup is planned on what the main one left. */
  readonly plan: Plan | undefined;
  readonly isLooking: boolean;
  /** It answers an earlier question. */
  readonly isStale?: boolean;
  /** Its moves, and what it does besides. */
  readonly children: ComponentChildren;
}

/** What the plan says of one recorder: its cost, whom it does not get, and its moves. */
export function RecorderPlan({
  recorder,
  isMain,
  plan,
  isLooking,
  isStale = false,
  children,
}: RecorderPlanProps) {
  const day = useDay().day.value;
  const name = recorderName(day, recorder);
  return (
    <section aria-label={name}>
      <h2 class="section-title">
        {name} <span class="soft">{isMain ? 'main recorder' : 'backup recorder'}</span>
      </h2>
      <div class="section" aria-busy={isStale}>
        <p>{plan ? <strong>{costWords(plan)}</strong> : WORKING}</p>
        {plan && (
          <p class="soft" role="status">
            {isStale ? WORKING : proofWords(plan, isLooking)}
          </p>
        )}
      </div>
      {plan && plan.leftOut.length > 0 && (
        <ul class="rows">
          <LeftOutRows day={day} plan={plan} word={<strong>not on {name}</strong>} />
        </ul>
      )}
      {children}
    </section>
  );
}
