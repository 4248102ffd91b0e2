import { useMemo } from 'preact/hooks';
import type { Day, FactId, LineItem, Take } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { isOpen } from '../../day/takes.ts';
import { formatLength, formatTimecode } from '../../time/timecode.ts';
import { factWords } from '../words/facts.ts';
import { statusWords } from '../words/takes.ts';
import { clockTime } from '../words/times.ts';

interface LineRowProps {
  readonly day: Day;
  readonly item: LineItem;
  readonly onOpen: (id: FactId) => void;
}

/**
 * One thing on the line: a square for a take, a ring for a circled one, a diamond for a change. Most of what is said
 * leaves nearly all rows of a long line as they are.
 */
export function LineRow({ day, item, onOpen }: LineRowProps) {
  const { fact, takenBack } = item;
  const take = day.takes.get(fact.id);
  const placed = fact.before && day.takes.get(fact.before);
  const placedBefore = placed ? takeText(placed) : '';
  return useMemo(() => {
    const at = take?.start
      ? formatTimecode(take.start.frames, take.start.rate).slice(0, 8)
      : clockTime(fact.at, fact.zone);
    return (
      <button type="button" class="line-row" data-back={takenBack} onClick={() => onOpen(fact.id)}>
        <span class="mono line-time">{at}</span>
        <svg width="18" height="48" viewBox="0 0 18 48" aria-hidden="true" class="line-mark">
          <path d="M9-60v168" stroke="currentColor" stroke-width="1.6" />
          <Sign take={take} />
        </svg>
        <span class="row-text">
          {take ? <TakeLine take={take} /> : <strong class="line-change">{factWords(day, fact)}</strong>}
          <span class="soft">{under(item, take, placedBefore)}</span>
        </span>
      </button>
    );
    // The names of voices and parts are of the cast and the rig that the answers are of.
  }, [fact, takenBack, take, placedBefore, day.memory.answersOf]);
}

function Sign({ take }: { take: Take | undefined }) {
  const paint = { fill: 'var(--paper)', stroke: 'currentColor', 'stroke-width': '2' };
  if (!take) return <path d="M9 18l6 6-6 6-6-6z" fill="currentColor" />;
  if (take.circled) return <circle cx="9" cy="24" r="6.5" {...paint} />;
  return <path d="M3.5 18.5h11v11h-11z" {...paint} />;
}

function TakeLine({ take }: { take: Take }) {
  const length = take.length ? formatLength(take.length.frames, take.length.rate) : '';
  return (
    <strong>
      <span class={take.circled ? 'circled' : undefined}>{takeText(take)}</span>
      {length && ` · ${length}`}
    </strong>
  );
}

function under({ fact, takenBack }: LineItem, take: Take | undefined, placedBefore: string): string {
  const words = [
    takenBack ? 'taken back' : '',
    take && isOpen(take) ? 'rolling' : '',
    ...(take ? statusWords(take) : []),
    ...(take?.notes.map(({ text }) => text) ?? []),
    placedBefore ? `placed before ${placedBefore}, said at ${clockTime(fact.at, fact.zone)}` : '',
  ];
  return words.filter((word) => word !== '').join(' · ');
}
