import type { Envelope } from '../../facts/kinds/envelope.ts';
import type { Batch } from './log.ts';

/** What a batch held. */
export interface OpenedBatch extends Batch {
  readonly facts: readonly Envelope[];
  /** What `waits` said of it, if it had to wait. */
  readonly waited?: string;
}

/**
 * What came of a batch: itself and those that waited for it, and which of those that waited are none of this day's; or
 * that it waits for one that is not here yet, and what it goes by until then; or that it is not of this day's writers;
 * or that its writer signed another one with this number.
 */
export type Opened =
  | { readonly opened: readonly OpenedBatch[]; readonly refused: readonly string[] }
  | { readonly waits: string }
  | 'refused'
  | 'number-twice';

/** Seals the facts of one day and opens what others sealed: the keys are its business alone. */
export interface Sealer {
  /** What servers call the day: nobody can tell which it is. Safe in a subject. */
  readonly day: string;
  /** The name of this phone's key; null for an onlooker. */
  readonly writer: string | null;
  /** Those that a batch of this phone may hold: what another writer said is that writer's to give. */
  maySeal(facts: readonly Envelope[]): Promise<readonly Envelope[]>;
  /** Whether the owner has let this phone write. */
  isAdmitted(): Promise<boolean>;
  /** Whether the day has a newer key than this phone was given: then it neither reads what follows nor adds to it. */
  lacksKey(): Promise<boolean>;
  /** Whether a batch ends with this fact: what follows a new key is sealed with it. */
  endsBatch(fact: Envelope): boolean;
  /** As the next batch of this phone. */
  seal(facts: readonly Envelope[]): Promise<Batch>;
  /** Whose these bytes claim to be; null for what is no batch. */
  claimed(bytes: Uint8Array): Pick<Batch, 'writer' | 'number'> | null;
  /** One that waits is kept here: it needs not be brought again. */
  open(bytes: Uint8Array): Promise<Opened>;
}
