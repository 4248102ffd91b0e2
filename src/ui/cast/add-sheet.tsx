import { useRef, useState } from 'preact/hooks';
import { addVoice, nextRank } from '../../app/commands/cast.ts';
import { knownBefore } from '../../app/season.ts';
import { holderOf } from '../../day/cast-in-order.ts';
import { type Day, VOICE_KINDS, type VoiceId, type VoiceKind } from '../../day/model.ts';
import { useDay, useRun } from '../frame/context.ts';
import { blankFields, saidFields, VoiceFieldset, type VoiceTexts } from '../frame/sheets/voice-fieldset.tsx';
import { useSeason } from '../frame/use-season.ts';
import { Button } from '../kit/button.tsx';
import { Choice } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { nameOf } from '../words/chain.ts';
import { asOnWords } from '../words/known-days.ts';
import { KIND_WORD } from './words.ts';

interface AddProps {
  readonly onClose: () => void;
  /** A hardline was added, so its lead comes next. */
  readonly onHardline: (voice: VoiceId) => void;
}

/** Adds one voice: a performer, a boom, a plant or a line feed. */
export function AddSheet({ onClose, onHardline }: AddProps) {
  const store = useDay();
  const run = useRun();
  const day = store.day.value;
  const form = useRef<HTMLFormElement>(null);
  const [kind, setKind] = useState<VoiceKind>('performer');
  const [texts, setTexts] = useState<VoiceTexts>(blankFields);

  /** The id of the new voice, once it is in the cast. */
  const add = (): VoiceId | null => {
    const id = store.newId();
    const rank = kind === 'performer' ? { priority: nextRank(day) } : {};
    const fields = { kind, ...saidFields(kind, texts), ...rank };
    const added = run(addVoice(fields, id), `${fields.part || fields.person} added`);
    if (added) setTexts(blankFields);
    return added ? id : null;
  };
  const addAnother = (): void => {
    if (add() !== null) form.current?.querySelector('input')?.focus();
  };
  const addLast = (): void => {
    const id = add();
    if (id === null) return;
    if (kind === 'performer') onClose();
    else onHardline(id);
  };

  return (
    <Sheet
      title="Add to the cast"
      onClose={onClose}
      foot={
        <div class="buttons">
          <Button look="solid" type="submit" form="add-voice">
            Add
          </Button>
          <Button onClick={addAnother}>Add, then another</Button>
        </div>
      }
    >
      <form
        id="add-voice"
        ref={form}
        class="section"
        onSubmit={(event) => {
          event.preventDefault();
          addLast();
        }}
      >
        <Choice
          label="Kind"
          value={kind}
          options={VOICE_KINDS.map((value) => ({ value, name: KIND_WORD[value] }))}
          onChoose={setKind}
        />
        <VoiceFieldset kind={kind} texts={texts} onInput={setTexts} taken={takenWords(day, texts.number)} />
        {kind === 'performer' && <Known day={day} texts={texts} onTap={setTexts} />}
        <AddedSoFar day={day} kind={kind} />
      </form>
    </Sheet>
  );
}

/** Who already has the cast number. */
function takenWords(day: Day, number: string): string {
  const holder = holderOf(day, number);
  if (!holder) return '';
  return `${nameOf(day, holder.id)} has ${holder.number} already${holder.struck ? ', removed from the cast' : ''}`;
}

interface KnownProps {
  readonly day: Day;
  readonly texts: VoiceTexts;
  readonly onTap: (texts: VoiceTexts) => void;
}

/** Whose number it was on an earlier day of the production; a tap fills in the names. */
function Known({ day, texts, onTap }: KnownProps) {
  const season = useSeason();
  const { number, part, person } = texts;
  const isOpen = part + person === '' && !holderOf(day, number);
  const known = isOpen ? knownBefore(season, { number: number.trim(), part, person }) : undefined;
  if (!known) return null;
  const names = [known.part, known.person].filter(Boolean).join(', ');
  return (
    <Button class="wide" onClick={() => onTap({ ...texts, part: known.part, person: known.person })}>
      {`${names}, ${asOnWords(known.date)}`}
    </Button>
  );
}

function AddedSoFar({ day, kind }: { day: Day; kind: VoiceKind }) {
  const names = [...day.voices.values()]
    .filter((voice) => voice.kind === kind && !voice.struck)
    .map(({ id }) => nameOf(day, id));
  if (names.length === 0) return null;
  return <p class="soft">Already in the cast: {names.join(', ')}</p>;
}
