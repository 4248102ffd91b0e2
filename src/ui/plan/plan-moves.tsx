import type { Day } from '../../day/model.ts';
import { tickableOf } from '../../plan/day/plan-facts.ts';
import type { Move } from '../../plan/moves.ts';
import { CheckRow } from '../kit/check-row.tsx';
import { useTick } from './use-tick.ts';
import { moveWords, reasonWords } from './words.ts';

interface MoveListProps {
  readonly day: Day;
  readonly label: string;
  /** How many moves come before these. */
  readonly after?: number;
  readonly moves: readonly Move[];
  /** The moves answer an earlier question; new ones are being computed. */
  readonly isStale: boolean;
}

/** The moves in working order, to be ticked off one by one by whoever does them. */
export function MoveList({ day, label, after = 0, moves, isStale }: MoveListProps) {
  const tick = useTick();
  if (moves.length === 0) return null;
  return (
    <ol class="rows" aria-label={label} aria-busy={isStale}>
      {moves.map((move, at) => (
        <li key={JSON.stringify(move)}>
          <CheckRow
            number={after + at + 1}
            title={moveWords(day, move)}
            isStale={isStale}
            {...tick(tickableOf(move), reasonWords(day, move))}
          />
        </li>
      ))}
    </ol>
  );
}
