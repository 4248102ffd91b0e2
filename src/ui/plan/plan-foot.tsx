import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';

interface PlanFootProps {
  /** How many moves there are to accept; undefined while a question is unanswered. */
  readonly moves: number | undefined;
  readonly ticked: number;
  /** What a better plan has over the one shown. */
  readonly better: string | undefined;
  readonly onAcceptTicked: () => void;
  readonly onAcceptAll: () => void;
  readonly onShowBetter: () => void;
}

/** The Accept button. A better plan is offered there too, so that nothing moves under the finger. */
export function PlanFoot({
  moves,
  ticked,
  better,
  onAcceptTicked,
  onAcceptAll,
  onShowBetter,
}: PlanFootProps) {
  return (
    <div class="plan-foot">
      {moves !== undefined && better && (
        <div class="plan-better" role="status">
          <p>{better}</p>
          <Button onClick={onShowBetter}>Show it</Button>
        </div>
      )}
      <Button disabled={ticked === 0 || ticked === moves} onClick={onAcceptTicked}>
        {ticked > 0 ? `Apply ${ticked} ticked` : 'Apply ticked'}
      </Button>
      <Button look="solid" disabled={moves === undefined} onClick={onAcceptAll}>
        {moves ? `Apply ${countOf(moves, 'move')}` : 'Apply'}
      </Button>
    </div>
  );
}
