import type { Fact, FactOf, UnknownFact } from '../../facts/fact.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import type { FollowedClock } from '../../time/followed-clock.ts';
import { applyWrites, CHECKPOINT_EVERY, linksAt, writesOfItem } from '../chain/links.ts';
import type { DayMemory, Header, LineItem, Link, TakeId, Voice, Write } from '../model.ts';
import type { SaidOrder } from '../said-order.ts';
import { mergeScene, type Scene } from '../scene.ts';
import { describeTake, type MutableTake, type OfTake, takeFrom, takeWith } from '../takes.ts';
import { applyUpkeep, type MutableUpkeep } from '../upkeep-facts.ts';
import { fieldsJoined, fieldsLogged, type JoinedTakes } from './joined-takes.ts';
import { type MutableLineItem, newLineItem } from './line-item.ts';
import { mergeVoice, type PartsList } from './parts-list.ts';

/** A day during folding: the same shape, but mutable. */
export interface FoldState {
  readonly id: DayId;
  readonly facts: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: Set<FactId>;
  header: Header;
  readonly voices: Map<string, Voice>;
  readonly scenes: Map<string, Scene>;
  readonly parts: PartsList;
  readonly takes: Map<FactId, MutableTake>;
  clock: FollowedClock | null;
  wrap: FactOf<'day-wrapped'> | undefined;
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
  /** What some said is left out, and what they say next may be. */
  readonly hasLeftOut: boolean;
  /** The number of the current chain: new after every change of links, never reused. */
  chain: number;
  /** The highest chain number so far. */
  highestChain: number;
  /** A take of this day may be held elsewhere: from now on takes are replaced, never edited. */
  isShown: boolean;
  /** Until then, the last logged take: most facts are about it, so this saves a look-up. */
  lastTake: MutableTake | undefined;
}

/** Applies what holds for the whole day, and facts about one take. */
export function applyWholeDay(state: FoldState, fact: Fact): void {
  switch (fact.kind) {
    // First, because most facts of a day are about takes.
    case 'take-logged':
      if (state.joined.has(fact.id)) return;
      state.lastTake = takeFrom(fact);
      addLogs(state, state.lastTake);
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
    case 'scenes-described':
      for (const { scene, fields } of fact.scenes)
        state.scenes.set(scene, mergeScene(state.scenes.get(scene), scene, fields));
      return;
    case 'clock-followed':
      state.clock = { frames: fact.frames, rate: fact.rate, atMs: fact.atMs };
      return;
    case 'day-wrapped':
      state.wrap = fact.wrapped ? fact : undefined;
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

/** What other phones logged of the same take: how it began, and its marks. What is said later stands over it. */
function addLogs({ joined, takeItems, takenBack }: FoldState, take: MutableTake): void {
  for (const [other, into] of joined) {
    const log = takeItems.get(other)?.fact;
    if (into !== take.id || log?.kind !== 'take-logged' || takenBack.has(other)) continue;
    const fields = fieldsLogged(take, log.fields);
    describeTake(take, { ...log, kind: 'take-described', take: take.id, fields });
  }
}

/** Redirects a fact about a joined take to the take it was joined into. */
function ofWhole({ joined, takes }: FoldState, fact: OfTake): OfTake {
  const id = joined.get(fact.take);
  const into = id === undefined ? undefined : takes.get(id);
  if (!into) return fact;
  if (fact.kind === 'note-added') return { ...fact, take: into.id };
  return { ...fact, take: into.id, fields: fieldsJoined(into, fact.fields) };
}

/** Appends the next item to the line and applies it to the chain unless it is retracted. */
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

/** Appends a new fact, or one from an earlier version of the day, which may still hold its own item. */
export function pushFact(state: FoldState, fact: Fact): void {
  const item = newLineItem(fact, state.takenBack.has(fact.id) || state.joined.has(fact.id));
  if (fact.kind === 'take-logged') state.takeItems.set(fact.id, item);
  pushOnLine(state, item);
}

/**
 * Rebuilds the line from this place on, with these facts inserted first. Retracted items keep their
 * places. No item may be part of a resolved conflict.
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
