import { useId, useState } from 'preact/hooks';
import type { UnsavedDay } from '../../../app/unsaved.ts';
import type { DayId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { actionWords } from '../../words/actions.ts';
import { countOf } from '../../words/chain.ts';
import { titleOf } from '../../words/day-outline.ts';
import { clockTime } from '../../words/times.ts';
import { useApp } from '../context.ts';
import { complain, tell } from '../messages.ts';
import { unreadableWords, unsavedWords } from './unsaved-words.ts';

/** Actions listed before the user asks for all of them. */
const SHOWN = 4;

interface OfferProps {
  readonly left: UnsavedDay;
  /** Whether to name the day: its own pages name it already. */
  readonly isNamed: boolean;
  readonly onRestored?: ((day: DayId) => void) | undefined;
}

/** Actions that were unsaved when a window of this day closed, to restore or discard. */
export function UnsavedOffer({ left, isNamed, onRestored }: OfferProps) {
  const heading = useId();
  const held = useApp().unsaved;
  const [isWhole, setWhole] = useState(false);
  const [isAsking, setAsking] = useState(false);
  const { day, after, actions, unreadable } = left;
  const count = actions.length + unreadable;
  const restore = async (): Promise<void> => {
    const result = await held.restore(day);
    if (!result.ok) return complain(result.problem);
    tell(`${countOf(result.value, 'action')} restored`);
    onRestored?.(day);
  };
  const discard = async (): Promise<void> => {
    await held.discard(day);
    tell(`${countOf(count, 'action')} discarded`);
  };
  const shown = isWhole ? actions : actions.slice(0, SHOWN);
  return (
    <section class="banner unsaved" aria-labelledby={heading}>
      <h2 id={heading} class="unseen">
        Not saved when the app was closed
      </h2>
      <p role="alert">
        {isNamed && `${titleOf(after.header)}: `}
        {unsavedWords(left)}
      </p>
      <ul>
        {shown.map((facts) => (
          <li key={facts[0]?.id}>
            <span class="mono">{facts[0] && clockTime(facts[0].at, facts[0].zone)}</span>{' '}
            {actionWords(after, facts)}
          </li>
        ))}
      </ul>
      {shown.length < actions.length && (
        <Button look="plain" onClick={() => setWhole(true)}>
          Show all {actions.length}
        </Button>
      )}
      {unreadable > 0 && <p>{unreadableWords(unreadable)}</p>}
      {isAsking ? (
        <fieldset class="buttons choice">
          <legend>Discarded, they are gone for good.</legend>
          <Button onClick={() => void discard()}>Discard {countOf(count, 'action')}</Button>
          <Button look="solid" onClick={() => setAsking(false)}>
            Keep them
          </Button>
        </fieldset>
      ) : (
        <div class="buttons">
          {actions.length > 0 && (
            <Button look="solid" onClick={() => void restore()}>
              {actions.length === 1 ? 'Restore it' : 'Restore them'}
            </Button>
          )}
          <Button onClick={() => setAsking(true)}>Discard</Button>
        </div>
      )}
    </section>
  );
}
