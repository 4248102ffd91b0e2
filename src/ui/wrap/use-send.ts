import { noteSent } from '../../app/commands/report.ts';
import { bytesOf, checkOf, type OutgoingFile, type Route, sendFiles, sharable } from '../../app/sharing.ts';
import { mailDraft } from '../../report/formats/eml.ts';
import { reportSubject } from '../../report/printed/report-name.ts';
import { useApp, useDay, useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { device } from '../frame/sending/device.ts';
import { recipients, wrapSettings } from '../frame/sending/settings.ts';
import { outgoingName } from './outgoing-files.ts';
import type { Outgoing } from './use-outgoing.ts';

export type Way = Route | 'draft' | 'mail';

const DONE: Record<Way, string> = {
  share: 'shared',
  download: 'downloaded',
  copy: 'copied',
  draft: 'downloaded as an email draft',
  mail: 'opened in mail',
};

/** The ways a report leaves the phone, each straight from a tap. Handing it over is recorded on the day. */
export function useSend({ report, text, made, known, ready }: Outgoing) {
  const run = useRun();
  const { clock } = useApp().parts;
  const { header } = useDay().day.value;
  const subject = reportSubject(report.model);
  const files = ready?.files ?? [];

  const note = (way: Way, sent: readonly OutgoingFile[]): void => {
    const to = recipients(wrapSettings(header).to);
    const outgoing = {
      letter: report.letter,
      route: way === 'draft' ? 'mail' : way,
      files: sent.map(({ name }) => name),
      to,
      made,
      from: { ...known, checks: sent.map(checkOf) },
    } as const;
    run(noteSent(outgoing), `Report ${report.letter} ${DONE[way]}`);
  };
  const send = async (way: Route, what: readonly OutgoingFile[]): Promise<void> => {
    const result = await sendFiles(device, way, what, subject);
    if (!result.ok) complain(result.problem);
    else if (result.value.sent) note(way, what);
  };
  return {
    share: () => void send('share', sharable(device, files)),
    download: () => void send('download', files),
    /** Only the text: pages and tables cannot be pasted. */
    copy: () => void send('copy', [{ name: outgoingName(report, 'txt'), type: 'text/plain', content: text }]),
    mailed: () => note('mail', []),
    draft(): void {
      const now = clock.now();
      const message = mailDraft({
        to: recipients(wrapSettings(header).to),
        subject,
        text,
        files: files.map((file) => ({ name: file.name, type: file.type, bytes: bytesOf(file) })),
        at: now.atMs,
        zone: now.zone,
      });
      if (!message.ok) {
        complain(message.problem);
        return;
      }
      device.download({
        name: outgoingName(report, 'eml'),
        type: 'message/rfc822',
        content: message.value,
      });
      note('draft', files);
    },
  };
}
