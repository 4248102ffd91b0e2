import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { reportPdf } from '../../src/report/pdf/report-pdf.ts';
import { largeDay } from '../report/large-day.ts';
import { reportFonts as fonts } from '../report/report-fonts.ts';

/** One measured line, in the unit its name says, and what it must stay under. */
export interface Measure {
  readonly name: string;
  readonly value: number;
  readonly ceiling: number;
}

/** The best of several runs: what the code costs when the machine is not busy with something else. */
function best(runs: number, work: () => unknown): number {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run += 1) {
    const from = performance.now();
    work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}

/** A day of 200 takes on 16 tracks, in every format. */
export function run(): Measure[] {
  const size = { takes: 200, tracks: 16 };
  const days = Array.from({ length: 12 }, () => largeDay(size));
  // The first of them warms the code up.
  reportText(reportOf(days.pop()!));
  const cold = best(days.length, () => reportText(reportOf(days.pop()!)));
  // A day on a screen has its answers computed.
  const day = largeDay(size);
  const model = reportOf(day);
  reportCsv(model);
  reportPdf(model, { fonts });
  return [
    { name: '200 × 16, model and text, answers and all, ms', value: cold, ceiling: 60 },
    { name: '200 × 16, model and text, ms', value: best(15, () => reportText(reportOf(day))), ceiling: 20 },
    { name: '200 × 16, CSV, ms', value: best(9, () => reportCsv(model)), ceiling: 20 },
    { name: '200 × 16, HTML, ms', value: best(9, () => reportHtml(model)), ceiling: 20 },
    { name: '200 × 16, PDF, ms', value: best(5, () => reportPdf(model, { fonts })), ceiling: 1500 },
    { name: '200 × 16, PDF, bytes', value: reportPdf(model, { fonts }).bytes.length, ceiling: 400_000 },
  ];
}
