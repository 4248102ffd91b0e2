import { TextField } from '../kit/field.tsx';

const FEW = 15;

interface FoundProps {
  readonly all: number;
  readonly shown: number;
  readonly typed: string;
  readonly onInput: (typed: string) => void;
}

/** A search field, shown when there are too many names to see at once. */
export function Found({ all, shown, typed, onInput }: FoundProps) {
  if (all <= FEW && typed === '') return null;
  return (
    <div class="cast-find" role="search">
      <TextField label="Find a name or number" value={typed} onInput={onInput} />
      <p class="soft" role="status">
        {typed.trim() === '' ? '' : shown === 0 ? 'Nobody by that name.' : `${shown} of ${all}`}
      </p>
    </div>
  );
}
