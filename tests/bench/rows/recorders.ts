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
import { matchTwoCards } from '../reconcile.ts';
import { medianMs, mediansInTurn, type Row } from '../row.ts';
import { besideSheet, startRow } from './cold-start.ts';
import { folded } from './fold.ts';
import { journalRows } from './journal.ts';
import { heapRows } from './memory.ts';
import { tapRows } from './taps.ts';

const WORDS = 'two recorders of 32 tracks';

/** What costs on a day with two recorders of 32 tracks each that both get everybody, within the budgets of one of 16; the planner's rows are among its own. */
export async function rows(): Promise<Row[]> {
  return [
    ...atTakes(),
    ...folds(),
    reported(),
    await matched(),
    ...(await journalRows([10_000], 'two', `, ${WORDS}`)),
    await coldStart(),
    ...(await tapRows(dayOfTwoRecorders(200), `, ${WORDS}`)),
    ...(await heapRows(dayOfTwoRecorders(600), `600 takes on ${WORDS}`)),
  ];
}

function atTakes(): Row[] {
  const two = atTakesOf(dayOfTwoRecorders(600));
  const one = atTakesOf(dayOfOneRecorder(600));
  const links = medianMs(600, two.links);
  // In turn, as whichever comes first is still being compiled.
  const [ours, value] = mediansInTurn(600, two.answers, one.answers);
  return [
    { work: `recorders: the links at any of 600 takes, ${WORDS}`, ours: links, unit: 'ms', budget: 1 },
    {
      work: `recorders: every answer at any of 600 takes, none remembered, ${WORDS}`,
      ours,
      unit: 'ms',
      other: { by: 'one recorder of 64 tracks', value },
      budget: 1,
    },
  ];
}

/** What is asked at a take, another one each time. */
function atTakesOf(made: GeneratedDay): { readonly links: () => unknown; readonly answers: () => unknown } {
  const day = foldDay(made.day, made.facts);
  const takes = takesInOrder(day).map(({ id }) => id);
  let at = 0;
  const next = (): string => {
    at = (at + 127) % takes.length;
    return takes[at]!;
  };
  return {
    links: () => linksAtTake(day, next()),
    answers: () => {
      day.memory.answersOf = {};
      return answersAtTake(day, next());
    },
  };
}

function folds(): Row[] {
  const size = { tracks: 32, performers: 24, isTwice: true };
  const small = folded(1_000, size);
  const large = folded(10_000, size);
  return [
    { work: `recorders: folding 10,000 facts, ${WORDS}`, ours: large.fold, unit: 'ms' },
    {
      work: `recorders: one more fact on 10,000, ${WORDS}`,
      ours: large.append * 1000,
      unit: 'µs',
      other: { by: 'on 1,000', value: small.append * 1000 },
      ratioBudget: 0.5,
    },
  ];
}

/** As for the 500 recordings of one card. */
const MATCH_MS = 100;

async function matched(): Promise<Row> {
  const { recordings, ms } = await matchTwoCards();
  const work = `recorders: 250 takes matched to ${recordings} recordings on two cards, ${WORDS}`;
  return { work, ours: ms, unit: 'ms', budget: MATCH_MS };
}

async function coldStart(): Promise<Row> {
  const [day, sheet] = await besideSheet(dayOfTwoRecorders(200));
  return startRow(`, ${WORDS}`, day!, sheet!);
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
