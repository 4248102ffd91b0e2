import { idText } from '../../facts/kinds/envelope.ts';
import { bytesOfHex, hexOf } from '../sealed/bytes.ts';
import type { SealedHave } from '../sealed/have.ts';
import { WRITER_BYTES } from '../sealed/signing.ts';
import { ByteWriter, readCode } from './byte-text.ts';

/** The first byte of this form of code. */
const SEALED_HAVE = 0x12;
/** More would make the code hard to read; what is not told is given again. */
const MOST_WRITERS = 40;
const DATABASE = /^[0-9a-z]{6}$/;

/** What a phone has of a shared day, as the text of one code. */
export function writeSealedHave({ day, from, last }: SealedHave): string {
  const told = [...last].slice(0, MOST_WRITERS);
  const code = new ByteWriter().number(SEALED_HAVE, 1).ascii(day).ascii(from).number(told.length, 1);
  for (const [writer, number] of told) code.bytes(bytesOfHex(writer)).number(number, 4);
  return code.code();
}

/** Null for any other code. */
export function readSealedHave(text: string): SealedHave | null {
  const code = readCode(text);
  if (!code || code.number(1) !== SEALED_HAVE) return null;
  const [day, from] = [code.ascii(), code.ascii()];
  const last = new Map<string, number>();
  for (let left = code.number(1); left > 0; left -= 1) {
    const writer = hexOf(Uint8Array.from({ length: WRITER_BYTES }, () => code.number(1)));
    last.set(writer, code.number(4));
  }
  const isSound = code.isWhole && idText.safeParse(day).success && DATABASE.test(from);
  return isSound ? { day, from, last } : null;
}
