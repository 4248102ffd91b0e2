import type { ReportModel } from '../../report/model.ts';
import { totalsLines } from '../../report/words.ts';
import { useApp, useDay } from '../context.ts';
import { goTo } from '../route.ts';
import { complain } from '../saying.ts';
import { BackupSection } from './backup.tsx';

/** The end of the day: what it came to, the copy that leaves the phone, and tomorrow. */
export function CloseDay({ model }: { model: ReportModel }) {
  const app = useApp();
  const { id } = useDay().day.value;
  const tomorrow = async (): Promise<void> => {
    const result = await app.startFrom(id);
    if (!result.ok) complain(result.problem);
    else goTo({ at: 'day', day: result.value, tab: 'cast' });
  };
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
        <p class="soft">The same rig as it stands, the cast and the crew. Packs come off.</p>
        <button type="button" class="button" onClick={() => void tomorrow()}>
          Start the next day from this one
        </button>
      </section>
    </>
  );
}
