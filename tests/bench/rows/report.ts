import Papa from 'papaparse';
import { reportCsv } from '../../../src/report/formats/csv.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { largeDay } from '../../report/large-day.ts';
import { run } from '../report.ts';
import { mediansInTurn, type Row } from '../row.ts';

const SIZE = { takes: 200, tracks: 16 };
const RUNS = 41;

const writeAlone = (records: string[][]): string => Papa.unparse(records, { quotes: true, newline: '\r\n' });

/** The fields of a CSV as the npm package reads them back, from which its own writer makes the same text. */
function readyRecords(csv: string): string[][] {
  const { data } = Papa.parse<string[]>(csv.trimEnd(), { newline: '\r\n' });
  if (`${writeAlone(data)}\r\n` !== csv) throw new Error('The npm writer writes something else');
  return data;
}

export function rows(): Row[] {
  const model = reportOf(largeDay(SIZE));
  const records = readyRecords(reportCsv(model, { lines: 'track' }));
  // Nothing is remembered from the run before: a day of its own for each.
  const days = Array.from({ length: RUNS }, () => largeDay(SIZE));
  const report = (): number => {
    const made = reportOf(days.pop()!);
    return reportText(made).length + reportCsv(made, { lines: 'track' }).length;
  };
  const [ours, theirs] = mediansInTurn(days.length - 1, report, () => writeAlone(records));
  const measured = run().map(
    ({ name, value, ceiling }): Row => ({
      work: `report: ${name.replace(/, (ms|bytes)$/, '')}`,
      ours: value,
      unit: name.endsWith('bytes') ? 'bytes' : 'ms',
      budget: ceiling,
    }),
  );
  return [
    {
      work: 'report: 200 × 16, model, text and CSV, none remembered',
      ours,
      unit: 'ms',
      other: { by: `papaparse alone, ${records.length} ready rows`, value: theirs },
      // A wait that nobody feels. The writer beside it only writes what is ready, so no ratio is asked.
      budget: 40,
    },
    ...measured,
  ];
}
