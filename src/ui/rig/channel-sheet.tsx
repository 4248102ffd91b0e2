import { useState } from 'preact/hooks';
import { tuneChannel } from '../../app/commands/chain.ts';
import { addOutput, freeNames } from '../../app/commands/rig.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { tunedTo, wornBy } from '../../day/chain/links.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf, partName } from '../words/chain.ts';
import { OutputKindChoice, OutputLead } from './output-lead.tsx';
import { Picker } from './picker.tsx';
import { KeptFor, type PartSheetProps, WholeDay } from './whole-day.tsx';
import { channelsOn } from './words.ts';

/** One receiver channel: the pack it is tuned to, and the outputs that carry it. */
export function ChannelSheet({ part, onClose }: PartSheetProps) {
  const store = useDay();
  const day = store.day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const outputs = day.rig.outputs.filter(({ carries }) => carries?.includes(part.id));
  const another = (): void => {
    const name = freeNames(day, 'output', `${part.name} out`, 1)[0]!;
    const spec = { name, kind: 'analogue', channel: part.id } as const;
    run(addOutput(part.receiver ?? '', spec, store.newId()), `${name} added`);
  };
  return (
    <Sheet
      title={part.name}
      under={[...new Set([partName(day.rig, part.receiver), part.module])].filter(Boolean).join(', ')}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <Tuning part={part} before={before} />
      {outputs.map((output) => (
        <OutputLead key={output.id} output={output} before={before} />
      ))}
      <WholeDay part={part} onClose={onClose}>
        {outputs.map((output) => (
          <div key={output.id}>
            <OutputKindChoice output={output} />
            <KeptFor part={output} label={`${output.name} is kept for`} />
          </div>
        ))}
        <Button class="rig-more" onClick={another}>
          {outputs.length > 0 ? 'Add another output' : 'Add an output'}
        </Button>
      </WholeDay>
    </Sheet>
  );
}

function Tuning({ part, before }: { part: PartSheetProps['part']; before: string | undefined }) {
  const day = useDay().day.value;
  const run = useRun();
  const { links } = answersBefore(day, before);
  const found = tunedTo(links, part.id)?.value ?? null;
  const tuned = found && day.rig.byId.has(found) ? found : null;
  const onIt = (pack: string): string | undefined => {
    const channels = channelsOn(day.rig, links, pack).filter(({ id }) => id !== part.id);
    return channels.length > 0 ? `also on ${channels.map(({ name }) => name).join(', ')}` : undefined;
  };
  const wearer = tuned ? wornBy(links, tuned)?.value : null;
  return (
    <Picker
      label="Tuned to"
      now={
        tuned
          ? [partName(day.rig, tuned), wearer && nameOf(day, wearer)].filter(Boolean).join(', ')
          : 'nothing'
      }
      options={[
        ...day.rig.transmitters.map(({ id, name }) => ({ id, name, word: onIt(id) })),
        { id: 'nothing', name: 'nothing' },
      ]}
      current={tuned ?? 'nothing'}
      onPick={(pack) =>
        run(
          tuneChannel(part.id, pack === 'nothing' ? null : pack, { before }),
          `${part.name} tuned to ${pack === 'nothing' ? 'nothing' : partName(day.rig, pack)}`,
        )
      }
    />
  );
}
