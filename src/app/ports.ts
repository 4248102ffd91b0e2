import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';

/** What the list of days shows, stored beside the facts so that the list opens without folding every day. */
export interface DayOutline {
  readonly id: DayId;
  readonly production: string;
  readonly label: string;
  readonly date: string;
  readonly sample: boolean;
  readonly takes: number;
  /** Sound rolls, to notice one used on two days. */
  readonly rolls?: readonly string[];
  readonly facts: number;
  /** UTC ms of the last fact. */
  readonly lastAt: number;
  /** UTC ms of the last export, and how many facts it had. */
  readonly copiedAt?: number | undefined;
  readonly copiedFacts?: number | undefined;
  /** Facts imported without checks from a damaged file, so that an intact one may replace them. */
  readonly unsure?: readonly FactId[];
}

/** Why nothing is saved: the browser refuses a database, or a newer version of the app has upgraded it. */
export type NotKept = 'refused' | 'newer';

/** Whether the phone saves the journal at all, and in which database. */
export interface JournalState {
  /** Six random characters, new with every database. */
  readonly database: string;
  /** False for a journal in memory. */
  readonly kept: boolean;
  readonly because?: NotKept;
  /** True if this start created the database: on first use, or after the browser lost it. */
  readonly begun?: boolean;
}

/** Where facts are stored. Never edited, only repaired; only erasing a day removes its facts. */
export interface Journal {
  readonly state: JournalState;
  days(): Promise<DayOutline[]>;
  /** Everything stored of a day; the reader counts what it cannot read. */
  read(day: DayId): Promise<unknown[]>;
  /**
   * Stores facts in one transaction, all or none; resolves once they are on the disk. Known facts are
   * ignored; a different fact under a known id rejects with `FactIdTwice`. If the store was emptied since the
   * day was read, `held` is written back in the same transaction. Resolves to how many facts were written
   * back, usually 0.
   */
  append(facts: readonly Envelope[], outline: DayOutline, held?: () => readonly Envelope[]): Promise<number>;
  /** Stores intact facts, replacing damaged ones with the same id; the caller knows which those are. */
  mend(facts: readonly Envelope[], outline: DayOutline): Promise<void>;
  /** Updates what the list shows of a day. */
  describe(outline: DayOutline): Promise<void>;
  erase(day: DayId): Promise<void>;
}

/** One action that the database has not accepted yet. */
export interface HeldAction {
  readonly key: string;
  readonly day: DayId;
  /** Null if they can no longer be read. */
  readonly facts: readonly Envelope[] | null;
}

/** A small store apart from the database, for actions that the database refuses: they outlive the window. */
export interface HoldingPlace {
  /** Stores one action and returns its key; null if there is no room here either. */
  keep(day: DayId, facts: readonly Envelope[]): string | null;
  remove(key: string): void;
  /** What closed windows left, oldest first. */
  left(): readonly HeldAction[];
  /** Ids held for a day by any window: new ids must come after them. */
  idsOf(day: DayId): readonly FactId[];
  /** Removes everything held for a day. */
  forget(day: DayId): void;
  /** Calls back when another window closes or changes what it holds; returns a function that stops it. */
  listen(onChange: () => void): () => void;
}

/** Two different facts under one id: a damaged or forged file. Nothing was stored. */
export class FactIdTwice extends Error {
  readonly id: string;

  constructor(id: string) {
    super(`Two different facts have the id ${id}`);
    this.name = 'FactIdTwice';
    this.id = id;
  }
}

/** Where what was read of a day's cards outlives the window. It is no fact: it can be read again. */
export interface CardStore {
  read(day: DayId): Promise<unknown>;
  keep(day: DayId, read: unknown): Promise<void>;
  forget(day: DayId): Promise<void>;
}

/** The phone's clock, UTC ms and minutes east of UTC. */
export interface Clock {
  /** `aheadMs`: how far the clock was seen to be set ahead by hand since the window opened. */
  now(): { readonly atMs: number; readonly zone: number; readonly aheadMs?: number };
}

/** Other windows of this app on this phone. */
export interface Neighbours {
  /** Tells them that a day has new facts, or was erased. */
  tell(day: DayId): void;
  /** Calls back when another window adds facts to a day or erases it; returns a function that stops it. */
  listen(onNews: (day: DayId) => void): () => void;
}
