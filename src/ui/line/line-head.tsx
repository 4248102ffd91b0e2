import { slatesOnLine } from '../../day/answers/found-on-line.ts';
import type { TakeId } from '../../day/model.ts';
import { slateText } from '../../day/slate.ts';
import { useDay } from '../frame/context.ts';
import { countOf } from '../words/chain.ts';

interface LineHeadProps {
  /** How many entries match the search. */
  readonly found: number;
  readonly wanted: string;
  readonly onWanted: (typed: string) => void;
  readonly onJump: (take: TakeId) => void;
}

/** The line's length, a jump to a slate, and a search over takes, notes and names. */
export function LineHead({ found, wanted, onWanted, onJump }: LineHeadProps) {
  const day = useDay().day.value;
  const takes = day.takeOrder.length;
  const count =
    wanted.trim() === ''
      ? `${countOf(takes, 'take')}, ${countOf(day.line.length - takes, 'change')}`
      : `${found} found`;
  return (
    <div class="line-head" role="search">
      <p class="soft" role="status">
        {count}
      </p>
      {takes > 0 && (
        <label>
          <span class="unseen">Go to a slate</span>
          <select
            value=""
            onChange={(event) => {
              onJump(event.currentTarget.value);
              event.currentTarget.value = '';
            }}
          >
            <option value="">slate</option>
            {slatesOnLine(day).map(({ slate, take }) => (
              <option key={take} value={take}>
                {slateText(slate)}
              </option>
            ))}
          </select>
        </label>
      )}
      <label>
        <span class="unseen">Find takes, notes and names</span>
        <input
          type="search"
          placeholder="find"
          value={wanted}
          onInput={(event) => onWanted(event.currentTarget.value)}
        />
      </label>
    </div>
  );
}
