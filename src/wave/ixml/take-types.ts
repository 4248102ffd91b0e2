import { textOf, type XmlNode } from '../xml/xml-node.ts';
import type { IXmlValues } from './ixml-values.ts';

/** The TAKE_TYPE dictionary of iXML 3.01, without DEFAULT, which carries no information. */
export const TAKE_TYPES = [
  'NO_GOOD',
  'FALSE_START',
  'WILD_TRACK',
  'PICKUP',
  'REHEARSAL',
  'ANNOUNCEMENT',
  'SOUND_GUIDE',
] as const;

export type TakeType = (typeof TAKE_TYPES)[number];

/** Flags from before version 2.0, each now a word of TAKE_TYPE. */
const OLD_FLAGS = ['NO_GOOD', 'FALSE_START', 'WILD_TRACK'] as const satisfies readonly TakeType[];
const MOST_WORDS = 50;

/**
 * The words of TAKE_TYPE, unknown ones as written, plus older flags that are TRUE, each once. 'FALSE_START,
 * PICKUP' gives ['FALSE_START', 'PICKUP']; DEFAULT, empty or missing gives [].
 */
export function readTakeTypes(root: XmlNode, values: IXmlValues): readonly string[] {
  const listed = (textOf(root, 'TAKE_TYPE') ?? '').split(',', MOST_WORDS).map((word) => word.trim());
  const flagged = OLD_FLAGS.filter((name) => values.flag(root, name));
  const words = [...listed, ...flagged].map(known).filter((word) => word !== '' && word !== 'DEFAULT');
  return [...new Set(words)];
}

function known(word: string): string {
  const upper = word.toUpperCase();
  return upper === 'DEFAULT' || (TAKE_TYPES as readonly string[]).includes(upper) ? upper : word;
}
