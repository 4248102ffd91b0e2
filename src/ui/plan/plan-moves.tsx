import type { Day } from '../../day/model.ts';
import type { Move } from '../../plan/moves.ts';
import { moveWords, reasonWords } from './words.ts';

interface MoveListProps {
  readonly day: Day;
  readonly moves: readonly Move[];
  readonly isTicked: (move: Move) => boolean;
  readonly onTick: (move: Move) => void;
  /** The moves answer an earlier question; new ones are being computed. */
  readonly isStale: boolean;
}

/** The moves in working order, to be ticked off one by one. */
export function MoveList({ day, moves, isTicked, onTick, isStale }: MoveListProps) {
  if (moves.length === 0) return null;
  return (
    <ol class="rows" aria-label="Moves, in their order" aria-busy={isStale}>
      {moves.map((move, at) => (
        <li key={JSON.stringify(move)}>
          <label class="row plan-move">
            <span class="row-lead">
              <input
                type="checkbox"
                checked={isTicked(move)}
                disabled={isStale}
                onChange={() => onTick(move)}
              />
              <span class="row-number">{at + 1}</span>
            </span>
            <span class="row-text">
              <strong>{moveWords(day, move)}</strong>
              <span class="soft">{reasonWords(day, move)}</span>
            </span>
          </label>
        </li>
      ))}
    </ol>
  );
}
