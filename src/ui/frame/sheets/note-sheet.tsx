import { useState } from 'preact/hooks';
import { addNote, describeTake } from '../../../app/commands/takes.ts';
import { answersAtTake } from '../../../day/answers/answers.ts';
import { takeText } from '../../../day/slate.ts';
import { Button } from '../../kit/button.tsx';
import { TextField } from '../../kit/field.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { useDay, useRun } from '../context.ts';
import { USUAL_COMPLAINTS } from './complaints.ts';
import './sheets.css';

/** A note on a take or on one of its tracks: common complaints are one tap away. */
export function NoteSheet({ take: id, onClose }: { take: string; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const [track, setTrack] = useState<string | undefined>(undefined);
  const [typed, setTyped] = useState('');
  const take = day.takes.get(id);
  if (!take) return null;
  const tracks = answersAtTake(day, id).tracks.filter(({ state }) => state !== 'empty');
  const note = (text: string): void => {
    if (run(addNote(id, text, track), `Noted on ${takeText(take)}: ${text.trim().slice(0, 60)}`)) onClose();
  };
  const flag = (field: 'noGood' | 'falseStart' | 'tailSlate', word: string): void => {
    const value = !take[field];
    const uncircled = field === 'noGood' && take.circled ? ', circle removed' : '';
    run(
      describeTake(id, { [field]: value }),
      `${takeText(take)} ${value ? word : `not ${word}`}${uncircled}`,
    );
  };
  const own = (
    <form
      class="note-own"
      onSubmit={(event) => {
        event.preventDefault();
        note(typed);
      }}
    >
      <TextField label="Own words" value={typed} onInput={setTyped} capitals="sentences" />
      <Button look="solid" type="submit">
        Add note
      </Button>
    </form>
  );
  return (
    <Sheet title={`Note on ${takeText(take)}`} onClose={onClose} foot={own}>
      <div class="first-things">
        <Button pressed={take.noGood} onClick={() => flag('noGood', 'NG')}>
          NG
        </Button>
        <Button pressed={take.falseStart} onClick={() => flag('falseStart', 'a false start')}>
          false start
        </Button>
        <Button pressed={take.tailSlate} onClick={() => flag('tailSlate', 'tail-slated')}>
          tail slate
        </Button>
      </div>
      <div
        class="note-where"
        role="group"
        aria-label="Where?"
        onFocusIn={({ target }) => {
          // What is half in sight does not come in whole by itself.
          if (target instanceof HTMLElement) target.scrollIntoView({ inline: 'nearest', block: 'nearest' });
        }}
      >
        <Button pressed={track === undefined} onClick={() => setTrack(undefined)}>
          whole take
        </Button>
        {tracks.map((answer) => (
          <Button
            key={answer.track.id}
            pressed={track === answer.track.id}
            onClick={() => setTrack(answer.track.id)}
          >
            {answer.track.mix ? answer.track.name : `${answer.track.name} ${answer.name}`}
          </Button>
        ))}
      </div>
      <div class="section note-quick" role="group" aria-label="Quick notes">
        {USUAL_COMPLAINTS.map((text) => (
          <Button key={text} onClick={() => note(text)}>
            {text}
          </Button>
        ))}
      </div>
    </Sheet>
  );
}
