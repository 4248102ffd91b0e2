import { changeText } from '../../report/revision/change.ts';
import { besideText } from '../../report/revision/revision.ts';
import { countOf } from '../words/chain.ts';
import { ReportText } from './report-text.tsx';
import type { Outgoing } from './use-outgoing.ts';

/** Changes shown before the text, which has them all. */
const SHOWN = 12;

/** The report as it would go out now, and what has changed since the last one sent. */
export function ReportSection({ report, text }: Outgoing) {
  const { revision, letter, again } = report;
  const changes = again ? [] : (revision?.changes ?? []);
  const beside = revision ? besideText(revision) : '';
  return (
    <section class="section" aria-labelledby="report-head">
      <h2 id="report-head">
        {revision ? `The report, revision ${letter}` : 'The report'}
        {again && ' (sent, nothing changed since)'}
      </h2>
      {beside && <p class="warn">{beside}</p>}
      {changes.length > 0 && (
        <>
          <p class="soft">Changed since {revision?.since} was sent</p>
          <ul class="report-changes">
            {changes.slice(0, SHOWN).map((change, at) => (
              <li key={at}>{changeText(change)}</li>
            ))}
            {changes.length > SHOWN && <li>{countOf(changes.length - SHOWN, 'more change')}</li>}
          </ul>
        </>
      )}
      <ReportText text={text} />
    </section>
  );
}
