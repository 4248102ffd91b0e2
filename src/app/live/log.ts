import type { Problem, Result } from '../../shared/result.ts';
import type { LogPlace } from '../live-places.ts';
import type { Batch } from '../shelf.ts';

export type { LogPlace } from '../live-places.ts';
export type { Batch } from '../shelf.ts';

/** One stream of a server. */
export interface LogStream {
  /** Its name, when it was created and what it lost: one that was deleted, made anew or purged is another. */
  readonly id: string;
  readonly name: string;
  /** What its server goes by; empty for a copy. */
  readonly origin: string;
  /** The number of its last message. */
  readonly last: number;
}

/** A message as the server keeps it. Anybody with the password may have written it. */
export interface LogMessage {
  readonly stream: string;
  readonly sequence: number;
  /** What its subject claims. */
  readonly writer: string;
  readonly bytes: Uint8Array;
  /** How many of this day still come after it. */
  readonly left: number;
}

/** One connection to a server. */
export interface LogConnection {
  /** What phones said here first, then what came from servers elsewhere. */
  readonly streams: readonly LogStream[];
  /** Reads the messages after this number, and those to come; gives how many are there already. */
  read(stream: LogStream, after: number, hear: (message: LogMessage) => void): Promise<Result<number>>;
  /**
   * Resolves when the batch is on the server's disk. `again`: the server refused it as known though nothing sound is
   * there, so it goes under another message id. False: known by that id already.
   */
  give(batch: Batch, again: number): Promise<Result<boolean>>;
  /** Resolves when the connection is over, with the reason. */
  readonly ended: Promise<Problem>;
  close(): void;
}

export type OpenLog = (place: LogPlace, day: string) => Promise<Result<LogConnection>>;
