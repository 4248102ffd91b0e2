import { useState } from 'preact/hooks';
import { plugRun, sendInput, setMute, throwSelectors } from '../../app/commands/chain.ts';
import { answersBefore } from '../../day/answers/answers.ts';
import type { Reach } from '../../day/chain/reach.ts';
import { INPUT_KINDS, type PartId, SELECTOR_POSITIONS, type SelectorPosition } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Because } from '../frame/sheets/because.tsx';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { Toggles } from '../kit/toggles.tsx';
import { partName } from '../words/chain.ts';
import { INPUT_KIND_WORD } from '../words/connectors.ts';
import { positionName, sourceName } from '../words/facts.ts';
import { ofRecorder } from '../words/recorder-names.ts';
import { leadOptions } from './lead-options.ts';
import { Picker } from './picker.tsx';
import { KeptFor, PartChoice, type PartSheetProps, WholeDay } from './whole-day.tsx';
import { arrivalWords, inputStateWords, inputWords } from './words.ts';

/** One input: which lead reaches it, at which position, and the tracks it feeds. */
export function InputSheet({ part, onClose }: PartSheetProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [before, setBefore] = useState<string | undefined>(undefined);
  const at = { before };
  const answer = answersBefore(day, at.before).inputs.find(({ input }) => input.id === part.id);
  if (!answer) return null;
  const { reach } = answer;
  const tracks = reach.tracks.filter((id) => day.rig.byId.has(id));
  const send = (next: PartId[]): void => {
    const names = next.map((id) => partName(day.rig, id)).join(', ') || 'no track';
    run(sendInput(part.id, next, at), `${part.name} to ${names}`);
  };
  return (
    <Sheet
      title={part.name}
      under={[ofRecorder(day, part), inputStateWords(answer), inputWords(day, answer)]
        .filter(Boolean)
        .join(' · ')}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      <LeadInto reach={reach} before={before} />
      <div class="section">
        {reach.selector && <SelectorChoice reach={reach} before={before} />}
        <Toggles
          none="None in the rig yet."
          label="Feeds tracks"
          options={ownPartsOf(day.rig, recorderOfPart(part)).tracks.filter(({ mix }) => !mix)}
          on={tracks}
          onChange={send}
        />
        <Button
          pressed={reach.muted}
          onClick={() =>
            run(setMute(part.id, !reach.muted, at), `${part.name} ${reach.muted ? 'unmuted' : 'muted'}`)
          }
        >
          {reach.muted ? 'Unmute' : 'Mute'}
        </Button>
      </div>
      <WholeDay part={part} onClose={onClose}>
        <PartChoice
          part={part}
          label="Kind"
          value={part.inputKind ?? 'mic'}
          options={INPUT_KINDS.map((value) => ({ value, name: INPUT_KIND_WORD[value] }))}
          fields={(inputKind) => ({ inputKind })}
        />
        <KeptFor part={part} />
      </WholeDay>
      <Because because={answer.because} />
    </Sheet>
  );
}

interface ReachProps {
  readonly reach: Reach;
  readonly before: string | undefined;
}

/** The lead into an input, or the two leads of a selector. */
function LeadInto({ reach, before }: ReachProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { input, selector } = reach;
  const positions: readonly SelectorPosition[] = selector ? ['a', 'b'] : ['a'];
  return (
    <>
      {positions.map((position) => {
        const arrival = !selector || selector.position === position ? reach.arrival : reach.away;
        const plug = (from: string): void => {
          const source = from === 'nothing' ? arrival?.from : from;
          if (!source) return;
          const to = from === 'nothing' ? null : input.id;
          const done = to
            ? `${sourceName(day, source)} into ${input.name}`
            : `${sourceName(day, source)} unplugged`;
          run(plugRun([source], [to], position, { before, recorder: recorderOfPart(input) }), done);
        };
        return (
          <Picker
            key={position}
            label={selector ? `At ${positionName(day, selector.part.id, position)}` : 'What reaches it'}
            now={arrivalWords(day, arrival)}
            options={leadOptions(day, before, input, arrival?.from)}
            current={arrival?.from ?? 'nothing'}
            onPick={plug}
          />
        );
      })}
    </>
  );
}

function SelectorChoice({ reach, before }: ReachProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { part, position } = reach.selector!;
  return (
    <Choice
      label={part.name}
      value={position}
      options={SELECTOR_POSITIONS.map((value) => ({ value, name: positionName(day, part.id, value) }))}
      onChoose={(to) =>
        run(throwSelectors([part.id], to, { before }), `${part.name} to ${positionName(day, part.id, to)}`)
      }
    />
  );
}
