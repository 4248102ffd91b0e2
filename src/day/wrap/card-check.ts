import { knew } from '../../facts/kinds/envelope.ts';
import type { Day, FactId, FactOf, PartId, TakeId } from '../model.ts';
import type { DifferenceKey, SettledAs } from './card-settlement.ts';

type Checked = FactOf<'card-checked'>;

/** What a check counted about takes; null where an earlier version recorded it. */
export interface CheckedTakes {
  /** Takes with a file, takes without, and takes that may have one of several. */
  readonly matched: number;
  readonly without: readonly TakeId[];
  readonly unsure: readonly TakeId[];
  /** Recordings that are of no take. */
  readonly unlogged: number;
  /** Reading was stopped before the last file. */
  readonly stopped: boolean;
  /** Differences settled as the log and as the card has them. */
  readonly asLogged: number;
  readonly asOnCard: number;
  /** What the cards of each recorder have; empty on a day with one. */
  readonly cards: readonly {
    readonly recorder: PartId;
    readonly takes: number;
    readonly only: readonly TakeId[];
  }[];
  /** Takes with sound that it did not know of: logged since, or on another phone. */
  readonly since: number;
}

/** The last comparison of card and log. */
export interface CardCheck {
  readonly by: FactId;
  /** UTC ms of the check, and minutes east of UTC. */
  readonly atMs: number;
  readonly zone: number;
  readonly files: number;
  readonly recordings: number;
  /** Differences still open then. */
  readonly open: number;
  readonly takes: CheckedTakes | null;
}

/** The card check for the report: null if there was none, or it was retracted. */
export function cardCheckOf(day: Day): CardCheck | null {
  const check = lastCheck(day);
  if (!check) return null;
  const { id: by, at: atMs, zone, files, recordings, open } = check;
  return { by, atMs, zone, files, recordings, open, takes: checkedTakes(day, check) };
}

/** What the last check counted, or undefined. */
export const lastCheck = (day: Day): Checked | undefined => standingChecks(day).at(-1);

const standingChecks = (day: Day): Checked[] =>
  day.facts.filter((fact): fact is Checked => fact.kind === 'card-checked' && !day.takenBack.has(fact.id));

function checkedTakes(day: Day, check: Checked): CheckedTakes | null {
  const { matched, without = [], unsure = [], unlogged = 0, stopped = false, cards = [] } = check;
  if (matched === undefined) return null;
  const sounding = (take: TakeId): boolean => {
    const known = day.takes.get(take);
    return known !== undefined && known.kind !== 'mos';
  };
  return {
    matched,
    without: without.filter(sounding),
    unsure: unsure.filter(sounding),
    unlogged,
    stopped,
    cards: cards.map(({ only = [], ...has }) => ({ ...has, only: only.filter(sounding) })),
    asLogged: settledCount(day, 'log'),
    asOnCard: settledCount(day, 'card'),
    since: [...day.takes.keys()].filter((take) => !knew(check, take) && sounding(take)).length,
  };
}

/**
 * Takes whose file was found missing: by the last check that counted them, or said so since. It stands
 * whatever was made of the difference.
 */
export function takesWithoutFile(day: Day): ReadonlySet<TakeId> {
  const check = standingChecks(day).findLast(({ matched }) => matched !== undefined);
  const said = settled(day).flatMap((fact) =>
    fact.as === 'file-missing' && fact.take && !(check && knew(check, fact.id)) ? [fact.take] : [],
  );
  return new Set([...(check?.without ?? []), ...said]);
}

type Settled = FactOf<'difference-kept'>;

const settled = (day: Day): Settled[] =>
  day.facts.filter((fact): fact is Settled => fact.kind === 'difference-kept' && !day.takenBack.has(fact.id));

const settledCount = (day: Day, as: SettledAs): number =>
  new Set(
    settled(day).flatMap((fact) =>
      (fact.as ?? 'log') === as ? [JSON.stringify([fieldName(fact), fact.values])] : [],
    ),
  ).size;

/** The values for which a difference was settled: by this version, and as earlier ones stored them. */
interface KeptFor {
  readonly values: Set<string | undefined>;
  readonly before: Set<string | undefined>;
}

/** Differences in which the log was kept, or the file is missing, by `fieldName`. */
export type Kept = ReadonlyMap<string, KeptFor>;

/**
 * As above. What was settled as the card has it is not kept: where it differs again, the log was changed
 * since.
 */
export function keptDifferences(day: Day): Kept {
  const kept = new Map<string, KeptFor>();
  for (const fact of settled(day)) {
    if (fact.as !== undefined && fact.as !== 'log' && fact.as !== 'file-missing') continue;
    const name = fieldName(fact);
    const known = kept.get(name) ?? { values: new Set(), before: new Set() };
    kept.set(name, known);
    (fact.as === undefined ? known.before : known.values).add(fact.values);
  }
  return kept;
}

/**
 * Whether the log was kept for this difference and all it covers. Earlier versions stored the `sides` only,
 * or nothing: there it holds for all that has them.
 */
export function isKept(kept: Kept, difference: DifferenceKey, sides = difference.values): boolean {
  const known = kept.get(fieldName(difference));
  if (!known) return false;
  return known.values.has(difference.values) || known.before.has(undefined) || known.before.has(sides);
}

/** The difference as one string: `'["length-differs","","24BT3.wav",""]'`. */
const fieldName = ({ code, take = '', file = '', track = '' }: DifferenceKey): string =>
  JSON.stringify([code, take, file, track]);
