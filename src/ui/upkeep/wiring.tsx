import { useEffect, useState } from 'preact/hooks';
import type { OutgoingFile } from '../../app/sharing.ts';
import { type DayLead, leadsOfDay } from '../../upkeep/wiring/day-wiring.ts';
import { UNCONNECTED_PIN } from '../../upkeep/wiring/snake-pins.ts';
import { inputName, type WiringRow, wiringSheet } from '../../upkeep/wiring/wiring-sheet.ts';
import { useDay } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { sentenceFor } from '../words/problems.ts';
import { BoxDrawing, SpareInputs } from './box-drawing.tsx';
import { boxLeads, spareInputs } from './box-leads.ts';
import { LeadSheet } from './lead-sheet.tsx';
import { WiringListeners } from './wiring-listeners.tsx';
import { listenerNotes, sendPages, wiringAsSheet, wiringPages } from './wiring-pages.ts';

const SNAKE_NOTE = `Snakes: 25-pin D-sub as AES59, pin ${UNCONNECTED_PIN} not connected. XLR: 1 screen, 2 plus, 3 minus (AES14).`;

/** Which output goes by which lead to which input, pin by pin for a snake: to print and tape into the lid. */
export function Wiring({ onBack }: { onBack: () => void }) {
  const day = useDay().day.value;
  const [open, setOpen] = useState<string | null>(null);
  const leads = leadsOfDay(day);
  const sheet = wiringSheet(leads);
  const lines = sheet.rows.map((row, at) => ({ id: leads[at]!.id, row }));
  const recorders = new Set(lines.map(({ row }) => row.recorder));
  const { production, label, date } = day.header;
  const [pages, setPages] = useState<OutgoingFile | null>(null);
  const hasSnake = leads.some(({ ends }) => ends.kind === 'snake');
  // Made before the tap: the share sheet only opens straight from one.
  useEffect(() => {
    const stop = new AbortController();
    const notes = [...listenerNotes(day), ...(hasSnake ? [SNAKE_NOTE] : [])];
    const printed = wiringAsSheet(day, wiringSheet(leadsOfDay(day)).rows, notes);
    void wiringPages(day, printed, stop.signal).then((made) => {
      if (stop.signal.aborted) return;
      if (made.ok) setPages(made.value);
      else complain(made.problem);
    });
    return () => stop.abort();
  }, [day, hasSnake]);
  return (
    <div class="wiring">
      <div class="wiring-top">
        <h1>Wiring sheet</h1>
        <p class="soft">{[production, label, date].filter(Boolean).join(' · ')}</p>
        <div class="buttons no-print">
          <Button onClick={onBack}>Back</Button>
          <Button onClick={() => print()}>Print</Button>
          <Button look="solid" disabled={!pages} onClick={() => pages && void sendPages(pages)}>
            As pages (PDF)
          </Button>
        </div>
      </div>
      {leads.length === 0 && <p class="section">No lead reaches an input yet. Plug them under Rig.</p>}
      {sheet.problems.map((problem, at) => (
        <p key={at} class="problem">
          {sentenceFor(problem)}
        </p>
      ))}
      <div class="no-print">
        {boxLeads(day, leads).map((box) => (
          <BoxDrawing key={box.receiver.id} box={box} />
        ))}
        <SpareInputs inputs={spareInputs(day)} />
      </div>
      {[...recorders].map((recorder) => (
        <WiringTable
          key={recorder?.id}
          recorder={recorder}
          lines={lines.filter(({ row }) => row.recorder === recorder)}
          onOpen={setOpen}
        />
      ))}
      <WiringListeners day={day} />
      {hasSnake && <p class="section soft">{SNAKE_NOTE}</p>}
      <Cautions of={['snake']} />
      {open && (
        <LeadSheet
          lead={leads.find(({ id }) => id === open) as DayLead}
          leads={leads}
          onClose={() => setOpen(null)}
        />
      )}
    </div>
  );
}

interface Line {
  readonly id: string;
  readonly row: WiringRow;
}

interface TableProps {
  /** Missing where only one recorder has inputs. */
  readonly recorder: WiringRow['recorder'];
  readonly lines: readonly Line[];
  readonly onOpen: (lead: string) => void;
}

const WiringTable = ({ recorder, lines, onOpen }: TableProps) => (
  <table class="sheet-table">
    {recorder && <caption>Into {recorder.name}</caption>}
    <thead>
      <tr>
        <th scope="col">Output</th>
        <th scope="col">Lead</th>
        <th scope="col">Pins + − screen</th>
        <th scope="col">Input</th>
        <th scope="col">Selector</th>
      </tr>
    </thead>
    <tbody>
      {lines.map(({ id, row }) => (
        <WiringLine key={id} row={row} onOpen={() => onOpen(id)} />
      ))}
    </tbody>
  </table>
);

function WiringLine({ row, onOpen }: { row: WiringRow; onOpen: () => void }) {
  const { output, lead, circuit, pins, words, input, recorder, selector } = row;
  return (
    <tr>
      <th scope="row">
        <Button
          look="bare"
          class="wiring-open"
          onClick={onOpen}
          label={`Lead from ${output} to ${inputName({ input, recorder })}`}
        >
          {output}
        </Button>
      </th>
      <td data-name="lead">
        {lead}
        {circuit && `, snake ${circuit}`}
      </td>
      <td data-name="pins">{pins ? `${pins.plus} · ${pins.minus} · ${pins.screen}` : words}</td>
      <td data-name="to">{input}</td>
      <td data-name="selector">{selector && `${selector.name} at ${selector.position}`}</td>
    </tr>
  );
}
