import '../words/later-problems.ts';
import { useState } from 'preact/hooks';
import { clockRemarks } from '../../day/clock-remarks.ts';
import type { Day, LineItem } from '../../day/model.ts';
import { slateText, takeText } from '../../day/slate.ts';
import { useDay } from '../context.ts';
import { LineRow } from '../parts/line-row.tsx';
import { Page } from '../parts/page.tsx';
import { complain, tell } from '../saying.ts';
import { ChangeSheet } from '../sheets/change-sheet.tsx';
import { TakeSheet } from '../sheets/take-sheet.tsx';
import { countOf } from '../words/chain.ts';
import { clockWords } from '../words/clock.ts';
import { factWords } from '../words/facts.ts';

/** How many items are shown before somebody asks for more: enough for hours, light enough for an old phone. */
const SHOWN = 120;

/** The day as a line, newest first: takes, and the changes between them. */
export function Line() {
  const store = useDay();
  const day = store.day.value;
  const [open, setOpen] = useState<string | null>(null);
  const [wanted, setWanted] = useState('');
  const [shown, setShown] = useState(SHOWN);
  const found = day.line.filter((item) => matches(day, item, wanted)).reverse();
  const takes = day.line.filter(({ fact, takenBack }) => fact.kind === 'take-logged' && !takenBack).length;
  const opened = open === null ? undefined : day.line[day.placeOf.get(open) ?? -1];
  return (
    <Page
      tab="line"
      foot={
        <div class="line-foot">
          <UndoButton kind="undo" />
          <UndoButton kind="redo" />
        </div>
      }
    >
      <h1 class="unseen">Line</h1>
      <div class="line-head">
        <p class="soft">
          {countOf(takes, 'take')}, {countOf(day.line.length - takes, 'change')}
        </p>
        <label>
          <span class="unseen">Find on the line</span>
          <input
            type="search"
            placeholder="find"
            value={wanted}
            onInput={(event) => setWanted(event.currentTarget.value)}
          />
        </label>
      </div>
      <ClockLine day={day} />
      {day.line.length === 0 && <p class="section">Takes and changes appear here as they are said.</p>}
      {day.line.length > 0 && found.length === 0 && <p class="section">Nothing on the line matches.</p>}
      <ol class="line">
        {found.slice(0, shown).map((item) => (
          <li key={item.fact.id}>
            <LineRow day={day} item={item} onTap={() => setOpen(item.fact.id)} />
          </li>
        ))}
      </ol>
      {found.length > shown && (
        <p class="section">
          <button type="button" class="button" onClick={() => setShown(shown + SHOWN)}>
            {countOf(found.length - shown, 'earlier entry', 'earlier entries')}
          </button>
        </p>
      )}
      {opened?.fact.kind === 'take-logged' && <TakeSheet item={opened} onClose={() => setOpen(null)} />}
      {opened && opened.fact.kind !== 'take-logged' && (
        <ChangeSheet item={opened} onClose={() => setOpen(null)} />
      )}
    </Page>
  );
}

/** What happened to the phone's clock last, and how often before: times around it do not fit together. */
function ClockLine({ day }: { day: Day }) {
  const remarks = clockRemarks(day);
  const last = remarks.at(-1);
  if (!last) return null;
  return (
    <p class="section soft">
      {clockWords(day, last)}
      {remarks.length > 1 && `, and ${countOf(remarks.length - 1, 'such change')} before`}
    </p>
  );
}

/** Slate, take, notes and names: whatever the line shows can be found by. */
function matches(day: Day, { fact }: LineItem, wanted: string): boolean {
  const text = wanted.trim().toLowerCase();
  if (text === '') return true;
  const take = fact.kind === 'take-logged' ? day.takes.get(fact.id) : undefined;
  const words = take
    ? [takeText(take), slateText(take.slate), ...take.notes.map((note) => note.text)]
    : [factWords(day, fact)];
  return words.some((word) => word.toLowerCase().includes(text));
}

function UndoButton({ kind }: { kind: 'undo' | 'redo' }) {
  const store = useDay();
  const can = kind === 'undo' ? store.canUndo.value : store.canRedo.value;
  const run = (): void => {
    const result = store[kind]();
    if (result.ok) tell(kind === 'undo' ? 'Undone' : 'Done again');
    else complain(result.problem);
  };
  return (
    <button type="button" class="button" disabled={!can} onClick={run}>
      {kind === 'undo' ? 'Undo the last' : 'Redo'}
    </button>
  );
}
