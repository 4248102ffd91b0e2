import type { Draft, FactOf } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import type { AgreementPublic } from './agreement.ts';
import { bytesOfHex, hexOf, utf8 } from './bytes.ts';
import type { SealingCrypto } from './sealing-crypto.ts';
import { isSignedBy, type PublicKey, signed, type WriterKey } from './signing.ts';

const KINDS = ['writer-admitted', 'writer-removed', 'day-passed-on'] as const;
type StatementKind = (typeof KINDS)[number];
type Unsigned<S> = S extends unknown ? Omit<S, 'number' | 'owner' | 'signature' | 'before'> : never;

/** A key for what follows, as the removal of a phone carries it: for each phone that stays, sealed to it alone. */
export interface NewKey {
  readonly number: number;
  /** By writer. */
  readonly boxes: Readonly<Record<string, string>>;
}

/** What the owner of a day said of who may write. */
export type Statement = FactOf<StatementKind>;
type StatementDraft = Extract<Draft, { kind: StatementKind }>;

export const isStatement = (fact: Envelope): fact is Statement =>
  (KINDS as readonly string[]).includes(fact.kind) && !('unknown' in fact);

/** Signs the owner's next statement; `name` is the public one of the day. */
export async function signStatement(
  crypto: SealingCrypto,
  name: string,
  owner: WriterKey,
  number: number,
  said: Unsigned<StatementDraft>,
): Promise<StatementDraft> {
  const whole = { ...said, number, owner: owner.writer } as Omit<StatementDraft, 'signature'>;
  const signature = hexOf(await signed(crypto, owner, bytesSaid(name, whole)));
  return { ...whole, signature } as StatementDraft;
}

export const isSignedStatement = async (
  crypto: SealingCrypto,
  name: string,
  key: PublicKey,
  statement: Statement,
): Promise<boolean> =>
  (await isSignedBy(crypto, key, bytesOfHex(statement.signature), bytesSaid(name, statement))) === true;

/** What is signed: the day's name, and the fields of this version in a fixed order. */
const bytesSaid = (name: string, said: Omit<StatementDraft, 'signature'>) =>
  utf8(JSON.stringify(['rollbook 1 statement', name, said.kind, said.number, said.owner, ...fieldsOf(said)]));

function fieldsOf(said: Omit<StatementDraft, 'signature'>): readonly (string | number)[] {
  const { kind } = said;
  const of = said as unknown as Partial<Record<string, string | number>>;
  const names = {
    'writer-admitted': ['key', 'role', 'name', 'job', 'database'],
    'writer-removed': ['writer', 'database', 'counted', 'upTo'],
    'day-passed-on': ['to', 'counted'],
  }[kind];
  return [...names.map((name) => of[name] ?? ''), ...laterFieldsOf(said)];
}

/** What statements gained later is signed where it is said: those without it have the bytes that they had. */
function laterFieldsOf(said: Omit<StatementDraft, 'signature'>): readonly (string | number)[] {
  const { agreement, newKey } = said as { readonly agreement?: AgreementPublic; readonly newKey?: NewKey };
  if (agreement) return ['agreement', agreement];
  if (!newKey) return [];
  const boxes = Object.entries(newKey.boxes).sort(([one], [other]) => (one < other ? -1 : 1));
  return ['new key', newKey.number, ...boxes.flat()];
}
