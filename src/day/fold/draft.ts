import type { Fact, UnknownFact } from '../../facts/fact.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import type { FollowedClock } from '../../time/followed-clock.ts';
import { applyWrites, CHECKPOINT_EVERY, linksAt, writesOfItem } from '../chain/links.ts';
import type { DayMemory, Header, LineItem, Link, TakeId, Voice, Write } from '../model.ts';
import type { SaidOrder } from '../said-order.ts';
import { describeTake, type OfTake, type TakeDraft, takeFrom, takeWith } from '../takes.ts';
import { applyUpkeep, type UpkeepDraft } from '../upkeep-facts.ts';
import { fieldsJoined, type JoinedTakes } from './joined-takes.ts';
import { type LineDraft, lineDraft } from './line-item.ts';
import { mergeVoice, type PartsList } from './standing.ts';

/** A day while it is being folded: the same shape, open to change. */
export interface Draft {
  readonly id: DayId;
  readonly facts: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: Set<FactId>;
  header: Header;
  readonly voices: Map<string, Voice>;
  readonly parts: PartsList;
  readonly takes: Map<FactId, TakeDraft>;
  clock: FollowedClock | null;
  readonly upkeep: UpkeepDraft;
  readonly line: LineItem[];
  readonly takeOrder: FactId[];
  readonly rolls: string[];
  lastAt: number;
  readonly takeItems: Map<TakeId, LineDraft>;
  tail: Map<string, Link>;
  readonly highest: Map<string, number>;
  readonly order: SaidOrder | null;
  readonly joined: JoinedTakes;
  readonly memory: DayMemory;
  /** The number of the chain as it stands: another one after every change of links, and none comes twice. */
  chain: number;
  /** The highest number given to a chain. */
  highestChain: number;
  /** Somebody may hold a take of this day: from now on takes are replaced, never edited. */
  isShown: boolean;
  /** Until then, the take that was logged last: most is said of that one, and it need not be looked up. */
  lastTake: TakeDraft | undefined;
}

/** What holds for the whole day wherever it is said, and what is said of one take. */
export function applyStanding(draft: Draft, fact: Fact): void {
  switch (fact.kind) {
    // Most of a day is said of its takes.
    case 'take-logged':
      if (draft.joined.has(fact.id)) return;
      draft.lastTake = takeFrom(fact);
      draft.takes.set(fact.id, draft.lastTake);
      return;
    case 'take-described':
    case 'note-added':
      sayOfTake(draft, fact);
      return;
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
    case 'clock-followed':
      draft.clock = { frames: fact.frames, rate: fact.rate, atMs: fact.atMs };
      return;
    default:
      applyUpkeep(draft.upkeep, fact);
  }
}

function sayOfTake(draft: Draft, said: OfTake): void {
  const { takes, lastTake } = draft;
  const fact = ofWhole(draft, said);
  if (draft.isShown) {
    const take = takes.get(fact.take);
    if (take) takes.set(fact.take, takeWith(take, fact));
  } else {
    const take = lastTake?.id === fact.take ? lastTake : takes.get(fact.take);
    if (take) describeTake(take, fact);
  }
}

/** What was said of a take that two phones logged, said of the one that it is. */
function ofWhole({ joined, takes }: Draft, fact: OfTake): OfTake {
  const id = joined.get(fact.take);
  const into = id === undefined ? undefined : takes.get(id);
  if (!into) return fact;
  if (fact.kind === 'note-added') return { ...fact, take: into.id };
  return { ...fact, take: into.id, fields: fieldsJoined(into, fact.fields) };
}

/** Lays the next item on the line, with what it does to the chain unless it is taken back. */
export function pushOnLine(draft: Draft, item: LineDraft): void {
  if (draft.line.length % CHECKPOINT_EVERY === 0) draft.memory.checkpoints.push(new Map(draft.tail));
  item.place = draft.line.length;
  item.chainBefore = draft.chain;
  draft.line.push(item);
  if (item.takenBack) return;
  if (item.fact.kind === 'take-logged') draft.takeOrder.push(item.fact.id);
  noteRoll(draft, item);
  if (!applyWrites(draft.tail, item.fact, writesOfItem(item, draft.tail.keys()))) return;
  draft.highestChain += 1;
  draft.chain = draft.highestChain;
}

/** Lays a fact that was just said, or one that lay here before: the day as it was may hold its item. */
export function pushFact(draft: Draft, fact: Fact): void {
  const item = lineDraft(fact, draft.takenBack.has(fact.id) || draft.joined.has(fact.id));
  if (fact.kind === 'take-logged') draft.takeItems.set(fact.id, item);
  pushOnLine(draft, item);
}

/**
 * Lays the line again from this place on, with these facts before what stood there. What is taken back holds its place.
 * Nothing of it may be resolved.
 */
export function layAgain(draft: Draft, from: number, inserted: readonly Fact[] = []): void {
  const { line, takeOrder, takeItems, rolls, memory } = draft;
  draft.tail = linksAt(draft, from);
  draft.chain = line[from]!.chainBefore;
  memory.checkpoints.length = Math.ceil(from / CHECKPOINT_EVERY);
  while (takeOrder.length > 0 && takeItems.get(takeOrder.at(-1)!)!.place >= from) takeOrder.pop();
  const later = line.splice(from);
  rolls.length = 0;
  for (const item of line) noteRoll(draft, item);
  for (const fact of inserted) pushFact(draft, fact);
  for (const { fact } of later) pushFact(draft, fact);
}

function noteRoll({ rolls }: Draft, item: LineItem): void {
  if (item.fact.kind !== 'roll-changed') return;
  for (const [, roll] of writesOfItem(item, []) as readonly Write<string>[])
    if (!rolls.includes(roll)) rolls.push(roll);
}
