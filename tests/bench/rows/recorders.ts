import type { GeneratedDay } from '../../../sample-days/generate.ts';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import { linksAtTake } from '../../../src/day/chain/links.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { reportCsv } from '../../../src/report/formats/csv.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { largeDay } from '../../report/large-day.ts';
import { dayOfOneRecorder, dayOfTwoRecorders } from '../phone.ts';
import { medianMs, type Row } from '../row.ts';
import { heapRows } from './memory.ts';
import { tapRows } from './taps.ts';

const WORDS = 'two recorders of 32 tracks';

/** What costs on a day with two recorders of 32 tracks each that both get everybody, within the budgets of one of 16; the planner's rows are among its own. */
export async function rows(): Promise<Row[]> {
  return [
    ...atTakes(),
    reported(),
    ...(await tapRows(dayOfTwoRecorders(200), `, ${WORDS}`)),
    ...(await heapRows(dayOfTwoRecorders(600), `600 takes on ${WORDS}`)),
  ];
}

function atTakes(): Row[] {
  const two = atTakesOf(dayOfTwoRecorders(600));
  const one = atTakesOf(dayOfOneRecorder(600));
  return [
    { work: `recorders: the links at any of 600 takes, ${WORDS}`, ours: two.links, unit: 'ms', budget: 1 },
    {
      work: `recorders: every answer at any of 600 takes, none remembered, ${WORDS}`,
      ours: two.answers,
      unit: 'ms',
      other: { by: 'one recorder of 64 tracks', value: one.answers },
      budget: 1,
    },
  ];
}

function atTakesOf(made: GeneratedDay): { readonly links: number; readonly answers: number } {
  const day = foldDay(made.day, made.facts);
  const takes = takesInOrder(day).map(({ id }) => id);
  let at = 0;
  const next = (): string => {
    at = (at + 127) % takes.length;
    return takes[at]!;
  };
  const links = medianMs(600, () => linksAtTake(day, next()));
  const answers = medianMs(60, () => {
    day.memory.answersOf = {};
    return answersAtTake(day, next());
  });
  return { links, answers };
}

const RUNS = 11;

/** Of a day of 16 tracks it is 40; these are four times as many. */
const REPORT_MS = 4 * 40;

function reported(): Row {
  // Nothing is remembered from the run before: a day of its own for each.
  const days = Array.from({ length: RUNS + 1 }, () => largeDay({ takes: 200, tracks: 32, isTwice: true }));
  const ours = medianMs(RUNS, () => {
    const model = reportOf(days.pop()!);
    return reportText(model).length + reportCsv(model, { lines: 'track' }).length;
  });
  return {
    work: `recorders: 200 takes, model, text and CSV, none remembered, ${WORDS}`,
    ours,
    unit: 'ms',
    budget: REPORT_MS,
  };
}
