import { useState } from 'preact/hooks';
import type { Day } from '../../day/model.ts';
import { type SentReport, sentBeside, sentReports } from '../../day/wrap/sent-reports.ts';
import { isOfDatabase } from '../../shared/ids.ts';
import { useApp } from '../frame/context.ts';
import { Row } from '../kit/row.tsx';
import { listOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';
import { AgainSheet } from './again-sheet.tsx';
import { wayWords } from './sent-words.ts';

/** What went out, when and to whom; each can be shown again as it was. */
export function SentList({ day }: { day: Day }) {
  const [open, setOpen] = useState<SentReport | null>(null);
  const { database } = useApp().parts.journal.state;
  const sent = sentReports(day);
  /** Phones that had not exchanged facts may have given two reports the same letter. */
  const whose = (report: SentReport): string =>
    sentBeside(day, report).length === 0
      ? ''
      : isOfDatabase(report.id, database)
        ? 'from this phone'
        : 'from another phone';
  if (sent.length === 0) return null;
  return (
    <section aria-labelledby="sent-head">
      <h2 id="sent-head" class="section-title">
        Sent
      </h2>
      <ul class="rows">
        {sent.toReversed().map((report) => (
          <li key={report.id}>
            <Row
              number={report.letter}
              title={`${clockTime(report.at, report.zone)}, ${wayWords(report)}`}
              under={[whose(report), report.to.length > 0 ? `to ${listOf(report.to)}` : '', ...report.files]
                .filter((word) => word !== '')
                .join(' · ')}
              onTap={() => setOpen(report)}
            />
          </li>
        ))}
      </ul>
      {open && <AgainSheet day={day} sent={open} onClose={() => setOpen(null)} />}
    </section>
  );
}
