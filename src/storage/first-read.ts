import type { DayOutline } from '../app/ports.ts';
import type { Envelope } from '../facts/envelope.ts';

/** What `icons/first-look.js` read, in one transaction, while the app was still on its way. */
export interface FirstRead {
  readonly version: number;
  readonly database: string;
  readonly filling: string | undefined;
  readonly days: DayOutline[];
  /** The day at the address, and all that was stored of it; an empty name where the address says no day. */
  readonly day: string;
  readonly facts: Envelope[];
}

declare global {
  /** Without a version where it came to nothing. */
  var firstRead: Promise<Partial<FirstRead> | undefined> | undefined;
}

/** Gives it once; nothing where there was no database yet, or one of another version than this app's. */
export async function takeFirstRead(version: number): Promise<FirstRead | undefined> {
  const read = await globalThis.firstRead;
  globalThis.firstRead = undefined;
  return read?.version === version && read.database ? (read as FirstRead) : undefined;
}
