import { VOICE_KINDS, type VoiceKind, type VoiceText } from '../facts/kinds/voice-described.ts';
import { isOneOf, type Open } from '../shared/open-word.ts';
import type { Day, Voice } from './model.ts';

/** Whether a voice of this kind is plugged in rather than worn; of a kind that only a newer version knows nobody here can say. */
export const isHardline = (kind: Open<VoiceKind>): boolean =>
  kind !== 'performer' && isOneOf(VOICE_KINDS, kind);

/** A kind that only a newer version knows stands last. */
const kindOrder = ({ kind }: Voice): number => (VOICE_KINDS as readonly string[]).indexOf(kind) >>> 0;

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** A voice without a cast number stands after those with one. */
const numberOrder = (a: string, b: string): number =>
  Number(a === '') - Number(b === '') || collator.compare(a, b);

/**
 * The order of the cast: performers by priority, then by cast number (2 before 10, 2A after 2), then booms, plants
 * and feeds in the same way.
 */
export const castOrder = (a: Voice, b: Voice): number =>
  kindOrder(a) - kindOrder(b) ||
  a.priority - b.priority ||
  numberOrder(a.number, b.number) ||
  collator.compare(a.part, b.part);

/** Everyone of the cast, in its order; those struck off are left out. */
export const castInOrder = (day: Day): Voice[] =>
  [...day.voices.values()].filter(({ struck }) => !struck).sort(castOrder);

/** Those struck off the cast, in the order they would stand in. */
export const struckFrom = (day: Day): Voice[] =>
  [...day.voices.values()].filter(({ struck }) => struck).sort(castOrder);

/** `plain('Zoë')` is `'zoe'`: how names are compared while somebody types. */
export const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();

const IS_FOUND: Record<VoiceText, boolean> = { part: true, person: true, place: true, number: true };
const FOUND = (Object.keys(IS_FOUND) as VoiceText[]).filter((field) => IS_FOUND[field]);

/**
 * Whether what was typed finds this voice: each typed word must begin a word of its part, person or place, or be its
 * cast number's beginning. Nothing typed finds everybody.
 */
export function isFoundBy(voice: Voice, typed: string): boolean {
  const words = plain(FOUND.map((field) => voice[field]).join(' ')).split(/[\s'’-]+/);
  return plain(typed)
    .split(/[\s'’-]+/)
    .every((wanted) => words.some((word) => word.startsWith(wanted)));
}

/** Who has this cast number already, of those on the cast and those struck off it. */
export const holderOf = (day: Day, number: string): Voice | undefined =>
  number.trim() === ''
    ? undefined
    : [...day.voices.values()].find((voice) => collator.compare(voice.number, number.trim()) === 0);
