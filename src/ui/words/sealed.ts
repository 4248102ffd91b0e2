import type { SealedRead } from '../../app/import-files.ts';
import type { Refused, SealedProblem } from '../../app/live/refusals.ts';
import { countOf } from './chain.ts';

/** Why a message was refused; nothing of it is on any screen. */
export const SEALED_SENTENCES: Readonly<Record<SealedProblem['code'], string>> = {
  'sealed-garbage': 'It is no message of this app, or it was altered on the way.',
  'sealed-too-large': 'It is larger than any message of a day.',
  'sealed-cut': 'It was cut short on the way.',
  'sealed-newer': 'It is from a newer version of the app. Update this phone.',
  'sealed-other-day': 'It belongs to another day.',
  'sealed-wrong-key': 'It was sealed with a different key.',
  'sealed-key-missing': 'It was sealed with a key that this phone was not given.',
  'sealed-forged': 'It is not signed by the phone that it names.',
  'sealed-unchecked': 'This phone’s browser cannot check its signature. Update the browser.',
  'sealed-foreign': 'It is from a phone that the owner has not let in.',
  'sealed-by-onlooker': 'It is from a phone that may only read.',
  'sealed-by-removed': 'It is from a phone that was removed from the day.',
  'sealed-replayed': 'It is here already.',
  'sealed-out-of-order': 'It follows a message that is not here.',
  'sealed-past-changed': 'What it follows is not what is here.',
  'sealed-number-twice': 'Two phones write with one key. Let the newer one join again.',
  'sealed-entry-twice':
    'One of its entries is here with other words: two phones write as one. Let the newer one join again.',
  'sealed-not-its-own': 'It speaks for another phone than the one that signed it.',
  'sealed-too-many': 'Too many messages wait for others that are missing.',
};

/** `'2 messages refused. The last: It was cut short on the way.'` */
export const refusedWords = ({ count, last }: Refused): string =>
  `${countOf(count, 'message')} refused. The last: ${SEALED_SENTENCES[last]}`;

/** Of a sealed file, or of codes read off a shared day: what was checked, and what is left out. */
export function sealedLines({ refused, waiting }: SealedRead): string[] {
  const last = refused.at(-1);
  return [
    'Sealed, and checked: all of it was entered by phones that may write on this day.',
    last ? `Left out: ${refusedWords({ count: refused.length, last })}` : '',
    waiting > 0
      ? `${countOf(waiting, 'message')} cannot be read before an earlier one, or a new key, is here.`
      : '',
  ].filter(Boolean);
}
