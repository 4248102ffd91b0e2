import { useState } from 'preact/hooks';
import { namesTogether } from '../../day/files/take-files.ts';
import type { Day } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import type { Difference } from '../../reconcile/differences/difference.ts';
import { fileNamesIn } from '../../reconcile/log-and-card/recorded.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { cardWords, differenceWords, logWords, settlementWords } from './words.ts';

interface ListProps {
  readonly day: Day;
  readonly differences: readonly Difference[];
  readonly onSettle: (difference: Difference, settlement: number) => void;
}

/** How many are drawn at once: a badly mismatched card may differ in thousands of places. */
const SHOWN = 60;

/** Differences in the order of the day, worst first, each with its possible fixes. */
export function DifferenceList({ day, differences, onSettle }: ListProps) {
  const [shown, setShown] = useState(SHOWN);
  const open = differences.filter(({ kept }) => !kept);
  const kept = differences.length - open.length;
  return (
    <section aria-label="Differences">
      <ol class="rows">
        {open.slice(0, shown).map((difference, at) => (
          <li
            key={`${difference.code}${difference.take}${difference.recording?.files[0]?.name}${difference.track}${at}`}
          >
            <OneDifference
              day={day}
              difference={difference}
              onSettle={(which) => onSettle(difference, which)}
            />
          </li>
        ))}
      </ol>
      {open.length > shown && (
        <p class="section">
          <Button onClick={() => setShown(shown + SHOWN)}>
            {countOf(open.length - shown, 'more difference')}
          </Button>
        </p>
      )}
      {kept > 0 && <p class="section soft">In {countOf(kept, 'difference')} the log was kept.</p>}
    </section>
  );
}

const SEVERITY_WORD = { lost: 'sound', wrong: 'line', odd: 'note' } as const;

interface OneProps {
  readonly day: Day;
  readonly difference: Difference;
  readonly onSettle: (settlement: number) => void;
}

function OneDifference({ day, difference, onSettle }: OneProps) {
  const { take, recording, severity, was, is, settlements } = difference;
  const known = take ? day.takes.get(take) : undefined;
  const where = [known ? takeText(known) : '', recording ? namesTogether(fileNamesIn(recording)) : ''].filter(
    (word) => word !== '',
  );
  return (
    <div class="difference" data-severity={severity}>
      <p class="difference-head">
        <strong>{differenceWords(day, difference)}</strong>
        <span class={severity === 'lost' ? 'warn' : 'soft'}>{SEVERITY_WORD[severity]}</span>
      </p>
      <p class="soft">{where.join(' · ')}</p>
      {(was !== null || is !== null) && (
        <dl class="difference-values">
          <dt>log</dt>
          <dd>{logWords(difference)}</dd>
          <dt>card</dt>
          <dd>{cardWords(difference)}</dd>
        </dl>
      )}
      <div class="buttons">
        {settlements.map((settlement, at) => (
          <Button key={`${settlement.kind}${at}`} onClick={() => onSettle(at)}>
            {settlementWords(day, settlement)}
          </Button>
        ))}
      </div>
    </div>
  );
}
