import { useMemo, useState } from 'preact/hooks';
import { type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import { conflictsOf } from '../../day/conflicts.ts';
import { reportCsv } from '../../report/csv.ts';
import { reportMailto } from '../../report/mailto.ts';
import { type ReportModel, reportOf } from '../../report/model.ts';
import { reportFileName, reportSubject } from '../../report/report-name.ts';
import { reportText } from '../../report/text.ts';
import { useDay } from '../context.ts';
import { device } from '../device.ts';
import { Choice, TextField } from '../parts/field.tsx';
import { complain, tell } from '../saying.ts';
import { countOf, listOf } from '../words/chain.ts';
import { conflictMatters } from './conflict-matters.ts';
import { Unsettled } from './unsettled.tsx';

type CsvLines = 'take' | 'track';

/** The report as it stands now. Its files are made with it, because the share sheet opens only straight from a tap. */
export function ReportSection() {
  const day = useDay().day.value;
  const [lines, setLines] = useState<CsvLines>('take');
  const [to, setTo] = useState('');
  const model = useMemo(() => reportOf(day, conflictMatters(day, conflictsOf(day))), [day]);
  const text = useMemo(() => reportText(model), [model]);
  const files = useMemo(() => reportFiles(model, text, lines), [model, text, lines]);
  const route = routeFor(device, files);
  const recipients = to.split(/[\s,;]+/).filter(Boolean);
  const mail = reportMailto(model, recipients, reportSubject(model));

  const send = async (): Promise<void> => {
    const result = await sendFiles(device, route, files, reportSubject(model));
    if (!result.ok) complain(result.problem);
    else if (result.value.sent) tell(route === 'share' ? 'Handed over' : 'Downloaded');
  };
  const copy = async (): Promise<void> => {
    const result = await sendFiles(device, 'copy', files.slice(0, 1), '');
    if (result.ok) tell('The report is copied');
    else complain(result.problem);
  };
  return (
    <>
      <Unsettled day={day} matters={model.open} />
      <section class="section" aria-labelledby="report-head">
        <h2 id="report-head">The report</h2>
        <pre class="report-text">{text}</pre>
      </section>
      <section class="section report-send" aria-labelledby="send-head">
        <h2 id="send-head">Send it</h2>
        <Choice
          label="The table has"
          value={lines}
          options={[
            { value: 'take', name: 'one line a take' },
            { value: 'track', name: 'one line a track and take' },
          ]}
          onChoose={setLines}
        />
        <button type="button" class="button button-solid" onClick={() => void send()}>
          {route === 'share'
            ? 'Share the files'
            : route === 'download'
              ? 'Download the files'
              : 'Copy the report'}
        </button>
        <p class="soft">{files.map(({ name }) => name).join(', ')}</p>
        <TextField label="Mail to" value={to} onInput={setTo} type="email" />
        <div class="buttons">
          <a class="button as-button" href={mail.href}>
            Mail the text
          </a>
          <button type="button" class="button" onClick={() => void copy()}>
            Copy the text
          </button>
        </div>
        {mail.leftOut.parts.length > 0 && <p class="soft">{leftOutWords(mail.leftOut)}</p>}
      </section>
    </>
  );
}

function reportFiles(model: ReportModel, text: string, lines: CsvLines): OutgoingFile[] {
  return [
    { name: reportFileName(model, 'txt'), type: 'text/plain', content: text },
    {
      name: reportFileName(model, 'csv'),
      type: 'text/csv',
      content: reportCsv(model, { lines, byteOrderMark: true }),
    },
  ];
}

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
