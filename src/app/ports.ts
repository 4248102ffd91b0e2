import type { DayId, Envelope } from '../facts/kinds/envelope.ts';
import type { FactId } from '../shared/ids.ts';

/** What the list of days shows, kept beside the facts so that the list opens without folding every day. */
export interface DayOutline {
  readonly id: DayId;
  readonly production: string;
  readonly label: string;
  readonly date: string;
  readonly sample: boolean;
  readonly takes: number;
  /** Sound rolls, to notice one that is used on two days. */
  readonly rolls?: readonly string[];
  readonly facts: number;
  /** UTC ms of the last fact. */
  readonly lastAt: number;
  /** UTC ms when a copy last left the phone, and how many facts it had. */
  readonly copiedAt?: number | undefined;
  readonly copiedFacts?: number | undefined;
  /** Facts that came from a damaged file without checks, so that a whole one may take the place of each. */
  readonly unsure?: readonly FactId[];
}

/** Why nothing is kept: the browser gives no database, or a newer version of the app has changed the one there is. */
export type NotKept = 'refused' | 'newer';

/** What the journal says of itself: whether the phone keeps it at all, and which database it is. */
export interface JournalState {
  /** Six characters made anew with every database. */
  readonly database: string;
  /** False for a journal in memory. */
  readonly kept: boolean;
  readonly because?: NotKept;
  /** True where this start made the database: the first start of all, or one after the browser had lost it. */
  readonly begun?: boolean;
}

/** Where facts are kept. Nothing is ever edited, only mended; erasing a day is the one way to remove its facts. */
export interface Journal {
  readonly state: JournalState;
  days(): Promise<DayOutline[]>;
  /** Everything stored of a day, as stored; what cannot be read is the reader's to tell. */
  read(day: DayId): Promise<unknown[]>;
  /**
   * Keeps facts in one transaction, all or none, and resolves only when they are on the disk. Saying facts again that
   * are already there changes nothing; a different fact under a known id rejects with `FactIdTwice`. Where the store
   * was emptied since the day was read, everything in `held` goes back in the same transaction; resolves to how many
   * facts came back so, mostly 0.
   */
  append(facts: readonly Envelope[], outline: DayOutline, held?: () => readonly Envelope[]): Promise<number>;
  /** Keeps whole facts, also in place of damaged ones under their ids: whoever calls this knows which those are. */
  mend(facts: readonly Envelope[], outline: DayOutline): Promise<void>;
  /** Renews what the list shows of a day. */
  describe(outline: DayOutline): Promise<void>;
  erase(day: DayId): Promise<void>;
}

/** One action that a window held and the database had not taken. */
export interface HeldAction {
  readonly key: string;
  readonly day: DayId;
  /** As they were said; null where they can be read no more. */
  readonly facts: readonly Envelope[] | null;
}

/** A small place apart from the database, for actions that it refuses: they outlive the window that holds them. */
export interface HoldingPlace {
  /** Keeps one action and gives its key; null where there is no room here either. */
  keep(day: DayId, facts: readonly Envelope[]): string | null;
  remove(key: string): void;
  /** What windows that are closed now have left, in the order in which it was said. */
  left(): readonly HeldAction[];
  /** The entries held of a day, by whatever window: what is said next must come after them. */
  idsOf(day: DayId): readonly FactId[];
  /** Removes whatever is held of a day. */
  forget(day: DayId): void;
  /** Calls back when another window was closed, or has changed what is held; returns how to stop. */
  listen(onChange: () => void): () => void;
}

/** Two different facts under one id: a damaged or forged file. Nothing was kept. */
export class FactIdTwice extends Error {
  readonly id: string;

  constructor(id: string) {
    super(`Two different facts have the id ${id}`);
    this.name = 'FactIdTwice';
    this.id = id;
  }
}

/** The phone's clock, UTC ms and minutes east of UTC. */
export interface Clock {
  /** `aheadMs`: how far somebody has set the clock ahead since the window opened, as far as the window could see. */
  now(): { readonly atMs: number; readonly zone: number; readonly aheadMs?: number };
}

/** Other windows of this app on this phone. */
export interface Neighbours {
  /** Tells them that a day has new facts, or none any more. */
  tell(day: DayId): void;
  /** Calls back when another window has new facts of a day, or has erased it; returns how to stop. */
  listen(onNews: (day: DayId) => void): () => void;
}
