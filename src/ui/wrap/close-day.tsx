import type { ReportModel } from '../../report/model.ts';
import { totalsLines } from '../../report/words.ts';
import { useDay, useOutline } from '../context.ts';
import { DayFileButton } from '../days/day-file-button.tsx';
import { NextDay } from '../days/next-day.tsx';
import { copyWords } from '../words/days.ts';

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

/** The day file: the one copy that survives a lost phone. */
function BackupSection() {
  const outline = useOutline();
  return (
    <section class="section report-send" aria-labelledby="backup-head">
      <h2 id="backup-head">A copy off the phone</h2>
      <p>
        <strong>{copyWords(outline)}</strong>
      </p>
      <p class="soft">
        The day file has every entry of this day, with the names of the people in it. It is the only copy that
        survives a lost phone, and another phone can take it in.
      </p>
      <DayFileButton day={outline} />
    </section>
  );
}
