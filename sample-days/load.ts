import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { foldDay } from '../src/day/fold/fold.ts';
import type { Day } from '../src/day/model.ts';
import { readDayFile } from '../src/facts/day-file/day-file.ts';
import type { DayFile } from '../src/facts/day-file/day-file-facts.ts';
import type { SampleName } from './all-days.ts';

/** The text of a sample day's file. For Node: the app fetches it instead. */
export const sampleText = (name: SampleName): string =>
  readFileSync(join(import.meta.dirname, `${name}.txt`), 'utf8');

/** What the file of a sample day holds; throws where the file is damaged. */
export function loadSampleFile(name: SampleName): DayFile {
  const read = readDayFile(sampleText(name));
  if (!read.ok) throw new Error(`Sample day ${name}: ${JSON.stringify(read.problem)}`);
  return read.value;
}

/** A sample day, folded: `loadSample('small').id` is `'sample-small'`. */
export function loadSample(name: SampleName): Day {
  const { day, facts } = loadSampleFile(name);
  return foldDay(day, facts);
}
