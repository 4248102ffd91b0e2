import { useState } from 'preact/hooks';
import { addOutput, freeNames } from '../../app/commands/rig.ts';
import { PLACES } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { countOf } from '../words/chain.ts';
import { OutputKindChoice, OutputLead } from './output-lead.tsx';
import { KeptFor, PartChoice, type PartSheetProps, WholeDay } from './whole-day.tsx';
import { reservedWord } from './words.ts';

export const PLACE_OPTIONS = PLACES.map((value) => ({
  value,
  name: value === 'remote' ? 'remote box' : value,
}));

/** A receiver: its name and place. Removing it removes its channels and outputs too. */
export function ReceiverSheet({ part, onClose }: PartSheetProps) {
  const store = useDay();
  const { rig } = store.day.value;
  const run = useRun();
  const channels = rig.channels.filter(({ receiver }) => receiver === part.id).length;
  const outputs = rig.outputs.filter(({ receiver }) => receiver === part.id).length;
  const spare = (): void => {
    const name = freeNames(store.day.value, 'output', `${part.name} spare`, 1)[0]!;
    const spec = { name, kind: 'analogue', channel: null, reserved: 'comms' } as const;
    run(addOutput(part.id, spec, store.newId()), `${name} kept for comms`);
  };
  return (
    <Sheet
      title={part.name}
      under={`${countOf(channels, 'channel')}, ${countOf(outputs, 'output')}`}
      onClose={onClose}
    >
      <WholeDay part={part} onClose={onClose}>
        <PartChoice
          part={part}
          label="Place"
          value={part.place ?? 'cart'}
          options={PLACE_OPTIONS}
          fields={(place) => ({ place })}
        />
        <Button class="rig-more" onClick={spare}>
          Add an output for comms, playback or timecode
        </Button>
      </WholeDay>
    </Sheet>
  );
}

/** An output that carries no channel: reserved for comms, playback or timecode. */
export function OutputSheet({ part, onClose }: PartSheetProps) {
  const [before, setBefore] = useState<string | undefined>(undefined);
  return (
    <Sheet
      title={part.name}
      under={part.reserved ? reservedWord(part.reserved) : 'carries no channel'}
      onClose={onClose}
      foot={part.reserved ? undefined : <FromWhen before={before} onPlace={setBefore} />}
    >
      {!part.reserved && <OutputLead output={part} before={before} />}
      <WholeDay part={part} onClose={onClose}>
        <OutputKindChoice output={part} />
        <KeptFor part={part} />
      </WholeDay>
    </Sheet>
  );
}
