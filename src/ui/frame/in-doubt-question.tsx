import { useId } from 'preact/hooks';
import type { InDoubt } from '../../app/in-doubt.ts';
import { Button } from '../kit/button.tsx';
import { inDoubtTitle, inDoubtWords } from '../words/in-doubt.ts';
import './in-doubt-question.css';

interface Props {
  readonly doubt: InDoubt;
  /** The label for going on anyway: `'Start it anyway'`. */
  readonly anyway: string;
  readonly onAnyway: () => void;
  readonly onLeave: () => void;
}

/** What is uncertain about a day, before another one copies it. */
export function InDoubtQuestion({ doubt, anyway, onAnyway, onLeave }: Props) {
  const title = useId();
  return (
    <div role="group" aria-labelledby={title} class="in-doubt">
      <p id={title} class="warn">
        {inDoubtTitle(doubt)}
      </p>
      <ul>
        {inDoubtWords(doubt).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <Button onClick={onAnyway}>{anyway}</Button>
      <Button look="solid" onClick={onLeave}>
        Not yet
      </Button>
    </div>
  );
}
