import type { Day } from '../../day/model.ts';
import type { Move } from '../../plan/moves.ts';
import { moveWords, reasonWords } from './words.ts';

interface MoveListProps {
  readonly day: Day;
  readonly label: string;
  /** How many moves come before these. */
  readonly after?: number;
  readonly moves: readonly Move[];
  readonly isTicked: (move: Move) => boolean;
  readonly onTick: (move: Move) => void;
  /** The moves answer an earlier question; new ones are being computed. */
  readonly isStale: boolean;
}

/** The moves in working order, to be ticked off one by one. */
export function MoveList({ day, label, after = 0, moves, isTicked, onTick, isStale }: MoveListProps) {
  if (moves.length === 0) return null;
  return (
    <ol class="rows" aria-label={label} aria-busy={isStale}>
      {moves.map((move, at) => (
        <li key={JSON.stringify(move)}>
          <CheckRow
            number={after + at + 1}
            title={moveWords(day, move)}
            under={reasonWords(day, move)}
            isTicked={isTicked(move)}
            isStale={isStale}
            onTick={() => onTick(move)}
          />
        </li>
      ))}
    </ol>
  );
}

interface CheckRowProps {
  readonly number: number;
  readonly title: string;
  readonly under?: string;
  readonly isTicked: boolean;
  readonly isStale?: boolean;
  readonly onTick: () => void;
}

/** One thing to do, ticked off when it is done. */
export const CheckRow = ({ number, title, under, isTicked, isStale = false, onTick }: CheckRowProps) => (
  <label class="row plan-move">
    <span class="row-lead">
      <input type="checkbox" checked={isTicked} disabled={isStale} onChange={onTick} />
      <span class="row-number">{number}</span>
    </span>
    <span class="row-text">
      <strong>{title}</strong>
      {under && <span class="soft">{under}</span>}
    </span>
  </label>
);
