import type { Fact, UnknownFact } from '../facts/fact.ts';
import { knew } from '../facts/kinds/envelope.ts';
import { RATE_IDS } from '../facts/kinds/rate-ids.ts';
import { counterOf, databaseOf } from '../shared/ids.ts';
import { isOneOf } from '../shared/open-word.ts';
import { type FollowedClock, timecodeAt } from '../time/followed-clock.ts';
import { framesPerDay } from '../time/rate.ts';
import { framesBetween, framesToMs } from '../time/timecode.ts';
import { sameSlate } from './slate.ts';

/** How far a phone's clock is behind the first phone's, and how that is known. */
export interface PhoneClock {
  /** Add to this phone's times, in ms. */
  readonly offset: number;
  readonly how: ClockEvidence;
  /** Possible error of the offset, in ms either way. */
  readonly doubt: number;
}

/**
 * Evidence, best first: both phones followed the same timecode; both logged the same take; after an exchange
 * one phone's clock was earlier than what it had received; or none, and both clocks are trusted.
 */
export type ClockEvidence = 'timecode' | 'take' | 'exchange' | 'none';

/**
 * Two ties by hand are each good to a frame or two, and two thumbs on Roll to some seconds. Phones that agree
 * take network time and drift by seconds a day; an exchange only shows how far a clock is off at least
 * (common practice, no source).
 */
const DOUBT_MS: Record<ClockEvidence, number> = {
  timecode: 1000,
  take: 3000,
  exchange: 120_000,
  none: 5000,
};

/** Two takes with the same name and timecodes this close are the same take. */
const SAME_START_MS = 2000;
/** Clocks that differ by more belong to different days and prove nothing. */
const MOST_OFFSET_MS = 12 * 3_600_000;

type AnyFacts = readonly (Fact | UnknownFact)[];

/** One phone's facts, in order of counters. */
interface Phone {
  readonly database: string;
  readonly facts: AnyFacts;
}

/**
 * Every phone's clock relative to the phone with the first fact, which is 0. `facts` in order of ids. Depends
 * only on the facts, so every order of merging gives the same result.
 */
export function phoneClocks(facts: AnyFacts): ReadonlyMap<string, PhoneClock> {
  const phones = phonesOf(facts);
  const clocks = new Map<string, PhoneClock>();
  for (const phone of phones) {
    const first = phones.find(({ database }) => clocks.has(database));
    clocks.set(phone.database, first ? clockBeside(first, phone) : { offset: 0, how: 'none', doubt: 0 });
  }
  return clocks;
}

function phonesOf(facts: AnyFacts): Phone[] {
  const said = new Map<string, (Fact | UnknownFact)[]>();
  for (const fact of facts) {
    const own = said.get(databaseOf(fact.id));
    if (own) own.push(fact);
    else said.set(databaseOf(fact.id), [fact]);
  }
  return [...said].map(([database, own]) => ({ database, facts: own }));
}

function clockBeside(first: Phone, phone: Phone): PhoneClock {
  const { least, most } = exchanged(first, phone);
  const found = byTimecode(first, phone) ?? byTake(first, phone) ?? { offset: 0, how: 'none' as const };
  // Whatever a fact knew of came before it, whatever the clocks say.
  const offset = least > most ? found.offset : Math.min(most, Math.max(least, found.offset));
  if (Math.abs(offset) > MOST_OFFSET_MS) return { offset: 0, how: 'none', doubt: DOUBT_MS.none };
  const how = offset === found.offset ? found.how : 'exchange';
  return { offset, how, doubt: DOUBT_MS[how] };
}

interface Found {
  readonly offset: number;
  readonly how: ClockEvidence;
}

/** From both phones' latest ties to a timecode of one rate. */
function byTimecode(first: Phone, phone: Phone): Found | null {
  const [one, other] = [lastTie(first), lastTie(phone)];
  if (!one || !other || one.rate !== other.rate) return null;
  const ahead = framesBetween(timecodeAt(one, other.atMs), other.frames, one.rate);
  const wrapped = ahead > framesPerDay(one.rate) / 2 ? ahead - framesPerDay(one.rate) : ahead;
  const ms = Math.sign(wrapped) * framesToMs(Math.abs(wrapped), one.rate);
  return { offset: Math.round(ms), how: 'timecode' };
}

const lastTie = ({ facts }: Phone): FollowedClock | undefined =>
  facts.findLast((fact): fact is Extract<Fact, { kind: 'clock-followed' }> => fact.kind === 'clock-followed');

type Logged = Extract<Fact, { kind: 'take-logged' }>;

/** The median over takes that both phones logged independently. */
function byTake(first: Phone, phone: Phone): Found | null {
  const offsets = rolled(first).flatMap((one) =>
    rolled(phone)
      .filter((other) => !knew(one, other.id) && !knew(other, one.id) && isSameTake(one, other))
      .map((other) => one.fields.rolledAt! - other.fields.rolledAt!),
  );
  if (offsets.length === 0) return null;
  offsets.sort((a, b) => a - b);
  return { offset: offsets[offsets.length >> 1]!, how: 'take' };
}

const rolled = ({ facts }: Phone): Logged[] =>
  facts.filter(
    (fact): fact is Logged =>
      fact.kind === 'take-logged' && 'fields' in fact && fact.fields.rolledAt !== undefined,
  );

function isSameTake({ fields: one }: Logged, { fields: other }: Logged): boolean {
  if (!one.slate || !other.slate || !one.start || !other.start) return false;
  if (one.kind !== other.kind || one.number !== other.number || one.start.rate !== other.start.rate)
    return false;
  if (!sameSlate(one.slate, other.slate)) return false;
  const { rate } = one.start;
  if (!isOneOf(RATE_IDS, rate)) return false;
  const apart = framesBetween(one.start.frames, other.start.frames, rate);
  const either = Math.min(apart, framesPerDay(rate) - apart);
  return framesToMs(either, rate) <= SAME_START_MS;
}

/** The offsets that keep everything later than what its phone knew of the other. */
function exchanged(first: Phone, phone: Phone): { readonly least: number; readonly most: number } {
  let [least, most] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { known, by } of knownBefore(first, phone)) least = Math.max(least, known.at - by.at);
  for (const { known, by } of knownBefore(phone, first)) most = Math.min(most, by.at - known.at);
  return { least, most };
}

/**
 * For each time a phone had heard more from another: the last fact it then knew, and the first fact it wrote
 * after that.
 */
function knownBefore(of: Phone, to: Phone) {
  const found: { known: Fact | UnknownFact; by: Fact | UnknownFact }[] = [];
  let [heard, place] = [-1, -1];
  for (const by of to.facts) {
    const counter = by.seen?.[of.database] ?? -1;
    if (counter <= heard) continue;
    heard = counter;
    while (place + 1 < of.facts.length && counterOf(of.facts[place + 1]!.id) <= counter) place += 1;
    if (place >= 0) found.push({ known: of.facts[place]!, by });
  }
  return found;
}
