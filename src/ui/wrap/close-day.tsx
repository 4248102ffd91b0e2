import { wrapDay } from '../../app/commands/day.ts';
import type { ReportModel } from '../../report/model.ts';
import { totalsLines } from '../../report/printed/words.ts';
import { useDay, useOutline, useRun } from '../frame/context.ts';
import { NextDay } from '../frame/next-day-button.tsx';
import { DayFileButton } from '../frame/sending/day-file-button.tsx';
import { Button } from '../kit/button.tsx';
import { copyWords } from '../words/day-outline.ts';

/** The end of the day: its totals, the copy that leaves the phone, and tomorrow. */
export function CloseDay({ model }: { model: ReportModel }) {
  const { id } = useDay().day.value;
  return (
    <>
      <section class="section report-send" aria-labelledby="close-head">
        <h2 id="close-head">The day</h2>
        <dl class="wrap-totals">
          {totalsLines(model).map(([label, text]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        <WrapButton />
      </section>
      <BackupSection />
      <section class="section report-send" aria-labelledby="tomorrow-head">
        <h2 id="tomorrow-head">Tomorrow</h2>
        <NextDay from={id} />
      </section>
    </>
  );
}

/** Says to every phone that this was all; it can be taken back, and entries that come later say so. */
function WrapButton() {
  const day = useDay().day.value;
  const run = useRun();
  return day.wrap ? (
    <Button onClick={() => run(wrapDay(false), 'Day reopened')}>Reopen the day</Button>
  ) : (
    <Button look="solid" onClick={() => run(wrapDay(true), 'Day wrapped')}>
      Wrap the day
    </Button>
  );
}

/** The day file: the one copy that survives a lost phone. */
function BackupSection() {
  const outline = useOutline();
  return (
    <section class="section report-send" aria-labelledby="backup-head">
      <h2 id="backup-head">Backup</h2>
      <p>
        <strong>{copyWords(outline)}</strong>
      </p>
      <p class="soft">
        The day file has every entry of this day, with the names of the people in it. Only a backup survives a
        lost phone, and another phone can import it.
      </p>
      <DayFileButton day={outline} />
    </section>
  );
}
