import { useEffect, useRef } from 'preact/hooks';
import type { CardOnHand } from '../../app/card/card-on-hand.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';

interface ChooseProps {
  readonly card: CardOnHand;
  readonly onFiles: (files: readonly File[]) => void;
  /** On a sample day: its cards, made up. */
  readonly onSample: (() => void) | undefined;
  readonly onStop: () => void;
  readonly onClear: () => void;
}

/** Picks the card's files, or its folder where the browser allows, and shows progress. */
export function ChooseCard({ card, onFiles, onSample, onStop, onClear }: ChooseProps) {
  const { reading, refused } = card;
  const isAdding = card.files > 0;
  const folder = useRef<HTMLInputElement>(null);
  // Missing from preact's types; browsers that cannot pick a folder ignore it.
  useEffect(() => folder.current?.setAttribute('webkitdirectory', ''), []);
  const take = (input: HTMLInputElement): void => {
    const files = [...(input.files ?? [])];
    input.value = '';
    if (files.length > 0) onFiles(files);
  };
  return (
    <section class="section">
      {!isAdding && (
        <p class="soft">
          Only the file headers are read, on this phone: large files take no longer than small ones.
        </p>
      )}
      <div class="card-choose">
        <label class="button as-button">
          {isAdding ? 'Add files' : 'Choose files'}
          <input
            type="file"
            class="unseen"
            multiple
            accept=".wav,.bwf,.rf64,audio/wav,audio/x-wav"
            onChange={(event) => take(event.currentTarget)}
          />
        </label>
        <label class="button as-button">
          {isAdding ? 'Add folder' : 'Choose folder'}
          <input
            type="file"
            class="unseen"
            multiple
            ref={folder}
            onChange={(event) => take(event.currentTarget)}
          />
        </label>
      </div>
      {onSample && !isAdding && (
        <div class="card-sample">
          <Button look="solid" onClick={onSample}>
            Sample card
          </Button>
          <p class="soft">Made-up files of this practice day, not all of them as logged.</p>
        </div>
      )}
      {reading && (
        <div class="card-progress">
          <progress max={Math.max(1, reading.all)} value={reading.done} aria-label="Files read" />
          <p>
            {reading.done} of {countOf(reading.all, 'file')}
          </p>
          <Button onClick={onStop}>Stop</Button>
        </div>
      )}
      {isAdding && !reading && (
        <p class="card-clear">
          <Button look="plain" onClick={onClear}>
            Start the check over
          </Button>
        </p>
      )}
      {refused.length > 0 && (
        <details>
          <summary>{countOf(refused.length, 'file')} not read</summary>
          <ul>
            {refused.map(({ name, problem }) => (
              <li key={name} class="soft">
                <b>{name}</b>: {sentenceFor(problem)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
