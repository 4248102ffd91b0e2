import type { DayId } from '../facts/envelope.ts';
import { type Fact, isKnown, type UnknownFact } from '../facts/fact.ts';
import { counterOf, databaseOf, type FactId } from '../shared/ids.ts';
import type { FollowedClock } from '../time/followed-clock.ts';
import { isOnTheLine, isPlacing, lineOrder } from './line-order.ts';
import { applyWrites, CHECKPOINT_EVERY } from './links.ts';
import type { Day, DayMemory, Header, LineItem, Link, Take, Voice } from './model.ts';
import { factsTakenBack } from './retractions.ts';
import { EMPTY_HEADER, EMPTY_RIG, mergeVoice, PartsList } from './standing.ts';
import { describeTake, noteOn, takeFrom } from './takes.ts';
import { applyUpkeep, newUpkeep, type UpkeepDraft } from './upkeep-facts.ts';

/** A day while it is being folded: the same shape, open to change. */
interface Draft {
  readonly id: DayId;
  readonly facts: Fact[];
  readonly unknown: UnknownFact[];
  takenBack: ReadonlySet<FactId>;
  header: Header;
  readonly voices: Map<string, Voice>;
  readonly parts: PartsList;
  readonly takes: Map<FactId, Take>;
  clock: FollowedClock | null;
  readonly upkeep: UpkeepDraft;
  readonly line: LineItem[];
  readonly takeOrder: FactId[];
  readonly rolls: string[];
  lastAt: number;
  readonly placeOf: Map<FactId, number>;
  readonly tail: Map<string, Link>;
  readonly highest: Map<string, number>;
  readonly memory: DayMemory;
  changes: number;
}

/** What a day was folded in, kept beside it so that the next fact costs no more than itself. */
const drafts = new WeakMap<Day, Draft>();

/** Folds a day from its facts, in any order, each at most once. Never throws on facts that `readFact` accepted. */
export function foldDay(id: DayId, facts: readonly (Fact | UnknownFact)[]): Day {
  const draft: Draft = {
    id,
    facts: inOrder(facts.filter(isKnown)),
    unknown: inOrder(facts.filter((fact): fact is UnknownFact => !isKnown(fact))),
    takenBack: new Set(),
    header: EMPTY_HEADER,
    voices: new Map(),
    parts: new PartsList(EMPTY_RIG),
    takes: new Map(),
    clock: null,
    upkeep: newUpkeep(),
    line: [],
    takeOrder: [],
    rolls: [],
    lastAt: 0,
    placeOf: new Map(),
    tail: new Map(),
    highest: new Map(),
    memory: { checkpoints: [], answersOf: {} },
    changes: 0,
  };
  draft.takenBack = factsTakenBack(draft.facts);
  noteWriters(draft, draft.facts);
  noteWriters(draft, draft.unknown);
  for (const fact of draft.facts) {
    draft.lastAt = Math.max(draft.lastAt, fact.at);
    if (!draft.takenBack.has(fact.id)) applyStanding(draft, fact);
  }
  for (const fact of lineOrder(draft.facts, draft.takenBack)) pushOnLine(draft, fact);
  return finished(draft);
}

/**
 * The day with more facts. Facts that come after all others and move nothing cost only themselves; a correction, or
 * facts from another phone, fold the day anew. `day` must not be read afterwards.
 */
export function appendFacts(day: Day, facts: readonly (Fact | UnknownFact)[]): Day {
  const draft = drafts.get(day);
  const last = day.facts.at(-1)?.id ?? '';
  const isAfter = facts.every((fact, at) => fact.id > (facts[at - 1]?.id ?? last));
  const plain = facts.every((fact) => isKnown(fact) && !isPlacing(fact));
  if (!draft || !isAfter || !plain) return foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);
  noteWriters(draft, facts);
  for (const fact of facts as readonly Fact[]) {
    draft.facts.push(fact);
    draft.lastAt = Math.max(draft.lastAt, fact.at);
    applyStanding(draft, fact);
    if (isOnTheLine(fact)) pushOnLine(draft, fact);
  }
  return finished(draft);
}

const byId = (a: { id: FactId }, b: { id: FactId }): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** The facts in the order of their ids, as which a database gives them anyway. */
function inOrder<T extends { readonly id: FactId }>(facts: T[]): T[] {
  const isSorted = facts.every(({ id }, at) => at === 0 || facts[at - 1]!.id <= id);
  return isSorted ? facts : facts.sort(byId);
}

/** Notes the highest counter of each database. Many facts in a row are of one, and the last of these says it. */
function noteWriters({ highest }: Draft, facts: readonly { readonly id: FactId }[]): void {
  for (const [at, { id }] of facts.entries()) {
    const database = databaseOf(id);
    const next = facts[at + 1];
    if (next && databaseOf(next.id) === database) continue;
    highest.set(database, Math.max(highest.get(database) ?? 0, counterOf(id)));
  }
}

/** What holds for the whole day wherever it is said, and what is said of one take. */
function applyStanding(draft: Draft, fact: Fact): void {
  switch (fact.kind) {
    case 'day-described':
      draft.header = { ...draft.header, ...(fact.fields as Partial<Header>) };
      return;
    case 'voice-described':
      draft.voices.set(fact.voice, mergeVoice(draft.voices.get(fact.voice), fact.voice, fact.fields));
      draft.memory.answersOf = {};
      return;
    case 'part-described':
      draft.parts.merge([fact]);
      draft.memory.answersOf = {};
      return;
    case 'rig-laid':
      draft.parts.merge(fact.parts);
      draft.memory.answersOf = {};
      return;
    case 'take-logged':
      draft.takes.set(fact.id, takeFrom(fact));
      return;
    case 'take-described': {
      const take = draft.takes.get(fact.take);
      if (take) draft.takes.set(fact.take, describeTake(take, fact.fields));
      return;
    }
    case 'note-added': {
      const take = draft.takes.get(fact.take);
      if (take) draft.takes.set(fact.take, noteOn(take, fact));
      return;
    }
    case 'clock-followed':
      draft.clock = { frames: fact.frames, rate: fact.rate, atMs: fact.atMs };
      return;
    default:
      applyUpkeep(draft.upkeep, fact);
  }
}

function pushOnLine(draft: Draft, fact: Fact): void {
  if (draft.line.length % CHECKPOINT_EVERY === 0) draft.memory.checkpoints.push(new Map(draft.tail));
  const takenBack = draft.takenBack.has(fact.id);
  draft.placeOf.set(fact.id, draft.line.length);
  draft.line.push({ fact, takenBack, changesBefore: draft.changes });
  if (takenBack) return;
  if (fact.kind === 'take-logged') draft.takeOrder.push(fact.id);
  if (fact.kind === 'roll-changed' && !draft.rolls.includes(fact.roll)) draft.rolls.push(fact.roll);
  if (applyWrites(draft.tail, fact)) draft.changes += 1;
}

function finished(draft: Draft): Day {
  const { parts, changes, ...rest } = draft;
  const day: Day = { ...rest, rig: parts.rig() };
  drafts.set(day, draft);
  return day;
}

/** How many changes of links the whole line has: the key of the chain as it stands now. */
export const changesIn = (day: Day): number => drafts.get(day)?.changes ?? 0;
