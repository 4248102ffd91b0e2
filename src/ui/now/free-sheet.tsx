import { answersNow } from '../../day/answers/answers.ts';
import type { InputAnswer, InputState } from '../../day/answers/input-answers.ts';
import type { PartId } from '../../day/model.ts';
import { hasSeveralRigs } from '../../day/recorders/recorder-parts.ts';
import { useDay } from '../frame/context.ts';
import type { MarkState } from '../kit/mark.tsx';
import { Row } from '../kit/row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { INPUT_WORD, listOf, nameOf, partName } from '../words/chain.ts';
import { MARK_MEANS } from '../words/means.ts';
import { recorderName } from '../words/recorder-names.ts';

const MARK: Record<InputState, MarkState> = {
  free: 'free',
  idle: 'idle',
  single: 'single',
  gang: 'gang',
  clash: 'clash',
  muted: 'muted',
  reserved: 'reserved',
};

interface FreeProps {
  readonly recorder: PartId;
  readonly onClose: () => void;
  /** The track that an input feeds, opened by way of that input, since others may feed it too. */
  readonly onTrack: (track: PartId, input: PartId) => void;
}

/** Every input of a recorder: what reaches it, where it goes, and whether it is free. */
export function FreeSheet({ recorder, onClose, onTrack }: FreeProps) {
  const day = useDay().day.value;
  const { recorders, main } = answersNow(day);
  const { inputs, summary } = recorders.find((one) => one.recorder === recorder) ?? main;
  const of = hasSeveralRigs(day) ? ` of ${recorderName(day, recorder)}` : '';
  return (
    <Sheet title={`Inputs${of}`} under={`${summary.free} free of ${inputs.length}`} onClose={onClose}>
      <p class="section soft">
        <b>Free</b> {MARK_MEANS.free.means} <b>Idle</b> {MARK_MEANS.idle.means}
      </p>
      <ul class="rows">
        {inputs.map((answer) => {
          const track = answer.reach.tracks[0];
          return (
            <li key={answer.input.id}>
              <Row
                mark={MARK[answer.state]}
                title={answer.input.name}
                under={underInput(answer)}
                word={INPUT_WORD[answer.state]}
                onTap={track ? () => onTrack(track, answer.input.id) : undefined}
              />
            </li>
          );
        })}
      </ul>
    </Sheet>
  );

  function underInput({ reach, state }: InputAnswer): string {
    const tracks =
      reach.tracks.length > 0
        ? `track ${listOf(reach.tracks.map((id) => partName(day.rig, id)))}`
        : 'no track';
    if (state === 'free') return `nothing reaches it › ${tracks}`;
    const from = reach.arrival?.sources.map(({ id, voice }) =>
      voice
        ? `${nameOf(day, voice)}${voice === id ? ', hardline' : ` on ${partName(day.rig, id)}`}`
        : partName(day.rig, id),
    );
    const kept = reach.arrival?.reserved ? partName(day.rig, reach.arrival.from) : undefined;
    return `${kept ?? listOf(from ?? [])} › ${tracks}`;
  }
}
