import { type DayKeys, dayKeysOf, newDaySecret } from '../../../src/exchange/sealed/day-keys.ts';
import { Intake, type Taken } from '../../../src/exchange/sealed/intake.ts';
import type { SealedResult } from '../../../src/exchange/sealed/refusals.ts';
import { type ChainEnd, NO_BATCH, type SealedBatch, sealBatch } from '../../../src/exchange/sealed/seal.ts';
import type { SealingCrypto } from '../../../src/exchange/sealed/sealing-crypto.ts';
import { newWriterKey, type WriterKey } from '../../../src/exchange/sealed/signing.ts';
import { signStatement } from '../../../src/exchange/sealed/statements.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { counterOf, databaseOf } from '../../../src/shared/ids.ts';
import { SetPhone } from '../../day/three-phones.ts';
import { nodePacking } from '../node-packing.ts';
import { nodeCrypto } from './crypto.ts';

export const parts = { crypto: nodeCrypto, packing: nodePacking };
export const DAY = 'day-1';
export const NOON = Date.UTC(2026, 9, 7, 10);

type Said<Kind extends Draft['kind']> = Omit<
  Extract<Draft, { kind: Kind }>,
  'number' | 'owner' | 'signature' | 'before'
>;

/** A phone of a shared day: its facts, its key, and every batch that it has. */
export class SealedPhone extends SetPhone {
  readonly batches = new Map<string, SealedBatch>();
  readonly #intake: Intake;
  readonly keys: DayKeys;
  readonly key: WriterKey;
  #sealed = 0;

  constructor(which: number, keys: DayKeys, key: WriterKey, firstOwner: string) {
    super(which, 0);
    this.keys = keys;
    this.key = key;
    this.#intake = new Intake(parts, {
      day: DAY,
      keys,
      firstOwner,
      facts: [],
      ends: new Map(),
      hashOf: async (writer, number) => this.batches.get(`${writer}.${number}`)?.hash,
    });
  }

  get end(): ChainEnd {
    return this.#intake.ends.get(this.key.writer) ?? NO_BATCH;
  }

  endOf(writer: string): ChainEnd {
    return this.#intake.ends.get(writer) ?? NO_BATCH;
  }

  writers() {
    return this.#intake.writers();
  }

  /** Seals what this phone said since, or these facts. */
  async seal(facts: readonly Fact[] = this.#unsealed()): Promise<SealedBatch> {
    const batch = await sealBatch(parts, this.keys, this.key, this.end, facts);
    this.#intake.learn(facts);
    this.#keep(batch);
    this.#intake.noteOwn(batch);
    return batch;
  }

  /** Says something, and seals it. */
  async tell(draft: Draft, at = NOON): Promise<SealedBatch> {
    this.say(draft, at);
    return this.seal();
  }

  async takeIn(bytes: Uint8Array): Promise<SealedResult<Taken>> {
    const taken = await this.#intake.take(bytes);
    for (const batch of taken.ok && 'opened' in taken.value ? taken.value.opened : []) {
      this.#keep(batch);
      const other = new SetPhone(3, 0);
      other.facts.push(...(batch.facts as Fact[]));
      this.take(other);
    }
    return taken;
  }

  /** Everything the other has, in any order. */
  async exchange(giver: SealedPhone, order: <T>(all: T[]) => T[] = (all) => all): Promise<void> {
    for (const { bytes } of order([...giver.batches.values()])) await this.takeIn(bytes);
  }

  async state(
    said: Said<'writer-admitted'> | Said<'writer-removed'> | Said<'day-passed-on'>,
  ): Promise<SealedBatch> {
    const { said: number } = await this.writers();
    return this.tell(await signStatement(nodeCrypto, this.keys.name, this.key, number + 1, said));
  }

  admit(phone: SealedPhone, role: 'writer' | 'onlooker' | 'owner' = 'writer'): Promise<SealedBatch> {
    const { database, key } = phone;
    const named = { name: `Holder of ${database}`, job: '' };
    return this.state({ kind: 'writer-admitted', key: key.publicKey, role, database, ...named });
  }

  remove({ key: { writer }, database }: SealedPhone): Promise<SealedBatch> {
    const known = this.facts.filter(({ id }) => databaseOf(id) === database).map(({ id }) => counterOf(id));
    return this.state({
      kind: 'writer-removed',
      writer,
      database,
      counted: this.endOf(writer).number,
      upTo: Math.max(0, ...known),
    });
  }

  passOnTo({ key: { writer } }: SealedPhone): Promise<SealedBatch> {
    return this.state({ kind: 'day-passed-on', to: writer, counted: this.end.number + 1 });
  }

  #keep(batch: SealedBatch): void {
    this.batches.set(`${batch.writer}.${batch.number}`, batch);
  }

  #unsealed(): Fact[] {
    const own = this.facts.filter(({ id }) => databaseOf(id) === this.database);
    const facts = own.slice(this.#sealed);
    this.#sealed = own.length;
    return facts;
  }
}

interface SharedHow {
  readonly phones?: number;
  readonly admitted?: number;
  readonly crypto?: SealingCrypto;
}

/** Phones with the keys of one day; the first owns it, and has admitted itself and so many others. */
export async function sharedDay(how: SharedHow = {}) {
  const { phones = 3, admitted = phones, crypto = nodeCrypto } = how;
  const keys = await dayKeysOf(nodeCrypto, newDaySecret(nodeCrypto));
  const own = await newWriterKey(crypto);
  const all = [new SealedPhone(0, keys, own, own.publicKey)];
  for (let which = 1; which < phones; which += 1)
    all.push(new SealedPhone(which, keys, await newWriterKey(crypto), own.publicKey));
  const [owner] = all as [SealedPhone];
  await owner.admit(owner, 'owner');
  for (const phone of all.slice(1, admitted)) await owner.admit(phone);
  return { keys, owner, all };
}
