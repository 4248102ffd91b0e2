import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { isInWords, wordsOfTake } from '../../day/answers/found-on-line.ts';
import type { Day, LineItem } from '../../day/model.ts';
import { clockRemarks } from '../../day/phones/clock-remarks.ts';
import { itemOnLine } from '../../day/takes.ts';
import { lateOnLine } from '../../day/wrap/since-closing.ts';
import { ClosingNoteOfDay } from '../frame/closing/closing-note.tsx';
import { useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { TakeSheet } from '../frame/sheets/take-sheet.tsx';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { factWords } from '../words/facts.ts';
import { ChangeSheet } from './change-sheet.tsx';
import { clockWords, phoneClockWords } from './clock-words.ts';
import { LineHead } from './line-head.tsx';
import { LineEntry } from './line-row.tsx';
import { UndoButtons } from './undo-buttons.tsx';
import './line.css';

/** How many items are shown at first: enough for hours, light enough for an old phone. */
const SHOWN = 120;
/** How many later items to show above the take that was jumped to. */
const ABOVE = 20;

/** The day's line, newest first: takes, and the changes between them. */
export function Line() {
  const store = useDay();
  const day = store.day.value;
  const [open, setOpen] = useState<string | null>(null);
  const [wanted, setWanted] = useState('');
  const [part, setPart] = useState({ from: 0, to: SHOWN });
  const [jump, setJump] = useState<{ readonly to: string } | null>(null);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const row = jump && list.current?.querySelector<HTMLElement>(`[data-item="${jump.to}"] button`);
    row?.scrollIntoView({ block: 'start' });
    row?.focus({ preventScroll: true });
  }, [jump]);
  const opened = open === null ? undefined : itemOnLine(day, open);
  // Opening or closing a sheet leaves the page as it is.
  const shown = useMemo(() => {
    const late = lateOnLine(day);
    const found = day.line.filter((item) => matches(day, item, wanted)).reverse();
    return (
      <>
        <LineHead
          found={found.length}
          wanted={wanted}
          onWanted={(typed) => {
            setWanted(typed);
            setPart({ from: 0, to: SHOWN });
          }}
          onJump={(take) => {
            const at = day.line.length - 1 - (day.takeItems.get(take)?.place ?? 0);
            setWanted('');
            setJump({ to: take });
            setPart({ from: Math.max(0, at - ABOVE), to: at + SHOWN - ABOVE });
          }}
        />
        {day.line.length === 0 && (
          <p class="section">Takes and changes appear here as they happen. Roll, on Now, logs a take.</p>
        )}
        <ClosingNoteOfDay />
        <ClockLine day={day} />
        {day.line.length > 0 && found.length === 0 && <p class="section">Nothing on the line matches.</p>}
        {part.from > 0 && (
          <More
            count={part.from}
            what={['later entry', 'later entries']}
            onMore={() => setPart({ ...part, from: Math.max(0, part.from - SHOWN) })}
          />
        )}
        <ol class="line" ref={list}>
          {found.slice(part.from, part.to).map((item) => (
            <LineEntry
              key={item.fact.id}
              day={day}
              item={item}
              late={late.get(item.fact.id)}
              onOpen={setOpen}
            />
          ))}
        </ol>
        {found.length > part.to && (
          <More
            count={found.length - part.to}
            what={['earlier entry', 'earlier entries']}
            onMore={() => setPart({ ...part, to: part.to + SHOWN })}
          />
        )}
      </>
    );
  }, [day, wanted, part]);
  return (
    <Page
      tab="line"
      foot={
        <div class="line-foot">
          <UndoButtons />
        </div>
      }
    >
      <h1 class="unseen">Line</h1>
      {shown}
      {opened?.fact.kind === 'take-logged' && <TakeSheet item={opened} onClose={() => setOpen(null)} />}
      {opened && opened.fact.kind !== 'take-logged' && (
        <ChangeSheet item={opened} onClose={() => setOpen(null)} />
      )}
    </Page>
  );
}

interface MoreProps {
  readonly count: number;
  readonly what: readonly [one: string, many: string];
  readonly onMore: () => void;
}

function More({ count, what: [one, many], onMore }: MoreProps) {
  return (
    <p class="section">
      <Button onClick={onMore}>{countOf(count, one, many)}</Button>
    </p>
  );
}

/** What last happened to the phone's clock, how often before, and how far other phones' clocks are off. */
function ClockLine({ day }: { day: Day }) {
  const remarks = clockRemarks(day);
  const last = remarks.at(-1);
  const before = remarks.length > 1 ? `, and ${countOf(remarks.length - 1, 'such change')} before` : '';
  const lines = [...(last ? [clockWords(day, last) + before] : []), ...phoneClockWords(day)];
  return lines.map((line) => (
    <p key={line} class="section soft">
      {line}
    </p>
  ));
}

/** Matches a take by slate, notes and names on its tracks; a change by its text. */
function matches(day: Day, { fact }: LineItem, wanted: string): boolean {
  if (wanted.trim() === '') return true;
  const take = fact.kind === 'take-logged' ? day.takes.get(fact.id) : undefined;
  return isInWords(take ? wordsOfTake(day, take) : [factWords(day, fact)], wanted);
}
