import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import type { Day, FactId, LineItem, Take } from '../../day/model.ts';
import { isJoined } from '../../day/phones/one-take.ts';
import { takeText } from '../../day/slate.ts';
import { isOpen } from '../../day/takes.ts';
import type { LateOnLine } from '../../day/wrap/since-closing.ts';
import { formatLength } from '../../time/length.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { useDatabase } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { lateWords } from '../words/closing.ts';
import { factWords } from '../words/facts.ts';
import { otherHolder } from '../words/phones.ts';
import { statusWords } from '../words/takes.ts';
import { clockTime } from '../words/times.ts';

interface EntryProps {
  readonly day: Day;
  readonly item: LineItem;
  /** What it is late for, if the day was wrapped or a report went out. */
  readonly late: LateOnLine | undefined;
  readonly onOpen: (id: FactId) => void;
}

/** One entry of the line. Memoised: most changes leave most of a long line as it is. */
export function LineEntry({ day, item, late, onOpen }: EntryProps) {
  const take = day.takes.get(item.fact.id);
  const placed = item.fact.before && day.takes.get(item.fact.before);
  const placedBefore = placed ? takeText(placed) : '';
  const by = otherHolder(day, item.fact.id, useDatabase());
  const backWords = isJoined(day, item) ? 'logged on two phones, one take' : item.takenBack ? 'removed' : '';
  const lateFor = late ? lateWords(late) : '';
  return useMemo(
    () => (
      <li data-item={item.fact.id}>
        <LineRow
          item={item}
          take={take}
          title={take ? <TakeLine take={take} /> : factWords(day, item.fact)}
          backWords={backWords}
          placedBefore={placedBefore}
          by={by}
          lateFor={lateFor}
          onTap={() => onOpen(item.fact.id)}
        />
      </li>
    ),
    // Names of voices and parts come from the cast and rig, which `answersOf` changes with.
    [item, take, backWords, placedBefore, by, lateFor, day.memory.answersOf, onOpen],
  );
}

interface LineRowProps {
  readonly item: LineItem;
  readonly take: Take | undefined;
  readonly title: ComponentChildren;
  /** Why it counts no more; empty if it does. */
  readonly backWords: string;
  readonly placedBefore: string;
  /** Who made it on another phone; empty for one's own. */
  readonly by: string;
  readonly lateFor: string;
  readonly onTap: () => void;
}

/** A square for a take, a ring for a circled one, a diamond for a change. */
function LineRow({ item, take, title, backWords, placedBefore, by, lateFor, onTap }: LineRowProps) {
  const { fact, takenBack } = item;
  const at = take?.start
    ? formatTimecode(take.start.frames, take.start.rate).slice(0, 8)
    : clockTime(fact.at, fact.zone);
  return (
    <Button look="bare" class="line-row" data-back={takenBack} onClick={onTap}>
      <span class="mono line-time">{at}</span>
      <svg width="18" height="48" viewBox="0 0 18 48" aria-hidden="true" class="line-mark">
        <path d="M9-60v168" stroke="currentColor" stroke-width="1.6" />
        <Sign take={take} />
      </svg>
      <span class="row-text">
        <strong class={take ? undefined : 'line-change'}>{title}</strong>
        <span class="soft">
          {[backWords, ...under(item, take, placedBefore), by, lateFor]
            .filter((word) => word !== '')
            .join(' · ')}
        </span>
      </span>
    </Button>
  );
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
    <>
      <span class={take.circled ? 'circled' : undefined}>{takeText(take)}</span>
      {length && ` · ${length}`}
    </>
  );
}

function under({ fact }: LineItem, take: Take | undefined, placedBefore: string): string[] {
  return [
    take && isOpen(take) ? 'rolling' : '',
    ...(take ? statusWords(take) : []),
    ...(take?.notes.map(({ text }) => text) ?? []),
    placedBefore ? `placed before ${placedBefore}, entered at ${clockTime(fact.at, fact.zone)}` : '',
  ];
}
