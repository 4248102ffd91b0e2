import { useState } from 'preact/hooks';
import { complain } from '../../frame/messages.ts';
import { LongField } from '../../kit/field.tsx';
import { textOfFile } from './file-text.ts';

/** Longer than any call sheet; reading it would block the phone. */
export const LONGEST = 200_000;

interface SheetTextProps {
  readonly text: string;
  readonly onText: (text: string) => void;
  /** The field holds what could not be read. */
  readonly left: boolean;
}

/** Where a call sheet is pasted, chosen as a file, or dropped. Text too long for one is refused: it would hang the phone. */
export function SheetText({ text, onText, left }: SheetTextProps) {
  const [refused, setRefused] = useState(0);
  const [isOpening, setOpening] = useState(false);
  const length = Math.max(refused, text.length);
  const take = (said: string): void => {
    setRefused(said.length > LONGEST ? said.length : 0);
    if (said.length <= LONGEST) onText(said);
  };
  const open = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setOpening(true);
    const read = await textOfFile(file);
    setOpening(false);
    if (read.ok) take(read.value);
    else complain(read.problem);
  };
  return (
    <div
      class="section"
      role="group"
      aria-label="The sheet"
      onPaste={(event) => {
        const pasted = event.clipboardData;
        const html = pasted?.getData('text/html') ?? '';
        const plain = pasted?.getData('text/plain') ?? '';
        // A table copied from a page keeps its empty cells only in its markup.
        const isTable = /<table/i.test(html) && !plain.includes('\t');
        const length = isTable ? html.length : plain.length;
        setRefused(length > LONGEST ? length : 0);
        if (length > LONGEST || isTable) event.preventDefault();
        if (isTable && length <= LONGEST) onText(html);
      }}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        const [file] = event.dataTransfer?.files ?? [];
        if (!file) return;
        event.preventDefault();
        void open(file);
      }}
    >
      <LongField
        label={left ? 'These lines were not understood: fix them here, or close' : 'Call sheet text'}
        value={text}
        onInput={onText}
        placeholder={'46 INT. KITCHEN - DAY 2 3/8 1, 2\n1. INES - Anna Berg'}
      />
      <label class="field">
        <span>Or open a file</span>
        <input
          type="file"
          accept=".txt,.csv,.tsv,.htm,.html,.pdf,text/plain,text/csv,text/html,application/pdf"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
      {isOpening && (
        <p class="soft" role="status">
          Reading the file…
        </p>
      )}
      {length > LONGEST && (
        <p class="warn" role="alert">
          {length.toLocaleString('en-GB')} characters are too many for a call sheet. Paste only its scenes and
          cast.
        </p>
      )}
    </div>
  );
}
