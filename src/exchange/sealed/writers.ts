import type { Fact, UnknownFact } from '../../facts/fact.ts';
import { byId } from '../../facts/merge-facts.ts';
import type { AgreementPublic } from './agreement.ts';
import { FIRST_KEY } from './day-keys.ts';
import type { SealingCrypto } from './sealing-crypto.ts';
import { type PublicKey, writerOfKey } from './signing.ts';
import { isSignedStatement, isStatement, type NewKey, type Statement } from './statements.ts';

/** A phone whose key the owner named. */
export interface Writer {
  readonly writer: string;
  readonly key: PublicKey;
  readonly role: 'owner' | 'writer' | 'onlooker' | 'removed';
  readonly name: string;
  readonly job: string;
  /** The database of the phone; only this writer's batches bring its entries. Empty before the owner said its own. */
  readonly database: string;
  /** By which it can be given a new key of the day; missing where it was admitted before phones had one. */
  readonly agreement?: AgreementPublic | undefined;
  /** The last of its batches that counts, once it may not write any more. */
  readonly counted?: number;
  /** It owns the day, or did: it speaks for the entries that were there before anybody had a key. */
  readonly owned?: true;
}

/** Who may write on a day, as far as this phone knows. */
export interface Writers {
  readonly byName: ReadonlyMap<string, Writer>;
  readonly owner: Writer;
  /** How many statements of the owner stand: the next one has the next number. */
  readonly said: number;
  /** The number of the newest key of the day. */
  readonly keyNumber: number;
  /** Those after the first, in order, each sealed to whoever was to stay. */
  readonly newKeys: readonly NewKey[];
}

/**
 * Who may write, from the facts of a day and the key of its first owner. Statements count in the order of their
 * numbers, each only if whoever was the owner by then had signed it; a gap ends them until it is filled.
 */
export async function writersOf(
  crypto: SealingCrypto,
  name: string,
  firstOwner: PublicKey,
  facts: readonly (Fact | UnknownFact)[],
): Promise<Writers> {
  const first = await writerOfKey(crypto, firstOwner);
  const nobody = { name: '', job: '', database: '' };
  const byName = new Map<string, Writer>([
    [first, { writer: first, key: firstOwner, role: 'owner', owned: true, ...nobody }],
  ]);
  let writers: Writers = { byName, owner: byName.get(first)!, said: 0, keyNumber: FIRST_KEY, newKeys: [] };
  for (const statement of facts.filter(isStatement).toSorted(inOrder)) {
    const isNext = statement.number === writers.said + 1 && statement.owner === writers.owner.writer;
    if (!isNext || !(await isSignedStatement(crypto, name, writers.owner.key, statement))) continue;
    writers = await after(crypto, writers, statement);
  }
  return writers;
}

const inOrder = (one: Statement, other: Statement): number => one.number - other.number || byId(one, other);

async function after(crypto: SealingCrypto, writers: Writers, said: Statement): Promise<Writers> {
  const byName = new Map(writers.byName);
  let { owner, newKeys } = writers;
  const change = (writer: string, changed: Partial<Writer>): void => {
    const known = byName.get(writer);
    if (known) byName.set(writer, { ...known, ...changed });
  };
  if (said.kind === 'writer-admitted') {
    const { key, name, job, database, agreement } = said;
    const writer = await writerOfKey(crypto, key);
    // The owner stays the owner, whatever it says of itself.
    const role = writer === owner.writer ? 'owner' : said.role === 'owner' ? 'writer' : said.role;
    const known = byName.get(writer);
    // A key belongs to one database for good: what it said before would no longer be its own.
    const of = known?.database || database;
    byName.set(writer, { ...known, writer, key, role, name, job, database: of, agreement });
  } else if (said.kind === 'writer-removed') {
    if (said.writer !== owner.writer) change(said.writer, { role: 'removed', counted: said.counted });
    // The keys are numbered without a gap, so that everybody means the same by a number.
    if (said.newKey?.number === writers.keyNumber + 1) newKeys = [...newKeys, said.newKey];
  } else if (byName.has(said.to) && byName.get(said.to)!.role === 'writer') {
    change(owner.writer, { role: 'onlooker', counted: said.counted });
    change(said.to, { role: 'owner', owned: true });
    owner = byName.get(said.to)!;
  }
  const keyNumber = newKeys.at(-1)?.number ?? FIRST_KEY;
  return { byName, owner: byName.get(owner.writer)!, said: said.number, keyNumber, newKeys };
}

/** Whether a batch of this writer with this number counts. */
export function standingOf(writers: Writers, name: string, number: number): Writer['role'] | 'foreign' {
  const writer = writers.byName.get(name);
  if (!writer) return 'foreign';
  return writer.counted !== undefined && number <= writer.counted ? 'writer' : writer.role;
}
