import type { DayId } from '../facts/envelope.ts';
import type { Fact, UnknownFact } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';
import type { FollowedClock } from '../time/followed-clock.ts';
import { applyWrites, CHECKPOINT_EVERY, linksAt } from './links.ts';
import type { DayMemory, Header, LineItem, Link, Take, Voice } from './model.ts';
import { mergeVoice, type PartsList } from './standing.ts';
import { takeFrom, takeWith } from './takes.ts';
import { applyUpkeep, type UpkeepDraft } from './upkeep-facts.ts';

/** A day while it is being folded: the same shape, open to change. */
export interface Draft {
  readonly id: DayId;
  readonly facts: Fact[];
  readonly unknown: UnknownFact[];
  readonly takenBack: Set<FactId>;
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
  tail: Map<string, Link>;
  readonly highest: Map<string, number>;
  readonly memory: DayMemory;
  /** The number of the chain as it stands: another one after every change of links, and none comes twice. */
  chain: number;
  /** The highest number given to a chain. */
  highestChain: number;
}

/** What holds for the whole day wherever it is said, and what is said of one take. */
export function applyStanding(draft: Draft, fact: Fact): void {
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
    case 'take-described':
    case 'note-added': {
      const take = draft.takes.get(fact.take);
      if (take) draft.takes.set(fact.take, takeWith(take, fact));
      return;
    }
    case 'clock-followed':
      draft.clock = { frames: fact.frames, rate: fact.rate, atMs: fact.atMs };
      return;
    default:
      applyUpkeep(draft.upkeep, fact);
  }
}

/** Lays the next fact on the line, with what it does to the chain unless it is taken back. */
export function pushOnLine(draft: Draft, fact: Fact): void {
  if (draft.line.length % CHECKPOINT_EVERY === 0) draft.memory.checkpoints.push(new Map(draft.tail));
  const takenBack = draft.takenBack.has(fact.id);
  draft.placeOf.set(fact.id, draft.line.length);
  draft.line.push({ fact, takenBack, chainBefore: draft.chain });
  if (takenBack) return;
  if (fact.kind === 'take-logged') draft.takeOrder.push(fact.id);
  noteRoll(draft, fact);
  if (!applyWrites(draft.tail, fact)) return;
  draft.highestChain += 1;
  draft.chain = draft.highestChain;
}

/** Lays the line again from this place on, with these facts before what stood there. What is taken back holds its place. */
export function layAgain(draft: Draft, from: number, inserted: readonly Fact[] = []): void {
  const { line, takeOrder, rolls, memory } = draft;
  draft.tail = linksAt(draft, from);
  draft.chain = line[from]!.chainBefore;
  memory.checkpoints.length = Math.ceil(from / CHECKPOINT_EVERY);
  while (takeOrder.length > 0 && draft.placeOf.get(takeOrder.at(-1)!)! >= from) takeOrder.pop();
  const later = line.splice(from);
  rolls.length = 0;
  for (const { fact, takenBack } of line) if (!takenBack) noteRoll(draft, fact);
  for (const fact of inserted) pushOnLine(draft, fact);
  for (const { fact } of later) pushOnLine(draft, fact);
}

function noteRoll({ rolls }: Draft, fact: Fact): void {
  if (fact.kind === 'roll-changed' && !rolls.includes(fact.roll)) rolls.push(fact.roll);
}
