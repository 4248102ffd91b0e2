import { useEffect, useMemo, useState } from 'preact/hooks';
import { takeBack } from '../../app/commands/correct.ts';
import { checkOf, type OutgoingFile, routeFor, sendFiles } from '../../app/sharing.ts';
import type { Day } from '../../day/model.ts';
import type { SentReport } from '../../day/wrap/sent-reports.ts';
import { REPORT_FORMATS } from '../../report/printed/report-name.ts';
import { reportAgain } from '../../report/revision/report-to-send.ts';
import { useRun } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { device } from '../frame/sending/device.ts';
import { modelOf } from '../frame/sending/report-model.ts';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { listOf } from '../words/chain.ts';
import { clockTime } from '../words/times.ts';
import { type MadeFiles, makeFiles, outgoingText } from './outgoing-files.ts';
import { ReportText } from './report-text.tsx';

interface AgainProps {
  readonly day: Day;
  readonly sent: SentReport;
  readonly onClose: () => void;
}

/** A sent report, rebuilt from what was known then, and whether it is the same byte for byte. */
export function AgainSheet({ day, sent, onClose }: AgainProps) {
  const run = useRun();
  const report = useMemo(() => reportAgain(day, sent, modelOf), [day, sent]);
  const text = useMemo(() => outgoingText(report, sent.made), [report, sent]);
  const [ready, setReady] = useState<MadeFiles | null>(null);
  useEffect(() => {
    void makeFiles(report, sent.made, REPORT_FORMATS).then(setReady);
  }, [report, sent]);
  const give = async (file: OutgoingFile): Promise<void> => {
    const result = await sendFiles(device, routeFor(device, [file]), [file], file.name);
    if (!result.ok) complain(result.problem);
  };
  return (
    <Sheet
      title={`Report ${sent.letter}, as it was sent`}
      under={`at ${clockTime(sent.at, sent.zone)}${sent.to.length > 0 ? ` to ${listOf(sent.to)}` : ''}`}
      onClose={onClose}
      foot={
        <Button
          onClick={() => run(takeBack([sent.id]), `Report ${sent.letter} marked not sent`) && onClose()}
        >
          It was not sent
        </Button>
      }
    >
      <div class="section report-send">
        <p class="soft">{ready ? sameWords(sent, ready.files) : 'The files are being made again.'}</p>
        <ReportText text={text} />
        <div class="buttons">
          {ready?.files.map((file) => (
            <Button key={file.name} onClick={() => void give(file)}>
              {file.what}
            </Button>
          ))}
        </div>
      </div>
    </Sheet>
  );
}

/** Claims only what was actually compared. */
function sameWords({ files, from }: SentReport, made: readonly OutgoingFile[]): string {
  const checks = from?.checks;
  if (!checks || files.length === 0) return 'Made again from what was known then.';
  const differ = files.filter((name, at) => {
    const file = made.find((one) => one.name === name);
    return !file || checkOf(file) !== checks[at];
  });
  return differ.length === 0
    ? 'Made again from what was known then: each file that went out is the same to the byte.'
    : `This version of the app, or this phone, makes ${listOf(differ)} differently than it was sent.`;
}
