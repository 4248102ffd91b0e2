import { useState } from 'preact/hooks';
import { sendInput } from '../../app/commands/chain.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { Toggles } from '../kit/toggles.tsx';
import { ofRecorder } from '../words/recorder-names.ts';
import { PartChoice, type PartSheetProps, WholeDay } from './whole-day.tsx';

/** One track of a recorder: its inputs, whether it is a mix, and where it is tapped in the strip. */
export function TrackPartSheet({ part, onClose }: PartSheetProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const { inputs, tracks } = answersBefore(day, before);
  const fed = inputs.filter(({ reach }) => reach.tracks.includes(part.id)).map(({ input }) => input.id);
  const name = tracks.find(({ track }) => track.id === part.id)?.name;
  const feed = (next: readonly string[]): void => {
    const changed = inputs.find(({ input }) => next.includes(input.id) !== fed.includes(input.id));
    if (!changed) return;
    const { input, reach } = changed;
    const onto = next.includes(input.id)
      ? [...reach.tracks, part.id]
      : reach.tracks.filter((id) => id !== part.id);
    const done = `${input.name} ${next.includes(input.id) ? 'feeds' : 'no longer feeds'} track ${part.name}`;
    const standing = onto.filter((id) => day.rig.byId.has(id));
    run(sendInput(input.id, standing, { before }), done);
  };
  return (
    <Sheet
      title={part.mix ? part.name : `Track ${part.name}`}
      under={[ofRecorder(day, part), part.mix ? 'every input' : name || 'nobody on it']
        .filter(Boolean)
        .join(' · ')}
      onClose={onClose}
      foot={part.mix ? undefined : <FromWhen before={before} onPlace={setBefore} />}
    >
      {!part.mix && (
        <div class="section">
          <Toggles
            none="None in the rig yet."
            label="Fed by inputs"
            options={ownPartsOf(day.rig, recorderOfPart(part)).inputs}
            on={fed}
            onChange={feed}
          />
        </div>
      )}
      <WholeDay part={part} onClose={onClose}>
        <PartChoice
          part={part}
          label="Kind"
          value={part.mix ? 'mix' : 'iso'}
          options={[
            { value: 'iso', name: 'iso' },
            { value: 'mix', name: 'mix' },
          ]}
          fields={(value) => ({ mix: value === 'mix' })}
        />
        <PartChoice
          part={part}
          label="Feed"
          value={part.tap ?? 'pre'}
          options={[
            { value: 'pre', name: 'pre-fader' },
            { value: 'post', name: 'post-fader' },
          ]}
          fields={(tap) => ({ tap })}
        />
      </WholeDay>
    </Sheet>
  );
}
