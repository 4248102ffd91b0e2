import type { Fact, UnknownFact } from '../../facts/fact.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import type { FollowedClock } from '../../time/followed-clock.ts';
import { applyWrites, CHECKPOINT_EVERY, linksAt, writesOfItem } from '../chain/links.ts';
import type { DayMemory, Header, LineItem, Link, TakeId, Voice, Write } from '../model.ts';
import type { SaidOrder } from '../said-order.ts';
import { describeTake, type MutableTake, type OfTake, takeFrom, takeWith } from '../takes.ts';
import { applyUpkeep, type MutableUpkeep } from '../upkeep-facts.ts';
import { fieldsJoined, type JoinedTakes } from './joined-takes.ts';
import { type MutableLineItem, newLineItem } from './line-item.ts';
import { mergeVoice, type PartsList } from './parts-list.ts';

/** A day while it is being folded: the same shape, open to change. */
export interface FoldState {
  readonly id: DayId;
  readonly facts: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: Set<FactId>;
  header: Header;
  readonly voices: Map<string, Voice>;
  readonly parts: PartsList;
  readonly takes: Map<FactId, MutableTake>;
  clock: FollowedClock | null;
  readonly upkeep: MutableUpkeep;
  readonly line: LineItem[];
  readonly takeOrder: FactId[];
  readonly rolls: string[];
  lastAt: number;
  readonly takeItems: Map<TakeId, MutableLineItem>;
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
  lastTake: MutableTake | undefined;
}

/** What holds for the whole day wherever it is said, and what is said of one take. */
export function applyWholeDay(state: FoldState, fact: Fact): void {
  switch (fact.kind) {
    // Most of a day is said of its takes.
    case 'take-logged':
      if (state.joined.has(fact.id)) return;
      state.lastTake = takeFrom(fact);
      state.takes.set(fact.id, state.lastTake);
      return;
    case 'take-described':
    case 'note-added':
      sayOfTake(state, fact);
      return;
    case 'day-described':
      state.header = { ...state.header, ...(fact.fields as Partial<Header>) };
      return;
    case 'voice-described':
      state.voices.set(fact.voice, mergeVoice(state.voices.get(fact.voice), fact.voice, fact.fields));
      state.memory.answersOf = {};
      return;
    case 'part-described':
      state.parts.merge([fact]);
      state.memory.answersOf = {};
      return;
    case 'rig-laid':
      state.parts.merge(fact.parts);
      state.memory.answersOf = {};
      return;
    case 'clock-followed':
      state.clock = { frames: fact.frames, rate: fact.rate, atMs: fact.atMs };
      return;
    default:
      applyUpkeep(state.upkeep, fact);
  }
}

function sayOfTake(state: FoldState, said: OfTake): void {
  const { takes, lastTake } = state;
  const fact = ofWhole(state, said);
  if (state.isShown) {
    const take = takes.get(fact.take);
    if (take) takes.set(fact.take, takeWith(take, fact));
  } else {
    const take = lastTake?.id === fact.take ? lastTake : takes.get(fact.take);
    if (take) describeTake(take, fact);
  }
}

/** What was said of a take that two phones logged, said of the one that it is. */
function ofWhole({ joined, takes }: FoldState, fact: OfTake): OfTake {
  const id = joined.get(fact.take);
  const into = id === undefined ? undefined : takes.get(id);
  if (!into) return fact;
  if (fact.kind === 'note-added') return { ...fact, take: into.id };
  return { ...fact, take: into.id, fields: fieldsJoined(into, fact.fields) };
}

/** Appends the next item to the line, with what it does to the chain unless it is taken back. */
export function pushOnLine(state: FoldState, item: MutableLineItem): void {
  if (state.line.length % CHECKPOINT_EVERY === 0) state.memory.checkpoints.push(new Map(state.tail));
  item.place = state.line.length;
  item.chainBefore = state.chain;
  state.line.push(item);
  if (item.takenBack) return;
  if (item.fact.kind === 'take-logged') state.takeOrder.push(item.fact.id);
  noteRoll(state, item);
  if (!applyWrites(state.tail, item.fact, writesOfItem(item, state.tail.keys()))) return;
  state.highestChain += 1;
  state.chain = state.highestChain;
}

/** Appends a fact that was just said, or one that was here before: the day as it was may hold its item. */
export function pushFact(state: FoldState, fact: Fact): void {
  const item = newLineItem(fact, state.takenBack.has(fact.id) || state.joined.has(fact.id));
  if (fact.kind === 'take-logged') state.takeItems.set(fact.id, item);
  pushOnLine(state, item);
}

/**
 * Builds the line anew from this place on, with these facts before what stood there. What is taken back holds its place.
 * Nothing of it may be resolved.
 */
export function rebuildLine(state: FoldState, from: number, inserted: readonly Fact[] = []): void {
  const { line, takeOrder, takeItems, rolls, memory } = state;
  state.tail = linksAt(state, from);
  state.chain = line[from]!.chainBefore;
  memory.checkpoints.length = Math.ceil(from / CHECKPOINT_EVERY);
  while (takeOrder.length > 0 && takeItems.get(takeOrder.at(-1)!)!.place >= from) takeOrder.pop();
  const later = line.splice(from);
  rolls.length = 0;
  for (const item of line) noteRoll(state, item);
  for (const fact of inserted) pushFact(state, fact);
  for (const { fact } of later) pushFact(state, fact);
}

function noteRoll({ rolls }: FoldState, item: LineItem): void {
  if (item.fact.kind !== 'roll-changed') return;
  for (const [, roll] of writesOfItem(item, []) as readonly Write<string>[])
    if (!rolls.includes(roll)) rolls.push(roll);
}
