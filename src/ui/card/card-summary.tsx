import type { CardCheck } from '../../day/wrap/card-check.ts';
import type { CardMatch } from '../../reconcile/pairing/match-recordings.ts';
import { countOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';
import type { CardRead } from './read-card.ts';

interface SummaryProps {
  readonly read: CardRead;
  readonly match: CardMatch;
  readonly open: number;
  readonly last: CardCheck | null;
}

/** The state of the card in one line. */
export function CardSummary({ read, match, open, last }: SummaryProps) {
  const unsure = match.questions.length;
  return (
    <section class="section" aria-label="The card">
      <p>
        <b>{read.files}</b> files, <b>{read.recordings.length}</b> recordings · <b>{match.pairs.length}</b>{' '}
        are takes of the log
        {unsure > 0 && <> · {unsure} to ask</>} ·{' '}
        {open === 0 ? <b>no differences left</b> : <b class="warn">{countOf(open, 'difference')} open</b>}
      </p>
      {last && (
        <p class="soft">
          Marked at {clockTime(last.atMs, -new Date(last.atMs).getTimezoneOffset())}: checked against{' '}
          {countOf(last.files, 'file')}, {last.open} open.
        </p>
      )}
    </section>
  );
}
