import { useState } from 'preact/hooks';
import type { Day, TakeId } from '../../day/model.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Cause } from '../../reconcile/causes/causes.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { causeTakes, causeWords, KIND_WORDS, wayWords } from './cause-words.ts';
import { OneDifference } from './one-difference.tsx';

interface ListProps {
  readonly day: Day;
  readonly causes: readonly Cause[];
  /** How many differences were settled by keeping the log. */
  readonly kept: number;
  readonly onSettle: (settlements: readonly CardSettlement[]) => void;
  readonly onTake: (take: TakeId) => void;
}

/** What differs, one line a cause, the worst first. */
export function CauseList({ day, causes, kept, onSettle, onTake }: ListProps) {
  return (
    <section aria-label="Differences">
      <ol class="rows">
        {causes.map((cause) => (
          <li key={cause.key}>
            <OneCause day={day} cause={cause} onSettle={onSettle} onTake={onTake} />
          </li>
        ))}
      </ol>
      {kept > 0 && <p class="section soft">In {countOf(kept, 'difference')} the log was kept.</p>}
    </section>
  );
}

/** How many of a cause are drawn at once: a badly mismatched card may differ in thousands of places. */
const SHOWN = 30;

type OneProps = Omit<ListProps, 'causes' | 'kept'> & { readonly cause: Cause };

function OneCause({ day, cause, onSettle, onTake }: OneProps) {
  const [shown, setShown] = useState(0);
  const { differences, kind, ways } = cause;
  const isSingle = differences.length === 1;
  const one = (difference: Cause['differences'][number]) => (
    <OneDifference
      day={day}
      difference={difference}
      onSettle={(settlement) => onSettle([settlement])}
      onTake={onTake}
    />
  );
  return (
    <div class="difference" data-kind={kind}>
      <p class="difference-head">
        <strong>{causeWords(day, cause)}</strong>
        <span class={kind === 'sound' ? 'warn' : 'soft'}>{KIND_WORDS[kind]}</span>
      </p>
      {isSingle ? (
        one(differences[0])
      ) : (
        <>
          <p class="soft">{causeTakes(day, cause)}</p>
          <div class="buttons">
            {ways.map((way) => (
              <Button key={way.kind} onClick={() => onSettle(way.settlements)}>
                {wayWords(way)}
              </Button>
            ))}
            <Button look="plain" expanded={shown > 0} onClick={() => setShown(shown > 0 ? 0 : SHOWN)}>
              {shown > 0 ? 'Close' : `One by one (${differences.length})`}
            </Button>
          </div>
          {shown > 0 && (
            <ol class="rows difference-ones">
              {differences.slice(0, shown).map((difference) => (
                <li key={JSON.stringify(difference.key)}>{one(difference)}</li>
              ))}
            </ol>
          )}
          {shown > 0 && differences.length > shown && (
            <Button onClick={() => setShown(shown + SHOWN)}>{differences.length - shown} more</Button>
          )}
        </>
      )}
    </div>
  );
}
