import { describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../sample-days/load.ts';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { castInOrder } from '../../src/day/cast-in-order.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { unknownWords } from '../../src/day/unknown-words.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { isKnown } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { neededNow } from '../../src/plan/day/plan-facts.ts';
import { dayPlan } from '../../src/radio/day/day-plan.ts';
import { reportCsv } from '../../src/report/formats/csv.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { dayPicture } from '../../src/report/printed/day-picture.ts';
import { factId } from '../../src/shared/ids.ts';
import { chainWords } from '../../src/ui/cast/words.ts';
import { arrivalWords, inputStateWords, inputsWords, inputWords } from '../../src/ui/rig/words.ts';
import { conflictWords } from '../../src/ui/words/conflicts.ts';
import { factWords } from '../../src/ui/words/facts.ts';
import { statusWords } from '../../src/ui/words/takes.ts';
import { behindWords, stateWords } from '../../src/ui/words/voice.ts';
import { wayWords } from '../../src/ui/wrap/sent-words.ts';
import { upkeepAt } from '../../src/upkeep/due/day-due.ts';
import { runsOf } from '../../src/upkeep/wiring/day-runs.ts';
import { leadsOfDay } from '../../src/upkeep/wiring/day-wiring.ts';
import { wiringSheet } from '../../src/upkeep/wiring/wiring-sheet.ts';
import { planNextSetup } from '../plan/at-once.ts';
import { ENUMERATIONS, type Enumeration, putWord } from './enumerations.ts';
import { EXAMPLE_BODIES } from './example-bodies.ts';

const NEWER = 'of-tomorrow';

/** Enumerations on which a whole fact hangs: with a newer word it is a fact of a newer version. */
const HANGS_ON: ReadonlySet<string> = new Set([
  'mute-set what',
  'clock-followed rate',
  'slate-called slate.style',
  'writer-admitted role',
]);

const nameOf = ({ kind, path }: Enumeration): string => `${kind} ${path.join('.')}`;

const { day: DAY, stored: FULL } = loadSampleFile('full');

/** Everything of one of its takes. */
const DESCRIBED = {
  take: FULL.find(({ kind }) => kind === 'take-logged')!.id,
  fields: EXAMPLE_BODIES['take-logged'].fields,
};

/** The full sample day, with the newer word in the first fact that has a place for it, or in one that is said last. */
function withNewerWord({ kind, path }: Enumeration): { facts: Envelope[]; changed: Envelope } {
  const facts = structuredClone(FULL) as Envelope[];
  for (const fact of facts)
    if (fact.kind === kind && putWord(fact, path, NEWER) > 0) return { facts, changed: fact };
  const last = facts.at(-1)!;
  const changed = {
    ...{ id: factId(9000, last.id.slice(7)), day: DAY, kind, v: 1, at: last.at, zone: last.zone },
    ...structuredClone(kind === 'take-described' ? DESCRIBED : EXAMPLE_BODIES[kind]),
  };
  if (putWord(changed, path, NEWER) === 0) throw new Error(`No place for ${kind} ${path.join('.')}`);
  return { facts: [...facts, changed], changed };
}

/** Whatever the screens, the reports and the checks say of a day. */
function everythingSaid(day: Day): string[] {
  const model = reportOf(day);
  const now = day.lastAt;
  const answers = [answersNow(day), ...day.takeOrder.map((take) => answersAtTake(day, take))];
  const plan = planNextSetup(problemOf(day, new Set(neededNow(day))));
  return [
    ...day.facts.map((fact) => factWords(day, fact)),
    ...day.facts.flatMap((fact) => (fact.kind === 'report-sent' ? wayWords(fact) : [])),
    ...takesInOrder(day).flatMap((take) => statusWords(take)),
    ...castInOrder(day).map(behindWords),
    inputsWords(day.rig.inputs),
    ...answers.flatMap(({ inputs, voices }) => [
      ...inputs.map(inputStateWords),
      ...inputs.map((input) => inputWords(day, input)),
      ...inputs.map(({ reach }) => arrivalWords(day, reach.away)),
      ...voices.map((voice) => `${stateWords(day, voice)}, ${chainWords(day.rig, voice)}`),
    ]),
    ...conflictsOf(day).map((conflict) => conflictWords(day, conflict)),
    reportText(model),
    reportCsv(model),
    reportCsv(model, { lines: 'track' }),
    reportHtml(model),
    JSON.stringify([
      dayPicture(model),
      upkeepAt(day, now),
      runsOf(day),
      wiringSheet(leadsOfDay(day)),
      dayPlan(day),
      plan,
    ]),
  ];
}

describe('a word of an enumeration that only a newer version knows', () => {
  test('the enumerations are found, and those a fact hangs on are among them', () => {
    const names = ENUMERATIONS.map(nameOf);
    expect(names.length).toBeGreaterThan(40);
    for (const name of HANGS_ON) expect(names).toContain(name);
  });

  test.each(ENUMERATIONS.map((one) => [nameOf(one), one] as const))('%s', (name, enumeration) => {
    const { facts, changed } = withNewerWord(enumeration);
    const text = writeDayFile(DAY, 'Newer', facts);
    const read = readDayFile(text);
    if (!read.ok) throw new Error(JSON.stringify(read.problem));
    // Kept as it came, and handed on to the byte.
    expect(read.value.stored.find(({ id }) => id === changed.id)).toEqual(changed);
    expect(writeDayFile(DAY, 'Newer', read.value.stored)).toBe(text);
    // The others stand, and so does this one but for what hangs on the word as a whole.
    const unread = read.value.facts.filter((fact) => !isKnown(fact)).map(({ id }) => id);
    expect(unread).toEqual(HANGS_ON.has(name) ? [changed.id] : []);

    const day = foldDay(DAY, read.value.facts);
    expect(unknownWords(day)).toEqual(HANGS_ON.has(name) ? [] : [NEWER]);
    expect(everythingSaid(day).filter((words) => /undefined|NaN|\[object/.test(words))).toEqual([]);
    expect(reportText(reportOf(day))).toContain(
      HANGS_ON.has(name) ? 'made by a newer version' : 'What a newer version calls',
    );
  });
});
