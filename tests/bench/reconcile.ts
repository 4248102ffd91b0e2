// How long it takes to match a whole day's takes to a card, and to list what differs.

import { foldDay } from '../../src/day/fold/fold.ts';
import { recordersOf } from '../../src/day/recorders/rolling.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { type CardFile, cardOf, cardOn, recordCard } from '../reconcile/build-card.ts';
import { filmDay, seeded } from '../reconcile/film-day.ts';
import { dayOfTwoRecorders } from './phone.ts';

const ROUNDS = 9;

export interface ReconcileFigures {
  readonly takes: number;
  readonly recordings: number;
  /** Median milliseconds on a day freshly folded: clocks that agree, and taps, a drift, names and slates that do not. */
  readonly clean: { readonly match: number; readonly differences: number; readonly found: number };
  readonly untidy: { readonly match: number; readonly differences: number; readonly found: number };
  /** No starts, no names and few slates: the hardest case there is, all in one component. */
  readonly hopeless: { readonly match: number; readonly questions: number };
}

/** Matches 300 takes to 500 recordings, 200 of which are another day's. */
export async function run(): Promise<ReconcileFigures> {
  const filmed = filmDay({ takes: 330, seed: 1, fromHour: 4 });
  const day = filmed.day();
  const own = cardOf(day).slice(0, 300);
  const strange = cardOf(filmDay({ takes: 230, seed: 2, fromHour: 5 }).day()).slice(0, 500 - own.length);
  const foreign = strange.map((file, at) => ({
    ...file,
    name: `Y${at}.wav`,
    tape: '6A',
    date: '2026-10-06',
    scene: `${90 + (at % 9)}`,
  }));
  const random = seeded(3);
  const untidy = own.map((file, at): CardFile => {
    const start = Math.round(file.start! * 1.00002 + 90 * 48_000 + (random() - 0.5) * 48_000);
    return {
      ...file,
      start,
      name: random() < 0.5 ? `R${at}.wav` : file.name,
      scene: random() < 0.1 ? '24' : file.scene!,
      circled: random() < 0.1,
    };
  });
  const hopeless = own.map((file, at) => ({
    ...file,
    name: `R${at}.wav`,
    scene: '24',
    take: '1',
    tape: 'X',
  }));
  const fresh = () => foldDay(day.id, filmed.phone.facts);
  const timeOf = async (files: readonly CardFile[]) => {
    const recordings = await recordCard(files);
    const match: number[] = [];
    const differences: number[] = [];
    let found = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      const again = fresh();
      const from = performance.now();
      const matched = matchRecordings(again, recordings);
      const between = performance.now();
      found = differencesOf(again, matched).length;
      match.push(between - from);
      differences.push(performance.now() - between);
    }
    return { match: median(match), differences: median(differences), found };
  };
  return {
    takes: cardOf(day).length,
    recordings: own.length + foreign.length,
    clean: await timeOf([...own, ...foreign]),
    untidy: await timeOf([...untidy, ...foreign]),
    hopeless: await timeHopeless(hopeless),
  };
}

/** Matches the cards of two recorders of 32 tracks, each with every take, to the log of both: milliseconds. */
export async function matchTwoCards(): Promise<{ readonly recordings: number; readonly ms: number }> {
  const made = dayOfTwoRecorders(250);
  const day = foldDay(made.day, made.facts);
  const [first, second] = recordersOf(day).map(({ id }) => id) as [string, string];
  const files = [...cardOn(day, first, 'FIRST 32'), ...cardOn(day, second, 'SECOND 32')];
  const { date } = day.header;
  const recordings = await recordCard(files.map((file) => ({ ...file, date })));
  const times = Array.from({ length: ROUNDS }, () => {
    const fresh = foldDay(made.day, made.facts);
    const from = performance.now();
    const { cards } = matchRecordings(fresh, recordings);
    const ms = performance.now() - from;
    if (cards.length !== 2) throw new Error('The cards were not told apart');
    return ms;
  });
  return { recordings: recordings.length, ms: median(times) };
}

async function timeHopeless(files: readonly CardFile[]): Promise<ReconcileFigures['hopeless']> {
  const { phone } = filmDay({ takes: 0 });
  for (let at = 0; at < 300; at += 1)
    phone.say({
      kind: 'take-logged',
      fields: { kind: 'take', slate: { style: 'lettered', scene: '24', setup: 0 }, number: 1 },
    });
  // Parts that touch would be joined: these start anywhere.
  const recordings = await recordCard(files.map((file, at) => ({ ...file, start: (at + 1) * 48_000 * 300 })));
  const day = phone.day();
  const from = performance.now();
  const { questions } = matchRecordings(day, recordings);
  return { match: performance.now() - from, questions: questions.length };
}

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1]!;
