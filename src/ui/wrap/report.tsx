import { useState } from 'preact/hooks';
import { type OutgoingFile, type Route, routeFor, sendFiles } from '../../app/sharing.ts';
import { mailDraft } from '../../report/eml.ts';
import { reportMailto } from '../../report/mailto.ts';
import { reportFileName, reportSubject } from '../../report/report-name.ts';
import { changeText } from '../../report/revision.ts';
import { ok } from '../../shared/result.ts';
import { useApp, useDay, useRun } from '../context.ts';
import { device } from '../device.ts';
import { TextField } from '../parts/field.tsx';
import { complain, tell } from '../saying.ts';
import { countOf, listOf } from '../words/chain.ts';
import { FormatChoice } from './format-choice.tsx';
import type { Prepared } from './prepare.ts';
import { ReportText } from './report-text.tsx';
import { recipients, setWrap, wrapSettings } from './settings.ts';
import { SettingsSheet } from './settings-sheet.tsx';

const SEND_WORD: Record<Route, string> = {
  share: 'Share the report',
  download: 'Download the report',
  copy: 'Copy the report',
};

interface ReportProps {
  readonly prepared: Prepared;
  /** What is open besides what the day itself shows. */
  readonly matters: readonly string[];
}

/** The report as it will go out, and the ways it can. */
export function ReportSection({ prepared, matters }: ReportProps) {
  const store = useDay();
  const run = useRun();
  const { clock } = useApp().parts;
  const [choosing, setChoosing] = useState(false);
  const settings = wrapSettings.value;
  const { model, files, text, letter, revision, again, missing } = prepared;
  const route = routeFor(device, files);
  const to = recipients(settings.to);
  const extras = { revision, signature: settings.signature };
  const mail = reportMailto(model, to, reportSubject(model), extras);

  /** What was handed over is a fact of the day; the same report again is not another one. */
  const note = (by: Route | 'mail', sent: readonly OutgoingFile[]): void => {
    const { paper, lines, columns, signature } = settings;
    const made = again?.made ?? {
      paper,
      lines,
      columns: [...columns[lines]],
      signature,
      matters: [...matters],
    };
    const names = sent.map(({ name }) => name);
    run(
      () => ok([{ kind: 'report-sent', letter, route: by, files: names, to, made }]),
      `Report ${letter} sent`,
    );
  };
  const send = async (by: Route, what: readonly OutgoingFile[]): Promise<void> => {
    const result = await sendFiles(device, by, what, reportSubject(model));
    if (!result.ok) complain(result.problem);
    else if (result.value.sent) note(by, what);
  };
  const draft = (): void => {
    const now = clock.now();
    const message = mailDraft({
      to,
      subject: reportSubject(model),
      text,
      files: files.map(({ name, type, content }) => ({ name, type, bytes: bytesOf(content) })),
      at: now.atMs,
      zone: now.zone,
    });
    if (!message.ok) complain(message.problem);
    else {
      const name = reportFileName(model, 'eml', revision ? letter : '');
      device.download({ name, type: 'message/rfc822', content: message.value });
      tell('A mail draft with the files is downloaded');
    }
  };

  return (
    <>
      <section class="section" aria-labelledby="report-head">
        <h2 id="report-head">
          {revision ? `The report, revision ${letter}` : 'The report'}
          {again && ` (sent, nothing changed since)`}
        </h2>
        {revision && !again && (
          <ul class="report-changes">
            {revision.changes.slice(0, 12).map((change) => (
              <li key={changeText(change)}>{changeText(change)}</li>
            ))}
            {revision.changes.length > 12 && <li>{countOf(revision.changes.length - 12, 'more change')}</li>}
          </ul>
        )}
        <ReportText text={text} />
      </section>
      <section class="section report-send" aria-labelledby="send-head">
        <h2 id="send-head">Send it</h2>
        <FormatChoice />
        {missing.length > 0 && (
          <p class="warn">The pages cannot draw {countOf(missing.length, 'character')}; the text has them.</p>
        )}
        <button type="button" class="button button-solid" onClick={() => void send(route, files)}>
          {SEND_WORD[route]}
        </button>
        <p class="soft">{files.map(({ name }) => name).join(', ')}</p>
        <TextField
          label="To, if it is mailed"
          value={settings.to}
          onInput={(value) => setWrap({ to: value })}
          type="email"
        />
        <div class="buttons">
          <a class="button as-button" href={mail.href} onClick={() => note('mail', [])}>
            Mail the text
          </a>
          <button type="button" class="button" onClick={() => void send('copy', [asText(text)])}>
            Copy the text
          </button>
          {route !== 'share' && (
            <button type="button" class="button" onClick={draft}>
              Mail draft with files
            </button>
          )}
          <button type="button" class="button" onClick={() => setChoosing(true)}>
            Paper, columns, signature
          </button>
        </div>
        {mail.leftOut.parts.length > 0 && <p class="soft">{leftOutWords(mail.leftOut)}</p>}
      </section>
      {choosing && <SettingsSheet onClose={() => setChoosing(false)} day={store.day.value} />}
    </>
  );
}

const asText = (content: string): OutgoingFile => ({ name: 'report.txt', type: 'text/plain', content });

const bytesOf = (content: string | Uint8Array): Uint8Array =>
  typeof content === 'string' ? new TextEncoder().encode(content) : content;

const PART_WORDS = {
  head: 'the head',
  layout: 'the track layout',
  open: 'what is not settled',
  takes: 'takes',
  totals: 'the totals',
  changes: 'what changed',
  signature: 'the signature',
} as const;

function leftOutWords({ parts, takes }: ReturnType<typeof reportMailto>['leftOut']): string {
  const out = parts.map((part) => (part === 'takes' ? countOf(takes.length, 'take') : PART_WORDS[part]));
  return `A mail link holds about a page: this one leaves out ${listOf(out)}, and says so. Share the files to send all of it.`;
}
