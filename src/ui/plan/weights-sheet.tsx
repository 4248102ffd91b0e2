import { weighMoves } from '../../app/commands/plan.ts';
import { answersNow } from '../../day/answers/answers.ts';
import { weightsIn } from '../../day/chain/links.ts';
import type { MoveWeights } from '../../day/model.ts';
import { PLAIN_WEIGHTS } from '../../plan/plan-problem.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';

const MOVES: readonly { readonly move: keyof MoveWeights; readonly name: string }[] = [
  { move: 'fit', name: 'fit a pack that nobody wears' },
  { move: 'move', name: 'move a pack between bodies' },
  { move: 'borrow', name: 'borrow one that is wanted back' },
  { move: 'retune', name: 'retune a channel' },
  { move: 'throwSelector', name: 'throw a selector' },
  { move: 'replug', name: 're-plug a lead' },
  { move: 'route', name: 'send an input elsewhere' },
];

/** What each kind of move costs on this rig; the plan prefers the cheaper ones. */
export function WeightsSheet({ onClose }: { onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const weights = { ...PLAIN_WEIGHTS, ...weightsIn(answersNow(day).links)?.value };
  const weigh = (move: keyof MoveWeights, name: string, by: number): void => {
    const weight = Math.min(99, Math.max(1, (weights[move] ?? 1) + by));
    run(weighMoves({ ...weights, [move]: weight }), `${name}: ${weight}`);
  };
  return (
    <Sheet
      title="What to avoid"
      under="The higher the number, the more the plan avoids it. Moving packs always comes last."
      onClose={onClose}
    >
      <ul class="rows">
        {MOVES.map(({ move, name }) => (
          <li key={move} class="plan-weight">
            <span>{name}</span>
            <Button label={`Less: ${name}`} onClick={() => weigh(move, name, -1)}>
              −
            </Button>
            <output class="row-number">{weights[move]}</output>
            <Button label={`More: ${name}`} onClick={() => weigh(move, name, 1)}>
              +
            </Button>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
