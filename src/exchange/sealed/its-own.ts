import { readFact } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import { databaseOf } from '../../shared/ids.ts';
import { fail, ok } from '../../shared/result.ts';
import type { SealedResult } from './refusals.ts';
import type { SealingCrypto } from './sealing-crypto.ts';
import { isSignedStatement, isStatement, type Statement } from './statements.ts';
import type { Writers } from './writers.ts';

/**
 * A writer brings the entries of its own phone; only an owner brings those of others too, from before they had keys.
 * What is said of who may write must be signed by an owner, and is what this gives. Fails with `sealed-not-its-own`.
 */
export async function itsOwn(
  crypto: SealingCrypto,
  day: string,
  { byName }: Writers,
  writer: string,
  facts: readonly Envelope[],
): Promise<SealedResult<readonly Statement[]>> {
  const { database, owned } = byName.get(writer)!;
  const statements = facts
    .map(readFact)
    .flatMap((read) => (read.ok && isStatement(read.value) ? [read.value] : []));
  for (const statement of statements) {
    const by = byName.get(statement.owner);
    const isTrue = by?.owned && (await isSignedStatement(crypto, day, by.key, statement));
    if (!isTrue) return fail({ code: 'sealed-not-its-own' });
  }
  if (!owned && facts.some(({ id }) => databaseOf(id) !== database))
    return fail({ code: 'sealed-not-its-own' });
  return ok(statements);
}
