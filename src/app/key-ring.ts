import type { AgreementKey } from '../exchange/sealed/agreement.ts';
import type { DayKeys } from '../exchange/sealed/day-keys.ts';
import type { PublicKey, WriterKey } from '../exchange/sealed/signing.ts';
import type { DayId } from '../facts/kinds/envelope.ts';

/** What this phone needs to read a shared day, and to write on it. */
export interface HeldKeys {
  readonly keys: DayKeys;
  /** That of the first key, to let others in; an onlooker has it too, since it reads. */
  readonly secret: Uint8Array;
  /** Null for an onlooker. */
  readonly key: WriterKey | null;
  /** By which it is given later keys of the day; missing for an onlooker, and where it joined before phones had one. */
  readonly agreement?: AgreementKey;
  /** Of the day's first owner, from the join code. */
  readonly firstOwner: PublicKey;
  /** The one-time word of the code that this phone joined with, to ask with. */
  readonly word?: string;
  /** It made itself another key, because another phone writes under the one that it had. */
  readonly isRenewed?: true;
  /** The one-time words that this phone showed and that nobody has asked with yet. */
  readonly offered?: readonly Offered[];
}

/** What a join code offers: to write, to look on, or to have the day handed over. */
export type Offer = 'writer' | 'onlooker' | 'owner';

export interface Offered {
  readonly word: string;
  readonly offer: Exclude<Offer, 'onlooker'>;
}

/** Where the keys of shared days are kept. */
export interface KeyRing {
  read(day: DayId): Promise<HeldKeys | undefined>;
  keep(day: DayId, held: HeldKeys): Promise<void>;
  /** The day of this public name; undefined if this phone has no key of it. */
  find(name: string): Promise<DayId | undefined>;
}
