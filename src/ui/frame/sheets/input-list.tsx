import { plugRun } from '../../../app/commands/chain.ts';
import type { Answers } from '../../../day/answers/answers.ts';
import { inputsToOffer } from '../../../day/answers/inputs-to-offer.ts';
import type { VoiceAnswer } from '../../../day/answers/voice-answers.ts';
import { type PartId, SELECTOR_POSITIONS, type SelectorPosition } from '../../../day/model.ts';
import { recorderOfPart } from '../../../day/recorder-of-part.ts';
import { isOneOf, type Open } from '../../../shared/open-word.ts';
import { Row } from '../../kit/row.tsx';
import { nameOf } from '../../words/chain.ts';
import { nameWithRecorder, recorderName } from '../../words/recorder-names.ts';
import { useDay, useRun } from '../context.ts';

interface InputListProps {
  readonly answers: Answers;
  readonly answer: VoiceAnswer;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Where a hardline's lead goes: free inputs first. */
export function InputList({ answers, answer, before, onDone }: InputListProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { id } = answer.voice;
  const name = nameOf(day, id);
  const leads = answer.paths.filter(({ lead, transmitter }) => lead && !transmitter);
  const pluggedAt = [
    ...new Set(leads.map(({ input }) => recorderOfPart(day.rig.byId.get(input ?? '') ?? {}))),
  ];
  const plug = (to: PartId | null, position: SelectorPosition = 'a', recorder?: PartId): void => {
    const done = to ? `${name} into ${nameWithRecorder(day, to)}` : `${name} unplugged`;
    if (run(plugRun([id], [to], position, { before, recorder }), done)) onDone();
  };
  const offered = inputsToOffer(answers);
  return (
    <>
      <p class="section-title soft">
        {offered.length > 0 ? `Plug ${name} into` : 'No input is free for a lead'}
      </p>
      <ul class="rows">
        {offered.map(({ input, state, reach }) => (
          <li key={input.id}>
            <Row
              title={nameWithRecorder(day, input.id)}
              word={state}
              onTap={() => plug(input.id, readPosition(reach.selector?.position))}
            />
          </li>
        ))}
        {pluggedAt.map((recorder) => (
          <li key={recorder}>
            <Row
              title="nothing"
              word={pluggedAt.length > 1 ? `unplug from ${recorderName(day, recorder)}` : 'unplug lead'}
              onTap={() => plug(null, 'a', recorder)}
            />
          </li>
        ))}
      </ul>
    </>
  );
}

/** A lead whose selector position only a newer version understands cannot be plugged here. */
const readPosition = (position: Open<SelectorPosition> = 'a'): SelectorPosition =>
  isOneOf(SELECTOR_POSITIONS, position) ? position : 'a';
