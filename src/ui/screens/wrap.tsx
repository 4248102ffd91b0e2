import '../words/later-problems.ts';
import { useMemo } from 'preact/hooks';
import { useApp, useDay } from '../context.ts';
import { Page } from '../parts/page.tsx';
import { Row } from '../parts/row.tsx';
import { goTo } from '../route.ts';
import { CloseDay } from '../wrap/close-day.tsx';
import { ReportSection } from '../wrap/report.tsx';
import { rollMatters } from '../wrap/roll-matters.ts';
import { SentList } from '../wrap/sent-list.tsx';
import { wrapSettings } from '../wrap/settings.ts';
import { Unsettled } from '../wrap/unsettled.tsx';
import { usePrepared } from '../wrap/use-prepared.ts';
import '../styles/wrap.css';

/** The end of the day: what is not settled, the card, the report, what was sent, and tomorrow. */
export function Wrap() {
  const day = useDay().day.value;
  const { days } = useApp();
  const matters = useMemo(() => rollMatters(day, days.value), [day, days.value]);
  const prepared = usePrepared(day, wrapSettings.value, matters);
  return (
    <Page tab="wrap">
      <h1 class="unseen">Wrap</h1>
      {typeof prepared === 'string' && <p class="problem">The report could not be made: {prepared}</p>}
      {prepared === undefined && <p class="section soft">The report is being made.</p>}
      {prepared && typeof prepared === 'object' && (
        <>
          <Unsettled day={day} matters={prepared.model.open} />
          <ul class="rows wrap-pages">
            <li>
              <Row
                title="Card check"
                under="the recorder's own files against the log"
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'card' })}
              />
            </li>
            <li>
              <Row
                title="Picture of the day"
                under="who was on which track, take by take"
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'picture' })}
              />
            </li>
          </ul>
          <ReportSection prepared={prepared} matters={matters} />
          <SentList day={day} />
          <CloseDay prepared={prepared} />
        </>
      )}
    </Page>
  );
}
