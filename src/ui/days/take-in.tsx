import { useState } from 'preact/hooks';
import type { TakenIn } from '../../app/app-store.ts';
import type { Result } from '../../shared/result.ts';
import { useApp } from '../context.ts';
import { LongField } from '../parts/field.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { goTo } from '../route.ts';
import { complain, tell } from '../saying.ts';
import { countOf } from '../words/chain.ts';

/** Larger than any day: not worth reading to find that out. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Takes in a day file: what is new is added, what is known is left, and a contradiction is refused whole. */
export function TakeInSheet({ onClose }: { onClose: () => void }) {
  const app = useApp();
  const [pasted, setPasted] = useState('');

  const show = (result: Result<TakenIn>): void => {
    if (!result.ok) {
      complain(result.problem);
      return;
    }
    const { fresh, known, day } = result.value;
    tell(`${countOf(fresh, 'new entry', 'new entries')}, ${known} known`);
    goTo({ at: 'day', day, tab: 'now' });
  };
  const read = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > MOST_BYTES) complain({ code: 'day-file-too-large', most: MOST_BYTES });
    else show(await app.takeIn(await file.text()));
  };
  return (
    <Sheet
      title="Take in a day file"
      under="From another phone, or a copy you kept. New entries are added; nothing here is overwritten."
      onClose={onClose}
      foot={
        pasted !== '' && (
          <button
            type="button"
            class="button button-solid"
            onClick={() => void app.takeIn(pasted).then(show)}
          >
            Take in what was pasted
          </button>
        )
      }
    >
      <div class="section">
        <label class="field">
          <span>Choose the file</span>
          <input
            type="file"
            accept=".txt,.json,text/plain"
            onChange={(event) => void read(event.currentTarget.files?.[0])}
          />
        </label>
        <LongField label="Or paste its text" value={pasted} onInput={setPasted} />
      </div>
    </Sheet>
  );
}
