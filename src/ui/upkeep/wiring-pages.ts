import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { listenersOf } from '../../day/answers/listeners.ts';
import { safeName } from '../../day/files/safe-name.ts';
import type { Day } from '../../day/model.ts';
import type { PrintedSheet } from '../../report/pdf/sheet-pdf.ts';
import { ok, type Result } from '../../shared/result.ts';
import { inputName, type WiringRow } from '../../upkeep/wiring/wiring-sheet.ts';
import { complain, tell } from '../frame/messages.ts';
import { device } from '../frame/sending/device.ts';
import { writePages } from '../frame/sending/pages.ts';
import { wrapSettings } from '../frame/sending/settings.ts';
import { listenerLine } from '../words/listeners.ts';

const COLUMNS = [
  { title: 'Output', share: 3 },
  { title: 'Lead', share: 4 },
  { title: 'Pins + − screen', share: 3 },
  { title: 'Input', share: 2 },
  { title: 'Selector', share: 3 },
] as const;

export function wiringAsSheet(day: Day, rows: readonly WiringRow[], notes: readonly string[]): PrintedSheet {
  const { production, label, date } = day.header;
  return {
    title: 'Wiring sheet',
    under: [production, label, date].filter(Boolean).join(' · '),
    columns: COLUMNS,
    rows: rows.map(({ output, lead, circuit, pins, words, input, recorder, selector }) => [
      output,
      circuit ? `${lead}, snake ${circuit}` : lead,
      pins ? `${pins.plus} · ${pins.minus} · ${pins.screen}` : (words ?? ''),
      inputName({ input, recorder }),
      selector ? `${selector.name} at ${selector.position}` : '',
    ]),
    notes,
    date,
  };
}

/** Who hears what, under the table. */
export function listenerNotes(day: Day): string[] {
  const listeners = listenersOf(day);
  return listeners.length === 0 ? [] : ['Listeners', ...listeners.map(listenerLine)];
}

/** The sheet as a file of pages, made in advance. */
export async function wiringPages(
  day: Day,
  sheet: PrintedSheet,
  stop: AbortSignal,
): Promise<Result<OutgoingFile>> {
  const pages = await writePages({ what: 'sheet', sheet, paper: wrapSettings(day.header).paper }, stop);
  if (!pages.ok) return pages;
  const { production, label } = day.header;
  return ok({
    name: safeName(`${production} ${label} wiring sheet`.trim(), 'pdf'),
    type: 'application/pdf',
    content: pages.value.bytes,
  });
}

export async function sendPages(file: OutgoingFile): Promise<void> {
  const result = await sendFiles(device, routeFor(device, [file]), [file], file.name);
  if (!result.ok) complain(result.problem);
  else if (result.value.sent) tell('Wiring sheet sent');
}
