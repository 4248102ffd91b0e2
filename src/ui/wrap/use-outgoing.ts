import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ReportFrom, ReportMade } from '../../app/commands/report.ts';
import type { Day } from '../../day/model.ts';
import { knownOf } from '../../day/wrap/sent-reports.ts';
import { REPORT_FORM } from '../../report/form.ts';
import type { ReportFormat } from '../../report/printed/report-name.ts';
import { type ReportToSend, reportToSend } from '../../report/revision/report-to-send.ts';
import { useApp } from '../frame/context.ts';
import { modelOf } from '../frame/sending/report-model.ts';
import type { WrapSettings } from '../frame/sending/settings.ts';
import { type MadeFiles, makeFiles, outgoingText } from './outgoing-files.ts';

/** The report as it would go out now. */
export interface Outgoing {
  readonly report: ReportToSend;
  readonly text: string;
  readonly made: ReportMade;
  readonly known: Pick<ReportFrom, 'known' | 'unread'>;
  /** Undefined while they are being made: files of an earlier state are never offered. */
  readonly ready: MadeFiles | undefined;
}

/** How long typing or tapping must pause before the files are remade. */
const DEBOUNCE_MS = 150;

/** The report with its files, made before Send is tapped: the share sheet only opens straight from a tap. */
export function useOutgoing(day: Day, settings: WrapSettings, matters: readonly string[]): Outgoing {
  const { clock } = useApp().parts;
  const { formats, paper, lines, columns, signature } = settings;
  const { report, known } = useMemo(
    () => ({ report: reportToSend(day, matters, modelOf), known: knownOf(day) }),
    [day, matters],
  );
  const made = useMemo((): ReportMade => {
    const { atMs: at, zone } = clock.now();
    return {
      ...{ paper, lines, columns: [...columns[lines]], signature, matters: [...matters] },
      form: REPORT_FORM,
      // What goes out again with nothing changed is the same issue.
      issued: report.again?.made.issued ?? { at, zone },
    };
  }, [paper, lines, columns, signature, matters, report, clock]);
  const text = useMemo(() => outgoingText(report, made), [report, made]);
  return { report, text, made, known, ready: useFiles(report, made, formats) };
}

interface Done {
  readonly of: readonly [ReportToSend, ReportMade, readonly ReportFormat[]];
  readonly files: MadeFiles;
}

function useFiles(
  report: ReportToSend,
  made: ReportMade,
  formats: readonly ReportFormat[],
): MadeFiles | undefined {
  const [done, setDone] = useState<Done | undefined>(undefined);
  useEffect(() => {
    const stop = new AbortController();
    const timer = setTimeout(() => {
      void makeFiles(report, made, formats, stop.signal).then((files) => {
        if (!stop.signal.aborted) setDone({ of: [report, made, formats], files });
      });
    }, DEBOUNCE_MS);
    return () => {
      stop.abort();
      clearTimeout(timer);
    };
  }, [report, made, formats]);
  const fits = done?.of[0] === report && done.of[1] === made && done.of[2] === formats;
  return fits ? done.files : undefined;
}
