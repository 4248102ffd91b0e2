import { bytesOf, type Route, routeFor } from '../../app/sharing.ts';
import { bytesText } from '../../report/printed/figures.ts';
import { device } from '../frame/sending/device.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';
import { AskForHead } from './head-lacks.tsx';
import type { Outgoing } from './use-outgoing.ts';
import { useSend } from './use-send.ts';

const SEND_WORD: Record<Route, string> = {
  share: 'Share the report',
  download: 'Download the report',
  copy: 'Copy the report',
};

/** The best way to send that this phone has, near the thumb. */
export function SendDock({ outgoing }: { outgoing: Outgoing }) {
  const send = useSend(outgoing);
  const { report, ready } = outgoing;
  const route = routeFor(device, ready?.files ?? []);
  const bytes = ready?.files.reduce((sum, file) => sum + bytesOf(file).length, 0) ?? 0;
  const files = ready
    ? `${countOf(ready.files.length, 'file')}, ${bytesText(bytes)}`
    : 'files are being made';
  const { since, beside } = report.revision ?? {};
  const compared =
    beside && `compared with ${since} of ${clockTime(beside.compared.at, beside.compared.zone)}`;
  const sent = report.again && `sent ${clockTime(report.again.at, report.again.zone)}`;
  return (
    <div class="send-dock">
      <AskForHead model={report.model} />
      <p>
        <strong>{report.revision ? `Revision ${report.letter}` : 'Sound report'}</strong>
        <span class="soft">{[compared, sent, files].filter(Boolean).join(' · ')}</span>
      </p>
      <Button
        look="solid"
        disabled={!ready || (ready.files.length === 0 && route !== 'copy')}
        onClick={send[route]}
      >
        {SEND_WORD[route]}
      </Button>
    </div>
  );
}
