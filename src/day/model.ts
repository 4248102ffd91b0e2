import type { Fact, FactOf, UnknownFact } from '../facts/fact.ts';
import type { Need, SelectorPosition } from '../facts/kinds/chain-changed.ts';
import type { HeaderFields } from '../facts/kinds/day-described.ts';
import type { DayId, Envelope, PartId, TakeId, VoiceId } from '../facts/kinds/envelope.ts';
import type { PartFields, PartType } from '../facts/kinds/part-described.ts';
import type { Slate, TakeKind, TakeSlate, Unit } from '../facts/kinds/take-logged.ts';
import type { VoiceFields } from '../facts/kinds/voice-described.ts';
import type { FactId } from '../shared/ids.ts';
import type { Open, UnknownWord } from '../shared/open-word.ts';
import type { FollowedClock } from '../time/followed-clock.ts';
import type { RateId } from '../time/rate.ts';
import type { SaidOrder } from './said-order.ts';
import type { Scene } from './scene.ts';
import type { UpkeepSaid } from './upkeep-facts.ts';

/** Recorded fields with defaults filled in. */
type Whole<Fields> = { readonly [Field in keyof Fields]-?: NonNullable<Fields[Field]> };

/** Who or what is wanted on a track. */
export interface Voice extends Whole<VoiceFields> {
  readonly id: VoiceId;
}

export interface Part extends PartFields {
  readonly id: PartId;
  readonly type: Open<PartType>;
  readonly name: string;
  readonly order: number;
}

/** The parts of the rig that have not been removed, each list in reading order. */
export interface Rig {
  readonly byId: ReadonlyMap<PartId, Part>;
  /** Recorders besides the first, which is described in the head of the day; see `recordersOf`. */
  readonly recorders: readonly Part[];
  readonly inputs: readonly Part[];
  readonly tracks: readonly Part[];
  readonly sends: readonly Part[];
  readonly receivers: readonly Part[];
  readonly channels: readonly Part[];
  readonly outputs: readonly Part[];
  readonly selectors: readonly Part[];
  readonly transmitters: readonly Part[];
}

/** A count of frames at an exact rate. */
export interface Stamp {
  readonly frames: number;
  readonly rate: RateId;
}

export interface Note {
  readonly id: FactId;
  readonly track: PartId | undefined;
  readonly text: string;
}

export interface Take {
  readonly id: TakeId;
  readonly kind: Open<TakeKind>;
  readonly slate: TakeSlate;
  readonly number: number;
  readonly start: Stamp | null;
  readonly length: Stamp | null;
  /** The unknown rate of a start or length from a newer version, which cannot be shown here. */
  readonly unreadStart?: UnknownWord | undefined;
  readonly unreadLength?: UnknownWord | undefined;
  readonly rolledAt: number | undefined;
  readonly cutAt: number | undefined;
  readonly circled: boolean;
  readonly noGood: boolean;
  readonly falseStart: boolean;
  readonly tailSlate: boolean;
  /** The main unit's if nothing is said. */
  readonly unit?: Open<Unit>;
  readonly file: string | null;
  readonly notes: readonly Note[];
}

/** What an item writes to a link; `said` if that comes from another fact than the item's own. */
export type Write<Value = unknown> = readonly [key: string, value: Value, said?: Fact];

/** A value written to a link by a fact. */
export interface LinkWrite<Value = unknown> {
  readonly value: Value;
  readonly by: FactId;
  /** That fact's own `seen`: what it knew of other phones. */
  readonly seen?: Envelope['seen'];
}

/** One link of the chain, with the fact behind it. */
export interface Link<Value = unknown> extends LinkWrite<Value> {
  /** Different values from phones that did not know of this one; shown until somebody resolves it. */
  readonly rivals?: readonly LinkWrite<Value>[];
}

/** The links of the chain at one place on the line, by key; see `links.ts`. */
export type Links = ReadonlyMap<string, Link>;

export interface Lead {
  readonly from: PartId | VoiceId | null;
  readonly to: PartId | null;
  readonly position: Open<SelectorPosition>;
}

/** A change or a take, at its place on the line. */
export interface LineItem {
  readonly fact: Fact;
  /** Retracted: it keeps its place for what was put before it, but has no effect. */
  readonly takenBack: boolean;
  /** What it writes instead, after a conflict between phones was resolved. */
  readonly resolved?: readonly Write[];
  /** The number of the chain before it: equal numbers mean equal chains. */
  readonly chainBefore: number;
  /** The index of this item. */
  readonly place: number;
}

export type Header = Whole<HeaderFields>;

/**
 * A day folded from its facts. Never edited: `appendFacts` returns the next one, after which this one must
 * not be read, because both share data that only grows.
 */
export interface Day {
  readonly id: DayId;
  /** All facts in order of ids, retracted ones included. */
  readonly facts: readonly Fact[];
  readonly unknown: readonly UnknownFact[];
  readonly takenBack: ReadonlySet<FactId>;
  readonly header: Header;
  readonly voices: ReadonlyMap<VoiceId, Voice>;
  readonly scenes: ReadonlyMap<string, Scene>;
  readonly rig: Rig;
  readonly takes: ReadonlyMap<TakeId, Take>;
  readonly clock: FollowedClock | null;
  /** Who wrapped the day and when; undefined while it is open. */
  readonly wrap: FactOf<'day-wrapped'> | undefined;
  /** Radio, batteries, timecode, media and cables. */
  readonly upkeep: UpkeepSaid;
  readonly line: readonly LineItem[];
  /** The takes in line order, without retracted ones. */
  readonly takeOrder: readonly TakeId[];
  /** The sound rolls in line order, each once. */
  readonly rolls: readonly string[];
  /** UTC ms of the latest known fact; 0 if there is none. */
  readonly lastAt: number;
  /** Each take's item on the line, retracted or not; see also `itemOnLine`. */
  readonly takeItems: ReadonlyMap<TakeId, LineItem>;
  /** The chain after the last item. */
  readonly tail: Links;
  /** The highest counter of every database that wrote to this day. */
  readonly highest: ReadonlyMap<string, number>;
  /** When each fact was recorded, if several phones wrote this day; null for one phone. */
  readonly order: SaidOrder | null;
  /** Answers already computed for this line. */
  readonly memory: DayMemory;
}

export interface DayMemory {
  /** Copies of the links at intervals along the line; see `links.ts`. */
  readonly checkpoints: Links[];
  /** The key of remembered answers, replaced whenever the rig or the cast changes; see `answers.ts`. */
  answersOf: object;
}

export { isKnown } from '../facts/fact.ts';
// What screens need of the facts, so that they need not know how facts are stored.
export { NEEDS, SELECTOR_POSITIONS } from '../facts/kinds/chain-changed.ts';
export { BIT_DEPTHS, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
export type { ListenerFields } from '../facts/kinds/listener-described.ts';
export { MIC_FIELDS, type MicField } from '../facts/kinds/mic-mounted.ts';
export {
  PART_TYPES,
  PLACES,
  RESERVED_USES,
  type ReservedUse,
  TAPS,
  WEARS,
} from '../facts/kinds/part-described.ts';
export type { MoveWeights, Pins } from '../facts/kinds/plan-settings.ts';
export type { BandFields, TvRaster } from '../facts/kinds/radio-planned.ts';
export { INPUT_KINDS, type InputKind, OUTPUT_KINDS, type OutputKind } from '../facts/kinds/rig-kinds.ts';
export { type RunFields, SNAKE_SIGNALS, type SnakeSignal } from '../facts/kinds/runs-described.ts';
export { TAKE_KINDS, UNITS, type Unit } from '../facts/kinds/take-logged.ts';
export type { CardFields, DeviceFields } from '../facts/kinds/upkeep-logged.ts';
export {
  VOICE_KINDS,
  VOICE_TEXT_LONGEST,
  type VoiceFields,
  type VoiceKind,
  type VoiceText,
} from '../facts/kinds/voice-described.ts';
export type {
  DayId,
  Fact,
  FactId,
  FactOf,
  HeaderFields,
  Need,
  Open,
  PartFields,
  PartId,
  SelectorPosition,
  Slate,
  TakeId,
  TakeKind,
  TakeSlate,
  UnknownFact,
  VoiceId,
};
