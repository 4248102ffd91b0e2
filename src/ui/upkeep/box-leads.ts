import { answersNow } from '../../day/answers/answers.ts';
import type { Day, Part } from '../../day/model.ts';
import type { DayLead } from '../../upkeep/wiring/day-wiring.ts';
import { nameWithRecorder } from '../words/recorder-names.ts';

/** An output of a receiver and, if it is plugged, its lead. */
export interface BoxLine {
  readonly output: Part;
  readonly lead: DayLead | undefined;
}

/** A receiver with its outputs in reading order. */
export interface BoxLeads {
  readonly receiver: Part;
  readonly lines: readonly BoxLine[];
}

/**
 * What is plugged where, receiver by receiver, far boxes first; an output with two leads has two lines.
 * Receivers inside the recorder have no leads and are left out.
 */
export function boxLeads({ rig }: Day, leads: readonly DayLead[]): BoxLeads[] {
  const boxes = rig.receivers.map((receiver) => ({
    receiver,
    lines: rig.outputs
      .filter((output) => output.receiver === receiver.id && output.outputKind !== 'slot')
      .flatMap((output): BoxLine[] => {
        const plugged = leads.filter(({ from }) => from === output.id);
        return plugged.length === 0
          ? [{ output, lead: undefined }]
          : plugged.map((lead) => ({ output, lead }));
      }),
  }));
  const isFar = ({ receiver }: BoxLeads): number => Number(receiver.place === 'remote');
  return boxes.filter(({ lines }) => lines.length > 0).sort((a, b) => isFar(b) - isFar(a));
}

/** The names of the inputs that could take a lead: nothing reaches them, and they are kept for nothing. */
export const spareInputs = (day: Day): readonly string[] =>
  answersNow(day)
    .inputs.filter(({ input, state }) => state === 'free' && input.inputKind !== 'slot')
    .map(({ input }) => nameWithRecorder(day, input.id));
