import { useState } from 'preact/hooks';
import { addCast, type CastList, planCast, readCastList, turnedRound } from '../../app/commands/cast.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { LongField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { Reading } from './reading.tsx';
import { addedWords, toAddWords } from './words.ts';

/** Longer than any call sheet; parsing it would block the phone. */
const LONGEST = 200_000;
const NOTHING: CastList = { entries: [], unread: [], headings: [] };

/** Cast lines of a call sheet, parsed as they are pasted. Unreadable lines stay in the field. */
export function PasteSheet({ onClose }: { onClose: () => void }) {
  const store = useDay();
  const run = useRun();
  const [text, setText] = useState('');
  const [turned, setTurned] = useState(false);
  const [left, setLeft] = useState(false);
  const list = text.length > LONGEST ? NOTHING : readCastList(text);
  const entries = turned ? turnedRound(list.entries) : list.entries;
  const planned = planCast(store.day.value, entries);
  const doing = toAddWords(planned);

  const add = (): void => {
    if (!run(addCast(entries, store.newId), addedWords(planned))) return;
    setText(list.unread.map((line) => line.text).join('\n'));
    setLeft(true);
    if (list.unread.length === 0) onClose();
  };

  return (
    <Sheet
      title="Paste cast list"
      under="One line each: number, part and name, in any order"
      onClose={onClose}
      foot={
        <Button
          look={doing === '' ? 'outline' : 'solid'}
          class="cast-add"
          disabled={doing === ''}
          onClick={add}
        >
          {doing || 'Nothing to add yet'}
        </Button>
      }
    >
      <PasteField text={text} onInput={setText} left={left} />
      <Reading
        planned={planned}
        list={list}
        turned={turned}
        onTurn={list.entries.some(({ sure, person }) => !sure && person !== '') ? setTurned : undefined}
      />
    </Sheet>
  );
}

interface PasteFieldProps {
  readonly text: string;
  readonly onInput: (text: string) => void;
  /** The field holds what could not be read. */
  readonly left: boolean;
}

/** The field refuses text too long for any call sheet: laying it out would hang the phone. */
function PasteField({ text, onInput, left }: PasteFieldProps) {
  const [refused, setRefused] = useState(0);
  const length = Math.max(refused, text.length);
  return (
    <div
      class="section"
      onPaste={(event) => {
        const pasted = event.clipboardData?.getData('text/plain').length ?? 0;
        setRefused(pasted > LONGEST ? pasted : 0);
        if (pasted > LONGEST) event.preventDefault();
      }}
    >
      <LongField
        label={left ? 'These lines were not understood: fix them here, or close' : 'Cast lines'}
        value={text}
        onInput={onInput}
        placeholder={'1. INES - Anna Berg\n2. DORA - Lea Holm'}
      />
      {length > LONGEST && (
        <p class="warn" role="alert">
          {length.toLocaleString('en-GB')} characters are too many for a call sheet. Paste only the cast list.
        </p>
      )}
    </div>
  );
}
