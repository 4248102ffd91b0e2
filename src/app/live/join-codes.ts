import { AGREEMENT_PUBLIC, type AgreementPublic } from '../../exchange/sealed/agreement.ts';
import { bytesOfHex, hexOf } from '../../exchange/sealed/bytes.ts';
import { FIRST_KEY, SECRET_BYTES } from '../../exchange/sealed/day-keys.ts';
import { PUBLIC_KEY, type PublicKey } from '../../exchange/sealed/signing.ts';
import { type DayId, idText } from '../../facts/kinds/envelope.ts';
import { MOST_KEYS } from '../../facts/kinds/writer-admitted.ts';
import type { Offer } from '../key-ring.ts';
import type { LogPlace } from '../live-places.ts';
import { placeCode, readPlaceCode } from './place-code.ts';

/** What a phone needs of another to read its day. Whoever photographs the code has it too. */
export interface Invitation {
  readonly day: DayId;
  /** Of every key of the day, by its number: what was said before a later key is read too. */
  readonly secrets: ReadonlyMap<number, Uint8Array>;
  readonly firstOwner: PublicKey;
  readonly offer: Offer;
  /** To ask with, once; empty for an onlooker. */
  readonly word: string;
  /** Missing where the day is not live. */
  readonly place?: LogPlace | undefined;
}

/** A phone that would write: what its owner must know of it. */
export interface Asking {
  readonly key: PublicKey;
  /** By which it is given later keys of the day; missing from a phone with an older version. */
  readonly agreement?: AgreementPublic | undefined;
  /** Of the code that it joined with. */
  readonly word: string;
  readonly database: string;
  readonly name: string;
  readonly job: string;
}

const INVITES = 'rollbook-join';
const ASKS = 'rollbook-write';
const OFFERS: readonly string[] = ['writer', 'onlooker', 'owner'] satisfies Offer[];
const WORD = /^[0-9a-f]{16}$/;
/** Stands for no word. */
const NONE = '-';
const DATABASE = /^[0-9a-z]{6}$/;
const LONGEST = 200;

export const invitationCode = ({ day, secrets, firstOwner, offer, word, place }: Invitation): string =>
  [INVITES, day, offer, word || NONE, secretsText(secrets), firstOwner, place ? placeCode(place) : '']
    .join(' ')
    .trim();

/** Null for any other code. */
export function readInvitation(text: string): Invitation | null {
  const [first, day = '', offer = '', word = '', keys = '', firstOwner = '', ...where] = text
    .trim()
    .split(/\s+/);
  const place = where.length > 0 ? readPlaceCode(where.join(' ')) : undefined;
  const secrets = readSecrets(keys);
  if (first !== INVITES || !idText.safeParse(day).success || !secrets || !PUBLIC_KEY.test(firstOwner))
    return null;
  if (!OFFERS.includes(offer) || !(offer === 'onlooker' ? word === NONE : WORD.test(word))) return null;
  const said = { offer: offer as Offer, word: word === NONE ? '' : word };
  return place === null ? null : { day, secrets, firstOwner, ...said, place };
}

/** `'0f0f….1e1e…'`, in order of their numbers; nothing between two dots for one that is not known. */
function secretsText(secrets: ReadonlyMap<number, Uint8Array>): string {
  const newest = Math.max(...secrets.keys());
  const all = Array.from({ length: newest }, (_, at) => secrets.get(at + 1) ?? new Uint8Array());
  return all.map(hexOf).join('.');
}

/** Null without a first one. */
function readSecrets(text: string): ReadonlyMap<number, Uint8Array> | null {
  const all = text.split('.');
  const isSecret = (hex: string): boolean => /^[0-9a-f]+$/.test(hex) && hex.length === SECRET_BYTES * 2;
  const isSound = all.every((hex, at) => isSecret(hex) || (hex === '' && at > 0));
  if (!isSound || all.length > MOST_KEYS) return null;
  return new Map(all.flatMap((hex, at) => (hex ? [[at + FIRST_KEY, bytesOfHex(hex)] as const] : [])));
}

export const askingCode = ({ key, agreement, word, database, name, job }: Asking): string =>
  [
    ASKS,
    agreement ? `${key}.${agreement}` : key,
    ...[word, database, encodeURIComponent(name), encodeURIComponent(job)],
  ]
    .join(' ')
    .trim();

/** Null for any other code. */
export function readAsking(text: string): Asking | null {
  const [first, keys = '', word = '', database = '', name = '', job = ''] = text.trim().split(' ');
  const [key = '', agreement] = keys.split('.');
  if (first !== ASKS || !PUBLIC_KEY.test(key) || !WORD.test(word) || !DATABASE.test(database)) return null;
  if (agreement !== undefined && !AGREEMENT_PUBLIC.test(agreement)) return null;
  try {
    const [who, does] = [decodeURIComponent(name), decodeURIComponent(job)];
    return { key, agreement, word, database, name: who.slice(0, LONGEST), job: does.slice(0, LONGEST) };
  } catch {
    return null;
  }
}
