import { useState } from 'preact/hooks';
import { type FileRead, readAsFarAsPossible } from '../../app/regain.ts';
import { LongField } from '../parts/field.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { complain } from '../saying.ts';
import { sentenceFor } from '../words/problems.ts';
import { readDayFiles } from './arrivals.ts';

/** What somebody brought to the door, and how it came there. */
export interface Brought {
  readonly reads: readonly FileRead[];
  readonly how: 'chosen' | 'pasted' | 'shared' | 'opened';
}

interface ChooseProps {
  readonly onBrought: (brought: Brought) => void;
  readonly onClose: () => void;
}

/** Brings day files to the door: files of this phone, or the text of one. */
export function ChooseFile({ onBrought, onClose }: ChooseProps) {
  const [pasted, setPasted] = useState('');
  const [unread, setUnread] = useState('');
  const choose = async (files: readonly File[]): Promise<void> => {
    const reads = await readDayFiles(files);
    if ('code' in reads) return complain(reads);
    const [only] = reads;
    if (reads.length === 1 && only?.damage && !only.file) complain(only.damage.problem);
    else if (reads.length > 0) onBrought({ reads, how: 'chosen' });
  };
  const paste = (text: string): void => {
    setPasted(text);
    const read = readAsFarAsPossible('What was pasted', text);
    if (read.file) onBrought({ reads: [read], how: 'pasted' });
    else setUnread(text.trim() && read.damage ? sentenceFor(read.damage.problem) : '');
  };
  return (
    <Sheet
      title="Take in a day file"
      under="From another phone, or copies you kept, several at once. What it would change is shown first."
      onClose={onClose}
    >
      <div class="section">
        <label class="field">
          <span>Choose one file or several</span>
          <input
            type="file"
            multiple
            accept=".txt,.json,text/plain"
            onChange={(event) => void choose([...(event.currentTarget.files ?? [])])}
          />
        </label>
        <LongField label="Or paste its text" value={pasted} onInput={paste} />
        {unread && (
          <p class="warn" role="alert">
            {unread}
          </p>
        )}
      </div>
    </Sheet>
  );
}
