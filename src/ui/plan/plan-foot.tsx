import type { Plan } from '../../plan/setup/plan-next-setup.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { betterWords } from './words.ts';

interface PlanFootProps {
  /** The plan to accept; undefined while a question is unanswered. */
  readonly plan: Plan | undefined;
  readonly ticked: number;
  readonly better: Plan | undefined;
  readonly onAcceptTicked: () => void;
  readonly onAcceptAll: () => void;
  readonly onShowBetter: () => void;
}

/** The Accept button. A better plan is offered there too, so that nothing moves under the finger. */
export function PlanFoot({ plan, ticked, better, onAcceptTicked, onAcceptAll, onShowBetter }: PlanFootProps) {
  const moves = plan?.moves.length ?? 0;
  return (
    <div class="plan-foot">
      {plan && better && (
        <div class="plan-better" role="status">
          <p>{betterWords(better, plan)}</p>
          <Button onClick={onShowBetter}>Show it</Button>
        </div>
      )}
      <Button disabled={ticked === 0 || ticked === moves} onClick={onAcceptTicked}>
        {ticked > 0 ? `Apply ${ticked} ticked` : 'Apply ticked'}
      </Button>
      <Button look="solid" disabled={!plan} onClick={onAcceptAll}>
        {moves > 0 ? `Apply ${countOf(moves, 'move')}` : 'Apply'}
      </Button>
    </div>
  );
}
