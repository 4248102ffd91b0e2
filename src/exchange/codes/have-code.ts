import { idText } from '../../facts/kinds/envelope.ts';
import { HIGHEST_COUNTER } from '../../shared/ids.ts';
import { SUM_BYTES } from '../hash.ts';
import type { Have, HeldRange } from '../have.ts';
import { type ByteReader, ByteWriter, readCode } from './byte-text.ts';

/** The first byte of this form of code. */
const HAVE = 0x11;
const NAME_LENGTH = 6;

/** What a phone has, as the text of one code. */
export function writeHave({ day, from, held }: Have): string {
  const code = new ByteWriter()
    .number(HAVE, 1)
    .ascii(day ?? '')
    .number(nameNumber(from), 4);
  code.number(held.size, 1);
  for (const [database, ranges] of held) {
    code.number(nameNumber(database), 4).number(ranges.length, 1);
    for (const { upTo, count, sum } of ranges) code.number(upTo, 4).number(count, 3).number(sum, SUM_BYTES);
  }
  return code.code();
}

/** Null for any other code. */
export function readHave(text: string): Have | null {
  const code = readCode(text);
  if (!code || code.number(1) !== HAVE) return null;
  const day = code.ascii();
  const from = nameOf(code.number(4));
  const held = new Map<string, readonly HeldRange[]>();
  for (let left = code.number(1); left > 0; left -= 1) {
    const database = nameOf(code.number(4));
    held.set(database, readRanges(code));
  }
  const isSound = [...held].every(([database, ranges]) => isName(database) && ranges.every(isInOrder));
  if (!code.isWhole || !isSound || !isName(from) || (day !== '' && !idText.safeParse(day).success))
    return null;
  return { day: day || null, from, held };
}

const readRanges = (code: ByteReader): HeldRange[] =>
  Array.from({ length: code.number(1) }, () => ({
    upTo: code.number(4),
    count: code.number(3),
    sum: code.number(SUM_BYTES),
  }));

const isInOrder = ({ upTo }: HeldRange, at: number, ranges: readonly HeldRange[]): boolean =>
  upTo > (ranges[at - 1]?.upTo ?? -1) && upTo <= HIGHEST_COUNTER;

const isName = (name: string): boolean => name.length === NAME_LENGTH;

/** Six digits of base 36 are less than 2^32. */
const nameNumber = (name: string): number => Number.parseInt(name, 36);
const nameOf = (value: number): string => value.toString(36).padStart(NAME_LENGTH, '0');
