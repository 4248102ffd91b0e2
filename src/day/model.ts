import type { Fact, FactOf, UnknownFact } from '../facts/fact.ts';
import type { Need, SelectorPosition } from '../facts/kinds/chain-changed.ts';
import type { HeaderFields } from '../facts/kinds/day-described.ts';
import type { DayId, Envelope, PartId, TakeId, VoiceId } from '../facts/kinds/envelope.ts';
import type { PartFields, PartType } from '../facts/kinds/part-described.ts';
import type { Slate, TakeKind, TakeSlate } from '../facts/kinds/take-logged.ts';
import type { VoiceFields } from '../facts/kinds/voice-described.ts';
import type { FactId } from '../shared/ids.ts';
import type { Open, UnknownWord } from '../shared/open-word.ts';
import type { FollowedClock } from '../time/followed-clock.ts';
import type { RateId } from '../time/rate.ts';
import type { SaidOrder } from './said-order.ts';
import type { UpkeepSaid } from './upkeep-facts.ts';

/** What was said of something field by field, with every field filled. */
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

/** The parts of the rig that are not struck, each list in reading order. */
export interface Rig {
  readonly byId: ReadonlyMap<PartId, Part>;
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
  /** The rate of a start or a length that a newer version counted: it was said, and cannot be told here. */
  readonly unreadStart?: UnknownWord | undefined;
  readonly unreadLength?: UnknownWord | undefined;
  readonly rolledAt: number | undefined;
  readonly cutAt: number | undefined;
  readonly circled: boolean;
  readonly noGood: boolean;
  readonly falseStart: boolean;
  readonly tailSlate: boolean;
  readonly file: string | null;
  readonly notes: readonly Note[];
}

/** What an item of the line writes to a link; `said` where that is by another fact than the one that stands there. */
export type Write<Value = unknown> = readonly [key: string, value: Value, said?: Fact];

/** What was written to a link, by a fact. */
export interface LinkWrite<Value = unknown> {
  readonly value: Value;
  readonly by: FactId;
  /** What that fact knew of other phones, as it says itself. */
  readonly seen?: Envelope['seen'];
}

/** One link of the chain as it stands, with the fact that made it so. */
export interface Link<Value = unknown> extends LinkWrite<Value> {
  /** Other values, said on another phone when neither knew of the other; shown until somebody settles it. */
  readonly rivals?: readonly LinkWrite<Value>[];
}

/** The links of the chain at one place on the line, by what they link; see `links.ts` for the keys. */
export type Links = ReadonlyMap<string, Link>;

export interface Lead {
  readonly from: PartId | VoiceId | null;
  readonly to: PartId | null;
  readonly position: Open<SelectorPosition>;
}

/** A change or a take, at its place on the line. */
export interface LineItem {
  readonly fact: Fact;
  /** Taken back: it holds its place for what was put before it, and does nothing. */
  readonly takenBack: boolean;
  /** What it writes instead, where phones differed and it was said what is true. */
  readonly resolved?: readonly Write[];
  /** The number of the chain before it: two places with one number have one chain. */
  readonly chainBefore: number;
  /** Which item of the line this is. */
  readonly place: number;
}

export type Header = Whole<HeaderFields>;

/**
 * A day, folded from its facts. It is replaced, never edited: `appendFacts` gives the next one and this one must
 * not be read again, because both share what only grows.
 */
export interface Day {
  readonly id: DayId;
  /** All facts in the order of their ids, those taken back included. */
  readonly facts: readonly Fact[];
  readonly unknown: readonly UnknownFact[];
  readonly takenBack: ReadonlySet<FactId>;
  readonly header: Header;
  readonly voices: ReadonlyMap<VoiceId, Voice>;
  readonly rig: Rig;
  readonly takes: ReadonlyMap<TakeId, Take>;
  readonly clock: FollowedClock | null;
  /** What was said of radio, batteries, timecode, media and cables. */
  readonly upkeep: UpkeepSaid;
  readonly line: readonly LineItem[];
  /** The takes in the order of the line, without those taken back. */
  readonly takeOrder: readonly TakeId[];
  /** The sound rolls in the order of the line, each once. */
  readonly rolls: readonly string[];
  /** UTC ms of the latest moment at which anything known was said; 0 before that. */
  readonly lastAt: number;
  /** The item of each take on the line, also where it is taken back; see also `itemOnLine`. */
  readonly takeItems: ReadonlyMap<TakeId, LineItem>;
  /** The chain after the last item of the line. */
  readonly tail: Links;
  /** For every database that wrote into this day, its highest counter. */
  readonly highest: ReadonlyMap<string, number>;
  /** When each thing was said, on a day that several phones wrote; null on a day of one. */
  readonly order: SaidOrder | null;
  /** What has been computed of this line already. */
  readonly memory: DayMemory;
}

export interface DayMemory {
  /** Copies of the links, every so many items of the line; see `links.ts`. */
  readonly checkpoints: Links[];
  /** Under which answers are remembered, another one whenever the rig or the cast is another; see `answers.ts`. */
  answersOf: object;
}

export { isKnown } from '../facts/fact.ts';
// What screens need of the facts, so that they need not know how a fact is stored.
export { NEEDS, SELECTOR_POSITIONS } from '../facts/kinds/chain-changed.ts';
export { BIT_DEPTHS, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
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
export { TAKE_KINDS } from '../facts/kinds/take-logged.ts';
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
