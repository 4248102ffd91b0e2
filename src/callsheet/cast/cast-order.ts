import { hasLetter, isUpper, wordsOf } from '../cells/sheet-names.ts';

export type Order = 'part-first' | 'person-first';

/** How the order is known: from a word ('as'), from how the names look (capitals), or only by likelihood. */
export type Sign = 'worded' | 'looks' | 'likely';

/** What a line itself reveals about the order of its names; null if nothing. */
export interface Told {
  readonly order: Order | null;
  readonly sign: Sign | null;
}

const SIGNS_OF_PART = [isUpper, (name: string): boolean => /^the\s|\d|^["“«]/i.test(name)];

/** Capitals, an article or a digit mark a part; otherwise one word is likely a part and two a performer. */
export function orderOf(first: string, second: string): Told {
  const [firstIsWord, secondIsWord] = [first, second].map((name) => wordsOf(name).length === 1);
  const likely = firstIsWord ? 'part-first' : 'person-first';
  for (const isPart of SIGNS_OF_PART) {
    if (isPart(first) === isPart(second)) continue;
    const order = isPart(first) ? 'part-first' : 'person-first';
    // 'ANNA BERG - Ines': some lists have the performers in capitals.
    const contrary = isPart === isUpper && firstIsWord !== secondIsWord && order !== likely;
    return contrary ? { order: likely, sign: 'likely' } : { order, sign: 'looks' };
  }
  return firstIsWord === secondIsWord ? { order: null, sign: null } : { order: likely, sign: 'likely' };
}

const isCapitals = (word: string): boolean => isUpper(word) || !hasLetter(word);
const isInitial = (word: string): boolean => /^\p{Lu}\.?$/u.test(word);

/** Splits 'INES Anna Berg' or 'Anna Berg INES' where capitals end or begin; null if they do not tell. */
export function splitByCase(words: readonly string[]): [string, string] | null {
  const join = (from: number, to: number) => words.slice(from, to).join(' ');
  let head = words.findIndex((word) => !isCapitals(word));
  if (head < 0) return null;
  while (head > 1 && isInitial(words[head - 1]!)) head -= 1;
  const rest = words.slice(head);
  if (head > 0 && rest.every((word) => !isCapitals(word) || isInitial(word)))
    return /\p{L}{2}/u.test(join(0, head)) ? [join(0, head), join(head, words.length)] : null;
  let tail = words.findLastIndex((word) => !isCapitals(word)) + 1;
  while (tail < words.length && isInitial(words[tail]!)) tail += 1;
  const last = join(tail, words.length);
  if (head > 0 || !/\p{L}{2}/u.test(last) || /^(?:[IVX]+|JR\.?|SR\.?)$/.test(last)) return null;
  return [join(0, tail), last];
}
