import { useEffect, useState } from 'preact/hooks';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import type { Day } from '../../day/model.ts';
import { type SentReport, sentReports } from '../../day/sent-reports.ts';
import { device } from '../device.ts';
import { Row } from '../parts/row.tsx';
import { Sheet } from '../parts/sheet.tsx';
import { complain } from '../saying.ts';
import { listOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';
import { type Prepared, prepareAgain } from './prepare.ts';
import { ReportText } from './report-text.tsx';
import { FORMATS } from './settings.ts';

const ROUTE_WORD: Record<SentReport['route'], string> = {
  share: 'handed to the share sheet',
  download: 'downloaded',
  copy: 'copied',
  mail: 'mailed as text',
};

/** What went out, when and to whom; each can be shown again as it was. */
export function SentList({ day }: { day: Day }) {
  const [open, setOpen] = useState<SentReport | null>(null);
  const sent = sentReports(day);
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
              title={`${clockTime(report.at, report.zone)}, ${ROUTE_WORD[report.route]}`}
              under={[listOf(report.to), ...report.files].filter((word) => word !== '').join(' · ')}
              onTap={() => setOpen(report)}
            />
          </li>
        ))}
      </ul>
      {open && <AgainSheet day={day} sent={open} onClose={() => setOpen(null)} />}
    </section>
  );
}

function AgainSheet({ day, sent, onClose }: { day: Day; sent: SentReport; onClose: () => void }) {
  const [prepared, setPrepared] = useState<Prepared | null>(null);
  useEffect(() => {
    void prepareAgain(day, sent, FORMATS).then(setPrepared);
  }, [day, sent]);
  const give = async (file: OutgoingFile): Promise<void> => {
    const result = await sendFiles(device, routeFor(device, [file]), [file], file.name);
    if (!result.ok) complain(result.problem);
  };
  return (
    <Sheet
      title={`Report ${sent.letter}, as it was sent`}
      under={`${clockTime(sent.at, sent.zone)}`}
      onClose={onClose}
    >
      <div class="section">
        <ReportText text={prepared?.text ?? ''} />
        <div class="buttons">
          {prepared?.files.map((file) => (
            <button key={file.name} type="button" class="button" onClick={() => void give(file)}>
              {file.name.split('.').at(-1)}
            </button>
          ))}
        </div>
      </div>
    </Sheet>
  );
}
