import { REPORT_FORMATS, type ReportFormat } from '../../report/printed/report-name.ts';
import { setWrap, type Whose, wrapSettings } from '../frame/sending/settings.ts';
import { Button } from '../kit/button.tsx';

const NAMES: Record<ReportFormat, string> = {
  pdf: 'Pages (PDF)',
  csv: 'Table, own columns (CSV)',
  plain: 'Table (CSV)',
  otio: 'Open timeline (OTIO)',
  txt: 'Text',
  html: 'One web page',
};

/** Which files go out; at least one does. */
export function FormatChoice({ whose }: { whose: Whose }) {
  const { formats } = wrapSettings(whose);
  const toggle = (format: ReportFormat): void => {
    const next = REPORT_FORMATS.filter((one) =>
      one === format ? !formats.includes(one) : formats.includes(one),
    );
    if (next.length > 0) setWrap(whose, { formats: next });
  };
  return (
    <div class="buttons" role="group" aria-label="Files to send">
      {REPORT_FORMATS.map((format) => (
        <Button key={format} pressed={formats.includes(format)} onClick={() => toggle(format)}>
          {NAMES[format]}
        </Button>
      ))}
    </div>
  );
}
