import type { Day, PartId, TakeId } from '../../day/model.ts';
import { mainAtTake, type Recorder, recordersOf, rollingAtTake } from '../../day/recorders/rolling.ts';
import { assign, FORBIDDEN } from '../../matching/assignment.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { type Logged, loggedTakes } from '../log-and-card/logged.ts';
import { matchUnit, type Pair, type Question, type UnitMatch } from './match-unit.ts';
import { recorderFit } from './recorder-fit.ts';

/** What the cards of one recorder have, matched with the takes as they would be on it. */
export interface CardOfRecorder extends UnitMatch {
  readonly recorder: PartId;
}

/** Recordings that are of one recorder, whichever that is. */
export interface Cards {
  /** By which the user says whose they are. */
  readonly key: string;
  readonly recordings: readonly Recording[];
}

/** Whose cards are whose, as far as the user said so. */
export type SaidOwners = Readonly<Record<string, PartId>>;

/** The cards by recorder, main ones first, and those that are nobody's. */
export interface Owned {
  readonly cards: readonly CardOfRecorder[];
  /** Whose each of the cards is, by its key. */
  readonly owners: ReadonlyMap<string, PartId>;
  readonly others: readonly Cards[];
}

/** Costs are whole, so that sums of them are exact. */
const PER_POINT = 1600;
/** Cards with fewer of their files matched were on another unit, and are nobody's. */
const LEAST_SHARE = 0.5;
/** Any recorder is likelier than none for cards that have the day's takes. */
const NOBODY = 1_000_000 * PER_POINT;

/** Gives each of the cards to the recorder that it fits, at most one to each unless the user says otherwise. */
export function ownersOf(day: Day, all: readonly Cards[], said: SaidOwners): Owned {
  const recorders = recordersOf(day);
  const takesOf = new Map(recorders.map(({ id }) => [id, loggedTakes(day, id)]));
  const matches = new Map<PartId, Map<readonly Recording[], UnitMatch>>(
    recorders.map(({ id }) => [id, new Map()]),
  );
  /** Those of a recorder against its takes: once, though it is asked whether they fit and what they have. */
  const matchOf = (recordings: readonly Recording[], recorder: PartId): UnitMatch => {
    const known = matches.get(recorder)!;
    const match = known.get(recordings) ?? matchUnit(day, takesOf.get(recorder)!, recordings, recorder);
    known.set(recordings, match);
    return match;
  };
  const isKnown = (id: PartId | undefined): id is PartId => id !== undefined && takesOf.has(id);
  const owners = new Map(all.flatMap(({ key }) => (isKnown(said[key]) ? [[key, said[key]] as const] : [])));
  const taken = new Set(owners.values());
  const free = recorders.filter(({ id }) => !taken.has(id));
  const unsaid = all.filter(({ key }) => !owners.has(key));
  for (const [cards, recorder] of fitting(day, unsaid, free, takesOf, matchOf))
    owners.set(cards.key, recorder);
  return {
    owners,
    cards: recorders.flatMap(({ id }) => {
      const [cards, ...others] = all.filter(({ key }) => owners.get(key) === id).map((one) => one.recordings);
      if (!cards) return [];
      return [{ recorder: id, ...matchOf(others.length > 0 ? [cards, ...others].flat() : cards, id) }];
    }),
    others: all.filter(({ key }) => !owners.has(key)),
  };
}

/** The best fit of all together; cards that hardly have a take of the day are nobody's. */
function fitting(
  day: Day,
  all: readonly Cards[],
  recorders: readonly Recorder[],
  takesOf: ReadonlyMap<PartId, readonly Logged[]>,
  matchOf: (recordings: readonly Recording[], recorder: PartId) => UnitMatch,
): (readonly [Cards, PartId])[] {
  if (all.length === 0 || recorders.length === 0) return [];
  const columns = recorders.length + all.length;
  const costs = new Float64Array(all.length * columns).fill(FORBIDDEN);
  for (const [row, { recordings }] of all.entries()) {
    for (const [column, recorder] of recorders.entries()) {
      const takes = takesOf.get(recorder.id)!;
      const match = matchOf(recordings, recorder.id);
      const taken = match.pairs.length + match.questions.length + match.alsoThere.length;
      if (taken < LEAST_SHARE * recordings.length) continue;
      costs[row * columns + column] = -Math.round(recorderFit(day, recorder, match, takes) * PER_POINT);
    }
    costs[row * columns + recorders.length + row] = NOBODY;
  }
  const best = assign({ rows: all.length, columns, costs });
  if (!best.ok) return [];
  return all.flatMap((cards, row) => {
    const recorder = recorders[best.value.columnOf[row]!];
    return recorder ? [[cards, recorder.id] as const] : [];
  });
}

/** What the cards of several recorders have together. */
export interface Together {
  readonly pairs: readonly Pair[];
  readonly questions: readonly Question[];
  readonly recordedMos: readonly Pair[];
  /** Sounding takes that no card has. */
  readonly takesWithout: readonly TakeId[];
  readonly recordingsWithout: readonly Recording[];
  /** What is of a take that another card has already. */
  readonly alsoThere: readonly Recording[];
}

/** Each take has the recording of its main recorder; what others have of it is also there. */
export function together(day: Day, takes: readonly Logged[], cards: readonly CardOfRecorder[]): Together {
  const pairs: Pair[] = [];
  const questions: Question[] = [];
  const recordedMos: Pair[] = [];
  const takesWithout: TakeId[] = [];
  for (const { take } of takes) {
    const inOrder = byWeight(day, take.id, cards);
    if (take.kind === 'mos') {
      recordedMos.push(...inOrder.flatMap((card) => card.mosOf.get(take.id) ?? []).slice(0, 1));
      continue;
    }
    const first = inOrder.find((card) => card.pairOf.has(take.id) || card.questionOf.has(take.id));
    const pair = first?.pairOf.get(take.id);
    if (pair) pairs.push({ ...pair, recorder: first!.recorder });
    else if (first) questions.push(first.questionOf.get(take.id)!);
    else takesWithout.push(take.id);
  }
  const recordingsWithout = cards.flatMap((card) => card.recordingsWithout);
  const used = new Set<Recording | null>([
    ...[...pairs, ...recordedMos].map(({ recording }) => recording),
    ...questions.flatMap(({ choices }) => choices.map(({ recording }) => recording)),
    ...recordingsWithout,
  ]);
  const all = cards.flatMap((card) => [...card.recordings, ...card.alsoThere]);
  return {
    ...{ pairs, questions, recordedMos, takesWithout, recordingsWithout },
    alsoThere: all.filter((one) => !used.has(one)),
  };
}

interface ByTake {
  readonly recorder: PartId;
  readonly pairOf: ReadonlyMap<TakeId, Pair>;
  readonly questionOf: ReadonlyMap<TakeId, Question>;
  readonly mosOf: ReadonlyMap<TakeId, Pair>;
}

const indexed = new WeakMap<CardOfRecorder, ByTake>();

function byTakeOf(card: CardOfRecorder): ByTake {
  const known = indexed.get(card);
  if (known) return known;
  const by = <One extends { readonly take: TakeId }>(list: readonly One[]) =>
    new Map(list.map((one) => [one.take, one]));
  const made: ByTake = {
    recorder: card.recorder,
    pairOf: by(card.pairs),
    questionOf: by(card.questions),
    mosOf: by(card.recordedMos),
  };
  indexed.set(card, made);
  return made;
}

/** The card of the main recorder, then of others that rolled, then of those that did not. */
function byWeight(day: Day, take: TakeId, cards: readonly CardOfRecorder[]): ByTake[] {
  const main = mainAtTake(day, take);
  const rolling = new Set(rollingAtTake(day, take).map(({ id }) => id));
  const weight = ({ recorder }: CardOfRecorder): number =>
    recorder === main ? 0 : rolling.has(recorder) ? 1 : 2;
  return cards.toSorted((a, b) => weight(a) - weight(b)).map(byTakeOf);
}
