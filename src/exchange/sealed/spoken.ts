import type { AgreementPublic } from './agreement.ts';
import { utf8 } from './bytes.ts';
import type { SealingCrypto } from './sealing-crypto.ts';
import { type PublicKey, sha256 } from './signing.ts';

const CONSONANTS = 'bdfghjklmnprstvz';
const VOWELS = 'aiou';

/**
 * What two people compare by eye when a phone asks to write, as two words that can be read aloud: both phones work it out
 * from the one-time word and the keys that ask, so whoever merely photographed the code has another. 16 bits a word in
 * five letters, after Wilkerson's proquints (2009).
 */
export async function spokenOf(
  crypto: SealingCrypto,
  word: string,
  key: PublicKey,
  agreement: AgreementPublic = '',
): Promise<string> {
  const hash = await sha256(crypto, utf8(`rollbook 1 spoken ${word} ${key}${agreement}`));
  return [0, 2].map((at) => fiveLetters(hash[at]! * 256 + hash[at + 1]!)).join(' ');
}

const fiveLetters = (bits: number): string =>
  [
    CONSONANTS[bits >> 12],
    VOWELS[(bits >> 10) & 3],
    CONSONANTS[(bits >> 6) & 15],
    VOWELS[(bits >> 4) & 3],
    CONSONANTS[bits & 15],
  ].join('');
