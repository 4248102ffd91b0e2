import { useState } from 'preact/hooks';
import { moveToTrack, nameTrack } from '../../../app/commands/chain.ts';
import type { OneMic } from '../../../app/commands/mics.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import type { TrackAnswer } from '../../../day/answers/track-answers.ts';
import type { SubjectAnswer } from '../../../day/answers/track-subject.ts';
import type { PartId } from '../../../day/model.ts';
import { recorderOfPart } from '../../../day/recorder-of-part.ts';
import { ownPartsOf } from '../../../day/recorders/recorder-parts.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { partName } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';
import { MicSheet } from './open-mic.ts';

interface ActionsProps {
  readonly answer: TrackAnswer;
  /** Who the sheet is about, as of the place on the line being viewed. */
  readonly subject: SubjectAnswer | undefined;
  /** Whose other track is chosen, where several share this one. */
  readonly whose: string;
  /** The mic of whom the sheet is about; null if it is about the track. */
  readonly mic: OneMic | null;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Another track for who is on this one, and a name of its own for the track. */
export function TrackActions({ answer, subject, whose, mic, before, onDone }: ActionsProps) {
  const day = useDay().day.value;
  const run = useRun();
  const [asking, setAsking] = useState<'track' | 'name' | 'mic' | null>(null);
  const { track } = answer;
  const at = { before };
  const input = subject?.input;
  const reach = answersBefore(day, before).inputs.find((one) => one.input.id === input)?.reach;
  const does = (done: boolean): void => {
    if (done) onDone();
  };
  return (
    <div class="track-more">
      <div class="buttons">
        {input && (
          <Button look="plain" expanded={asking === 'track'} onClick={() => setAsking('track')}>
            {whose ? `Other track for ${whose}` : 'Other track'}
          </Button>
        )}
        {!track.mix && (
          <Button look="plain" expanded={asking === 'name'} onClick={() => setAsking('name')}>
            Own track name
          </Button>
        )}
        {mic && (
          <Button look="plain" onClick={() => setAsking('mic')}>
            Mic
          </Button>
        )}
      </div>
      {asking === 'mic' && mic && <MicSheet mic={mic} from={before} onClose={() => setAsking(null)} />}
      {asking === 'track' && input && (
        <TrackChoice
          recorder={recorderOfPart(track)}
          current={reach?.tracks ?? []}
          onChoose={(to) =>
            does(run(moveToTrack(input, track.id, to, at), `${partName(day.rig, input)} sent`))
          }
        />
      )}
      {asking === 'name' && (
        <NameForm
          name={answer.typed ? answer.name : ''}
          onSay={(name) =>
            does(run(nameTrack(track.id, name, at), name ? 'Own track name set' : 'Automatic name again'))
          }
        />
      )}
    </div>
  );
}

/** The tracks that an input can be sent to: those of its recorder. */
function TrackChoice({
  recorder,
  current,
  onChoose,
}: {
  recorder: PartId;
  current: readonly PartId[];
  onChoose: (track: PartId) => void;
}) {
  const { rig } = useDay().day.value;
  return (
    <div class="track-choice" role="group" aria-label="Send to track">
      {ownPartsOf(rig, recorder)
        .tracks.filter(({ mix }) => !mix)
        .map(({ id, name }) => (
          <Button key={id} pressed={current.includes(id)} onClick={() => onChoose(id)}>
            {name}
          </Button>
        ))}
    </div>
  );
}

function NameForm({ name, onSay }: { name: string; onSay: (name: string) => void }) {
  const [typed, setTyped] = useState(name);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onSay(typed);
      }}
    >
      <TextField
        label="Own track name; empty for the automatic one"
        value={typed}
        onInput={setTyped}
        capitals="words"
      />
      <Button type="submit">{typed.trim() === '' ? 'Use the automatic name' : 'Use this name'}</Button>
    </form>
  );
}
