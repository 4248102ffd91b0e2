import { useState } from 'preact/hooks';
import { answersBefore } from '../../day/answers.ts';
import type { PartId } from '../../day/model.ts';
import type { Heard, TrackAnswer, TrackState } from '../../day/track-answers.ts';
import { useDay } from '../context.ts';
import { FromWhen } from '../parts/from-when.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { Soon } from '../parts/soon.tsx';
import { nameOf, partName, pathWords } from '../words/chain.ts';
import { MARK_MEANS } from '../words/means.ts';
import { Because } from './because.tsx';
import { GiveList } from './give-list.tsx';
import { TrackActions } from './track-actions.tsx';

interface TrackProps {
  readonly track: PartId;
  /** The take that changes go before at first; now unless it is said. */
  readonly from?: string | undefined;
  readonly onClose: () => void;
}

/** One track: who is on it and why, whose pack goes where, and what else can change. */
export function TrackSheet({ track, from, onClose }: TrackProps) {
  const day = useDay().day.value;
  const [before, setBefore] = useState<string | undefined>(from);
  const [chosen, setChosen] = useState<string | null>(null);
  const answers = answersBefore(day, before);
  const answer = answers.tracks.find((one) => one.track.id === track);
  if (!answer) return null;
  const heard = answer.heard.find(({ source }) => source.id === chosen) ?? answer.heard[0];
  const path = answers.voices
    .find(({ voice }) => voice.id === heard?.voice)
    ?.paths.find(({ source }) => source === heard?.source.id);
  const pack = heard?.source.transmitter;
  const title = pack
    ? `${partName(day.rig, pack)} is on ${nameOf(day, heard?.voice ?? null)}`
    : answer.name || `Track ${answer.track.name}: nobody`;
  return (
    <Sheet
      title={title}
      under={path ? `${pathWords(day.rig, path)} › track ${answer.track.name}` : `track ${answer.track.name}`}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={setBefore} />}
    >
      {SAID.has(answer.state) && <p class="section-title soft">{meansOf(answer.state)}</p>}
      {answer.heard.length > 1 && <WhichVoice answer={answer} heard={heard} onChoose={setChosen} />}
      {pack && (
        <>
          <p class="section-title soft">Give {partName(day.rig, pack)} to</p>
          <GiveList transmitter={pack} before={before} onDone={onClose} />
        </>
      )}
      <Soon>
        <TrackActions answer={answer} heard={heard} before={before} onDone={onClose} />
        <Because because={answer.because} />
      </Soon>
    </Sheet>
  );
}

/** States that a newcomer may ask about. */
const SAID: ReadonlySet<TrackState> = new Set(['gang', 'clash', 'muted']);

const meansOf = (state: TrackState): string => {
  const { word, means } = MARK_MEANS[state as 'gang' | 'clash' | 'muted'];
  return `${word[0]!.toUpperCase()}${word.slice(1)}: ${means[0]!.toLowerCase()}${means.slice(1)}`;
};

interface WhichProps {
  readonly answer: TrackAnswer;
  readonly heard: Heard | undefined;
  readonly onChoose: (source: string) => void;
}

function WhichVoice({ answer, heard, onChoose }: WhichProps) {
  const day = useDay().day.value;
  return (
    <div class="section buttons" role="group" aria-label="Which of them">
      {answer.heard.map((one) => (
        <button
          key={one.source.id}
          type="button"
          class="button"
          aria-pressed={one.source.id === heard?.source.id}
          onClick={() => onChoose(one.source.id)}
        >
          {nameOf(day, one.voice)}
        </button>
      ))}
    </div>
  );
}
