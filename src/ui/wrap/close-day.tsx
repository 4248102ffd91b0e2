import type { ReportModel } from '../../report/model.ts';
import { totalsLines } from '../../report/words.ts';
import { useDay } from '../context.ts';
import { NextDay } from '../days/next-day.tsx';
import { BackupSection } from './backup.tsx';

/** The end of the day: what it came to, the copy that leaves the phone, and tomorrow. */
export function CloseDay({ model }: { model: ReportModel }) {
  const { id } = useDay().day.value;
  return (
    <>
      <section class="section" aria-labelledby="close-head">
        <h2 id="close-head">The day</h2>
        <dl class="wrap-totals">
          {totalsLines(model).map(([label, text]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </section>
      <BackupSection />
      <section class="section report-send" aria-labelledby="tomorrow-head">
        <h2 id="tomorrow-head">Tomorrow</h2>
        <NextDay from={id} />
      </section>
    </>
  );
}
