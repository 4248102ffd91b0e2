import { type AgreementKey, newAgreementKey } from '../../../src/exchange/sealed/agreement.ts';
import { type DayKeys, dayKeysOf, newDaySecret } from '../../../src/exchange/sealed/day-keys.ts';
import { Intake, type Taken } from '../../../src/exchange/sealed/intake.ts';
import { keyForThoseWhoStay, keyToSealWith, newKeysIn } from '../../../src/exchange/sealed/new-key.ts';
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
  readonly agreement: AgreementKey | undefined;
  #sealed = 0;

  constructor(which: number, keys: DayKeys, key: WriterKey, firstOwner: string, agreement?: AgreementKey) {
    super(which, 0);
    this.keys = keys;
    this.key = key;
    this.agreement = agreement;
    this.#intake = new Intake(parts, {
      day: DAY,
      keys,
      firstOwner,
      own: agreement && { writer: key.writer, agreement },
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

  /** The keys that it joined with, and those that it was given. */
  keysNow(): Promise<DayKeys> {
    return this.#intake.keys();
  }

  /** Seals what this phone said since, or these facts. */
  async seal(facts: readonly Fact[] = this.#unsealed()): Promise<SealedBatch> {
    this.#intake.learn(facts);
    const keys = await this.keysNow();
    const number = keyToSealWith(keys, newKeysIn(facts));
    const batch = await sealBatch(parts, keys, this.key, this.end, facts, number);
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
  async exchange(
    giver: SealedPhone,
    order: (all: SealedBatch[]) => SealedBatch[] = (all) => all,
  ): Promise<void> {
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
    const named = { name: `Holder of ${database}`, job: '', agreement: phone.agreement?.publicKey };
    return this.state({ kind: 'writer-admitted', key: key.publicKey, role, database, ...named });
  }

  /** With a new key for those who stay, if this phone has a key of its own to be given it by. */
  async remove({ key: { writer }, database }: SealedPhone): Promise<SealedBatch> {
    const writers = await this.writers();
    const secret = newDaySecret(nodeCrypto);
    const newKey =
      this.agreement &&
      (await keyForThoseWhoStay(nodeCrypto, this.keys.name, writers, this.agreement, writer, secret));
    const known = this.facts.filter(({ id }) => databaseOf(id) === database).map(({ id }) => counterOf(id));
    return this.state({
      kind: 'writer-removed',
      writer,
      database,
      counted: this.endOf(writer).number,
      upTo: Math.max(0, ...known),
      ...(newKey && { newKey }),
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
  /** Without a key to be given later keys by, as phones of an older version. */
  readonly isOld?: boolean;
}

/** Phones with the keys of one day; the first owns it, and has admitted itself and so many others. */
export async function sharedDay(how: SharedHow = {}) {
  const { phones = 3, admitted = phones, crypto = nodeCrypto, isOld = false } = how;
  const keys = await dayKeysOf(nodeCrypto, newDaySecret(nodeCrypto));
  const own = await newWriterKey(crypto);
  const agreement = async () => (isOld ? undefined : newAgreementKey(crypto));
  const all = [new SealedPhone(0, keys, own, own.publicKey, await agreement())];
  for (let which = 1; which < phones; which += 1)
    all.push(new SealedPhone(which, keys, await newWriterKey(crypto), own.publicKey, await agreement()));
  const [owner] = all as [SealedPhone];
  await owner.admit(owner, 'owner');
  for (const phone of all.slice(1, admitted)) await owner.admit(phone);
  return { keys, owner, all };
}
