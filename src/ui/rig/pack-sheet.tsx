import { useState } from 'preact/hooks';
import { describePart } from '../../app/commands/rig.ts';
import { formatMhz, parseMhzOrNone } from '../../app/commands/typed.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { packReach } from '../../day/answers/pack-reach.ts';
import { wornBy } from '../../day/chain/links.ts';
import type { Part } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { complain } from '../frame/messages.ts';
import { GiveList, PackOff } from '../frame/sheets/give-list.tsx';
import { reachWords } from '../frame/sheets/give-words.ts';
import { Button } from '../kit/button.tsx';
import { TextField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf } from '../words/chain.ts';
import { ofRecorder } from '../words/recorder-names.ts';
import { KeptFor, PartChoice, type PartSheetProps, WholeDay } from './whole-day.tsx';
import { reservedWord } from './words.ts';

const WEARS = [
  { value: 'pack', name: 'pack' },
  { value: 'plug-on', name: 'plug-on' },
  { value: 'handheld', name: 'handheld' },
] as const;

/** One transmitter: who wears it, its frequency, and who gets it next. */
export function PackSheet({ part, onClose }: PartSheetProps) {
  const day = useDay().day.value;
  const [before, setBefore] = useState<string | undefined>(undefined);
  const answers = answersBefore(day, before);
  const wearer = wornBy(answers.links, part.id)?.value ?? null;
  return (
    <Sheet
      title={`${part.name} is on ${nameOf(day, wearer)}`}
      under={[
        part.khz ? `${formatMhz(part.khz)} MHz` : '',
        reachWords(day, packReach(day.rig, answers)(part.id)),
      ]
        .filter(Boolean)
        .join(' · ')}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      {day.voices.size > 0 ? (
        <>
          {wearer !== null && (
            <div class="first-things">
              <PackOff transmitter={part.id} before={before} onDone={onClose} />
            </div>
          )}
          <GiveList transmitter={part.id} before={before} onDone={onClose} />
        </>
      ) : (
        <p class="section soft">Nobody in the cast yet. Add performers under Cast.</p>
      )}
      <WholeDay part={part} onClose={onClose}>
        <FrequencyForm part={part} />
        <PartChoice
          part={part}
          label="Kind"
          value={part.wear ?? 'pack'}
          options={WEARS}
          fields={(wear) => ({ wear })}
        />
      </WholeDay>
    </Sheet>
  );
}

function FrequencyForm({ part }: { part: Part }) {
  const run = useRun();
  const known = part.khz ? formatMhz(part.khz) : '';
  const [typed, setTyped] = useState(known);
  const save = (event: Event): void => {
    event.preventDefault();
    const read = parseMhzOrNone(typed);
    if (!read.ok) {
      complain(read.problem);
      return;
    }
    const done = read.value ? `${part.name} on ${formatMhz(read.value)} MHz` : 'No frequency';
    run(describePart(part.id, { khz: read.value }), done);
  };
  return (
    <form class="name-form" onSubmit={save}>
      <TextField label="Frequency in MHz" value={typed} onInput={setTyped} inputMode="decimal" />
      <Button type="submit" disabled={typed.trim() === known}>
        Save
      </Button>
    </form>
  );
}

export function SendSheet({ part, onClose }: PartSheetProps) {
  const day = useDay().day.value;
  const use = part.reserved ? reservedWord(part.reserved) : 'for anything';
  return (
    <Sheet
      title={part.name}
      under={[ofRecorder(day, part), use].filter(Boolean).join(' · ')}
      onClose={onClose}
    >
      <WholeDay part={part} onClose={onClose}>
        <KeptFor part={part} />
      </WholeDay>
    </Sheet>
  );
}
