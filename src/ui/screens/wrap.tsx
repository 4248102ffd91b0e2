import { Page } from '../parts/page.tsx';
import { BackupSection } from '../wrap/backup.tsx';
import { ReportSection } from '../wrap/report.tsx';
import '../styles/wrap.css';

/** The end of the day: what is not settled, the report, and a copy that leaves the phone. */
export function Wrap() {
  return (
    <Page tab="wrap">
      <h1 class="unseen">Wrap</h1>
      <ReportSection />
      <BackupSection />
    </Page>
  );
}
