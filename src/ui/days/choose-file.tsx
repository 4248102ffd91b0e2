import { useState } from 'preact/hooks';
import { type DayImport, importDays } from '../../app/import/import-days.ts';
import { useApp } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { LongField } from '../kit/field.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { sentenceFor } from '../words/problems.ts';

interface ChooseProps {
  readonly onBrought: (days: DayImport) => void;
  readonly onClose: () => void;
}

/** Picks day files for import: files on this phone, or pasted text. */
export function ChooseFile({ onBrought, onClose }: ChooseProps) {
  const app = useApp();
  const [pasted, setPasted] = useState('');
  const [unread, setUnread] = useState('');
  const choose = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    const days = await importDays(app, { how: 'chosen', files });
    if (days.ok) onBrought(days.value);
    else complain(days.problem);
  };
  const paste = async (text: string): Promise<void> => {
    setPasted(text);
    const days = await importDays(app, { how: 'pasted', text });
    if (days.ok) onBrought(days.value);
    else setUnread(text.trim() && sentenceFor(days.problem));
  };
  return (
    <Sheet
      title="Import day file"
      under="From another phone, or your own backups, one or several. You review the changes before anything is imported."
      onClose={onClose}
    >
      <div class="section">
        <label class="field">
          <span>Choose files</span>
          <input
            type="file"
            multiple
            accept=".txt,.json,text/plain"
            onChange={(event) => void choose([...(event.currentTarget.files ?? [])])}
          />
        </label>
        <a class="button as-button" href="#/get">
          Get from another phone by camera
        </a>
        <LongField label="Or paste the text" value={pasted} onInput={(text) => void paste(text)} />
        {unread && (
          <p class="warn" role="alert">
            {unread}
          </p>
        )}
      </div>
    </Sheet>
  );
}
