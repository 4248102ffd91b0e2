import { useMemo } from 'preact/hooks';
import { ClosingNote } from '../frame/closing/closing-note.tsx';
import { useApp, useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { goTo } from '../frame/route.ts';
import { wrapSettings } from '../frame/sending/settings.ts';
import { Row } from '../kit/row.tsx';
import { CloseDay } from './close-day.tsx';
import { HandOverSection } from './hand-over.tsx';
import { ReceiversOut } from './receivers-out.tsx';
import { ReportSection } from './report.tsx';
import { rollMatters } from './roll-matters.ts';
import { SendSection } from './send.tsx';
import { SendDock } from './send-dock.tsx';
import { SentList } from './sent-list.tsx';
import { Unsettled } from './unsettled.tsx';
import { useOutgoing } from './use-outgoing.ts';
import './wrap.css';

/** The end of the day: open matters, the card, the report, what was sent, and tomorrow. */
export function Wrap() {
  const day = useDay().day.value;
  const { days } = useApp();
  const matters = useMemo(() => rollMatters(day, days.value), [day, days.value]);
  const outgoing = useOutgoing(day, wrapSettings(day.header), matters);
  const { report } = outgoing;
  const { model } = report;
  return (
    <Page tab="wrap" foot={<SendDock outgoing={outgoing} />}>
      <h1 class="unseen">Wrap</h1>
      <ClosingNote changes={report.again ? 0 : (report.revision?.changes.length ?? null)} />
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
      <HandOverSection />
      <ReceiversOut />
      <ReportSection {...outgoing} />
      <SendSection outgoing={outgoing} whose={day.header} />
      <SentList day={day} />
      <CloseDay model={model} />
    </Page>
  );
}
