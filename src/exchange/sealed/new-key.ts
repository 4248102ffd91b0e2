import { isKnown, readFact } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import { type AgreementKey, openedBy, sealedTo } from './agreement.ts';
import { type DayKeys, FIRST_KEY, newestKey, SECRET_BYTES, withKey } from './day-keys.ts';
import type { Bytes, SealingCrypto } from './sealing-crypto.ts';
import type { NewKey } from './statements.ts';
import type { Writer, Writers } from './writers.ts';

const aboutKey = (day: string, number: number, writer: string): string =>
  `key ${number} of ${day} to ${writer}`;

/** Whether the next key can be given to this phone: it has said to which key of its own. */
export const mayBeGiven = ({ role, agreement }: Writer): boolean =>
  role !== 'removed' && agreement !== undefined;

/** Seals the day's next key to every phone that stays. The owner's own key is told apart: it may have no admission yet. */
export async function keyForThoseWhoStay(
  crypto: SealingCrypto,
  day: string,
  { byName, owner, keyNumber }: Writers,
  own: AgreementKey,
  removed: string,
  secret: Bytes,
): Promise<NewKey> {
  const number = keyNumber + 1;
  const to = [...byName.values()].filter((one) => mayBeGiven(one) && one.writer !== removed);
  const keys = new Map(to.map(({ writer, agreement }) => [writer, agreement!]));
  keys.set(owner.writer, own.publicKey);
  const boxes: Record<string, string> = {};
  for (const [writer, agreement] of keys) {
    const box = await sealedTo(crypto, agreement, aboutKey(day, number, writer), secret);
    if (box !== null) boxes[writer] = box;
  }
  return { number, boxes };
}

/** The keys of a day with those that its owner gave to this phone. */
export async function keysGiven(
  crypto: SealingCrypto,
  keys: DayKeys,
  { newKeys }: Writers,
  writer: string | null,
  own: AgreementKey | undefined,
): Promise<DayKeys> {
  let all = keys;
  for (const { number, boxes } of newKeys) {
    const box = writer === null ? undefined : boxes[writer];
    if (!own || !box || all.later?.some((key) => key.number === number)) continue;
    const secret = await openedBy(crypto, own, aboutKey(keys.name, number, writer!), box);
    if (secret?.length === SECRET_BYTES) all = await withKey(crypto, all, number, secret);
  }
  return all;
}

/** The new keys that these facts give, by the fact that does. */
export const newKeysIn = (facts: readonly Envelope[]): Map<FactId, number> =>
  new Map(
    facts.flatMap((fact) => {
      const read = readFact(fact);
      const said = read.ok && isKnown(read.value) && read.value.kind === 'writer-removed' ? read.value : null;
      return said?.newKey ? [[said.id, said.newKey.number] as const] : [];
    }),
  );

/**
 * The number of the key for the next batch: the newest that this phone has, but the batch that gives a new key, and
 * those of its writer before it, must open without it. `unsaid`: the new keys that no batch holds yet.
 */
export const keyToSealWith = (keys: DayKeys, unsaid: ReadonlyMap<FactId, number>): number =>
  Math.min(newestKey(keys), ...[...unsaid.values()].map((given) => given - 1));

/** Every key that this phone has, the first included, by its number. */
export const secretsOf = (first: Uint8Array, { later = [] }: DayKeys): ReadonlyMap<number, Uint8Array> =>
  new Map([[FIRST_KEY, first], ...later.map(({ number, secret }) => [number, secret] as const)]);
