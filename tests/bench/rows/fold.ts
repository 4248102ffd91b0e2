import { type DaySize, generateDay } from '../../../sample-days/generate.ts';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import { linksAtTake } from '../../../src/day/chain/links.ts';
import { appendFacts, foldDay } from '../../../src/day/fold/fold.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { counterOf, idSource } from '../../../src/shared/ids.ts';
import { medianMs, type Row } from '../row.ts';

const SEED = 9;
/** Characters of an id that name its phone and window. */
const WRITER = 11;

const ONE_RECORDER = { tracks: 16, performers: 12 };

/** A day of so many facts, and what one more costs: the median of many appended one after another. */
export function folded(
  facts: number,
  size: Pick<DaySize, 'tracks' | 'performers' | 'isTwice'> = ONE_RECORDER,
): { fold: number; append: number } {
  const takes = Math.max(20, Math.floor(facts / 8));
  const made = generateDay({ seed: SEED, takes, ...size, facts });
  const fold = medianMs(5, () => foldDay(made.day, made.facts));
  let day = foldDay(made.day, made.facts);
  // The phone that said the day says more of it.
  const last = made.facts.at(-1)!;
  const ids = idSource(last.id.slice(-WRITER), counterOf(last.id));
  const append = medianMs(201, () => {
    const [one] = stampFacts([{ kind: 'mute-set', what: 'input', part: 'in2', muted: true }], {
      day: made.day,
      at: last.at + 1,
      zone: 0,
      nextId: ids.next,
    });
    day = appendFacts(day, [one!]);
  });
  return { fold, append };
}

export function rows(): Row[] {
  const [small, middle, large] = [1_000, 10_000, 100_000].map((facts) => ({ facts, ...folded(facts) }));
  const made = generateDay({ seed: SEED, takes: 600, tracks: 16, performers: 14, facts: 6_000 });
  const day = foldDay(made.day, made.facts);
  const takes = takesInOrder(day).map(({ id }) => id);
  const fromStart = medianMs(5, () => {
    const until = takes[300]!;
    return foldDay(
      made.day,
      made.facts.filter(({ id }) => id < until),
    ).tail;
  });
  let at = 0;
  const links = medianMs(600, () => {
    at = (at + 127) % takes.length;
    return linksAtTake(day, takes[at]!);
  });
  const answers = medianMs(600, () => {
    day.memory.answersOf = {};
    at = (at + 127) % takes.length;
    return answersAtTake(day, takes[at]!);
  });
  return [
    ...[small!, middle!, large!].map(
      ({ facts, fold }): Row => ({ work: `fold: ${facts} facts (seed ${SEED})`, ours: fold, unit: 'ms' }),
    ),
    ...[middle!, large!].map(
      ({ facts, append }): Row => ({
        work: `fold: one more fact on ${facts.toLocaleString('en-GB')}`,
        ours: append * 1000,
        unit: 'µs',
        other: { by: 'on 1,000', value: small!.append * 1000 },
        ratioBudget: 0.5,
      }),
    ),
    {
      work: 'fold: the links at any of 600 takes',
      ours: links,
      unit: 'ms',
      other: { by: 'fold from the start', value: fromStart },
      budget: 1,
    },
    { work: 'fold: every answer at any of 600 takes, none remembered', ours: answers, unit: 'ms', budget: 1 },
  ];
}
