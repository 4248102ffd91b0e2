import { type Signal, signal } from '@preact/signals';
import type { DayId, PartId } from '../../facts/kinds/envelope.ts';
import type { WaveDescription } from '../../wave/file/describe-wave.ts';
import { joinRecordings, type Recording } from '../../wave/recording/recordings.ts';
import type { ByteSource } from '../../wave/riff/header-reader.ts';
import { onErased } from '../erased.ts';
import type { CardStore } from '../ports.ts';
import { type CardRead, type Refused, readCard } from './read-card.ts';

/** The cards of one day as read so far: kept while the app is used, and over a reload. */
export interface CardOnHand {
  readonly recordings: readonly Recording[];
  readonly files: number;
  readonly refused: readonly Refused[];
  /** Reading was stopped before the last file. */
  readonly stopped: boolean;
  /** Whose cards are whose, as far as the user said so. */
  readonly owners: Owners;
  /** While files are being read. */
  readonly reading: { readonly done: number; readonly all: number } | null;
}

/** Recorders by what their files have in common. */
type Owners = Readonly<Record<string, PartId>>;

const NOTHING: CardOnHand = {
  recordings: [],
  files: 0,
  refused: [],
  stopped: false,
  owners: {},
  reading: null,
};

/** What outlives the window. */
interface Held {
  readonly descriptions: readonly WaveDescription[];
  readonly refused: readonly Refused[];
  readonly stopped: boolean;
  /** Missing where an earlier version kept it. */
  readonly owners?: Owners;
}

const NOTHING_HELD: Held = { descriptions: [], refused: [], stopped: false, owners: {} };

/** The check of one day's cards: further files are added to it. */
export class CardsOfDay {
  readonly card: Signal<CardOnHand> = signal(NOTHING);
  #held: Held = NOTHING_HELD;
  #stopper: AbortController | null = null;

  readonly #day: DayId;
  readonly #store: CardStore | undefined;

  constructor(day: DayId, store: CardStore | undefined) {
    this.#day = day;
    this.#store = store;
  }

  /** Reads what an earlier window left. */
  async restore(): Promise<void> {
    const held = await this.#store?.read(this.#day).catch(() => null);
    if (!isHeld(held) || this.#held.descriptions.length > 0 || this.#stopper) return;
    this.#held = held;
    this.#show(null);
  }

  async add(files: readonly ByteSource[]): Promise<void> {
    this.#stopper?.abort();
    const own = new AbortController();
    this.#stopper = own;
    const before = this.#held;
    const read = await readCard(files, own.signal, (now) => {
      if (this.#stopper === own) this.#take(before, now, now);
    });
    if (this.#stopper !== own) return;
    this.#stopper = null;
    this.#take(before, read, null);
    await this.#store?.keep(this.#day, this.#held).catch(() => {});
  }

  /** The user says whose these cards are. */
  async own(key: string, recorder: PartId): Promise<void> {
    this.#held = { ...this.#held, owners: { ...this.#held.owners, [key]: recorder } };
    this.card.value = { ...this.card.peek(), owners: this.#held.owners ?? {} };
    await this.#store?.keep(this.#day, this.#held).catch(() => {});
  }

  stop(): void {
    this.#stopper?.abort();
  }

  /** What is being read is not kept either. */
  drop(): void {
    this.#stopper?.abort();
    this.#stopper = null;
    this.#held = NOTHING_HELD;
    this.#show(null);
  }

  /** Starts again with no card. */
  async clear(): Promise<void> {
    this.drop();
    await this.#store?.forget(this.#day).catch(() => {});
  }

  #take(before: Held, now: CardRead, reading: CardRead | null): void {
    this.#held = {
      owners: this.#held.owners ?? {},
      descriptions: together(before.descriptions, now.descriptions),
      refused: [
        ...before.refused.filter(({ name }) => !now.refused.some((one) => one.name === name)),
        ...now.refused,
      ],
      stopped: reading === null && (before.stopped || now.done < now.all),
    };
    this.#show(reading);
  }

  /** Recordings are joined once all files are there. */
  #show(reading: CardRead | null): void {
    const { descriptions, refused, stopped, owners = {} } = this.#held;
    this.card.value = {
      recordings: reading ? this.card.peek().recordings : joinRecordings(descriptions),
      files: descriptions.length,
      refused,
      stopped,
      owners,
      reading: reading && { done: reading.done, all: reading.all },
    };
  }
}

/** A file chosen again takes the place of what was read of it. */
function together(
  before: readonly WaveDescription[],
  now: readonly WaveDescription[],
): readonly WaveDescription[] {
  const keyOf = ({ name, size, resolved }: WaveDescription): string =>
    JSON.stringify([name, size, resolved.start?.samples]);
  const again = new Set(now.map(keyOf));
  return [...before.filter((one) => !again.has(keyOf(one))), ...now];
}

const isHeld = (held: unknown): held is Held =>
  typeof held === 'object' && held !== null && Array.isArray((held as Held).descriptions);

const known = new Map<DayId, CardsOfDay>();

// The same day may be imported again, and is not checked yet then.
onErased((day) => {
  known.get(day)?.drop();
  known.delete(day);
});

/** The one check of a day in this window. */
export function cardsOf(day: DayId, store: CardStore | undefined): CardsOfDay {
  const there = known.get(day);
  if (there) return there;
  const made = new CardsOfDay(day, store);
  known.set(day, made);
  void made.restore();
  return made;
}
