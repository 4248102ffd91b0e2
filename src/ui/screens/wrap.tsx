import { useMemo } from 'preact/hooks';
import { useApp, useDay } from '../context.ts';
import { Page } from '../parts/page.tsx';
import { Row } from '../parts/row.tsx';
import { goTo } from '../route.ts';
import { CloseDay } from '../wrap/close-day.tsx';
import { ReportSection } from '../wrap/report.tsx';
import { rollMatters } from '../wrap/roll-matters.ts';
import { SendSection } from '../wrap/send.tsx';
import { SendDock } from '../wrap/send-dock.tsx';
import { SentList } from '../wrap/sent-list.tsx';
import { wrapSettings } from '../wrap/settings.ts';
import { Unsettled } from '../wrap/unsettled.tsx';
import { useOutgoing } from '../wrap/use-outgoing.ts';
import '../styles/wrap.css';

/** The end of the day: what is not settled, the card, the report, what was sent, and tomorrow. */
export function Wrap() {
  const day = useDay().day.value;
  const { days } = useApp();
  const matters = useMemo(() => rollMatters(day, days.value), [day, days.value]);
  const outgoing = useOutgoing(day, wrapSettings.value, matters);
  const { model } = outgoing.report;
  return (
    <Page tab="wrap" foot={<SendDock outgoing={outgoing} />}>
      <h1 class="unseen">Wrap</h1>
      <Unsettled day={day} matters={model.open} />
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
      <ReportSection {...outgoing} />
      <SendSection outgoing={outgoing} />
      <SentList day={day} />
      <CloseDay model={model} />
    </Page>
  );
}
