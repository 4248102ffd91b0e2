import type { CardOnHand } from '../../app/card/card-on-hand.ts';
import type { CardCheck } from '../../day/wrap/card-check.ts';
import type { CardMatch } from '../../reconcile/pairing/match-recordings.ts';
import { countOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';

interface SummaryProps {
  readonly card: CardOnHand;
  readonly match: CardMatch;
  readonly open: number;
  readonly last: CardCheck | null;
}

/** The state of the card in one line. */
export function CardSummary({ card, match, open, last }: SummaryProps) {
  const unsure = match.questions.length;
  return (
    <section class="section" aria-label="The card">
      <p>
        <b>{card.files}</b> files, <b>{card.recordings.length}</b> recordings · <b>{match.pairs.length}</b>{' '}
        are takes of the log
        {unsure > 0 && <> · {unsure} to ask</>}
        {match.alsoThere.length > 0 && <> · {match.alsoThere.length} also there, on a backup</>} ·{' '}
        {card.stopped && <b class="warn">stopped before the last file · </b>}
        {open === 0 ? <b>no differences left</b> : <b class="warn">{countOf(open, 'difference')} open</b>}
      </p>
      {last && (
        <p class="soft">
          Marked at {clockTime(last.atMs, last.zone)}: checked against {countOf(last.files, 'file')},{' '}
          {last.open} open
          {last.takes && last.takes.since > 0 && `, ${countOf(last.takes.since, 'take')} logged since`}.
        </p>
      )}
    </section>
  );
}
