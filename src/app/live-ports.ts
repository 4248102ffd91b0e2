import type { DayId } from '../facts/kinds/envelope.ts';
import type { KeyRing } from './key-ring.ts';
import type { LivePlaces } from './live-places.ts';
import type { Shelf } from './shelf.ts';

/** Live days, as the rest of the app knows them: the engine is loaded only where there is one. */
export interface LivePorts {
  readonly places: LivePlaces;
  /** Keeps the open day in step, if it is live. */
  start(day: DayId): void;
  stop(): void;
  /** What shared days are kept in. */
  engine(): Promise<SharedKeeping>;
  /** Removes what was kept for it. */
  forget(day: DayId): Promise<void>;
}

export interface SharedKeeping {
  readonly ring: KeyRing;
  readonly shelf: Shelf;
}
