import { VOICE_KINDS, type VoiceKind, type VoiceText } from '../facts/kinds/voice-described.ts';
import { isOneOf, type Open } from '../shared/open-word.ts';
import type { Day, Voice } from './model.ts';

/** Whether a voice of this kind is plugged in rather than worn; undefined for an unknown kind. */
export const isHardline = (kind: Open<VoiceKind>): boolean =>
  kind !== 'performer' && isOneOf(VOICE_KINDS, kind);

/** Unknown kinds come last. */
const kindOrder = ({ kind }: Voice): number => (VOICE_KINDS as readonly string[]).indexOf(kind) >>> 0;

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** 2 before 10, 2A after 2; those without a cast number come last. */
export const numberOrder = (a: string, b: string): number =>
  Number(a === '') - Number(b === '') || collator.compare(a, b);

/**
 * Cast order: performers by priority, then by cast number (2 before 10, 2A after 2), then booms, plants and
 * feeds likewise.
 */
export const castOrder = (a: Voice, b: Voice): number =>
  kindOrder(a) - kindOrder(b) ||
  a.priority - b.priority ||
  numberOrder(a.number, b.number) ||
  collator.compare(a.part, b.part);

/** Everyone in the cast, in order, without those removed. */
export const castInOrder = (day: Day): Voice[] =>
  [...day.voices.values()].filter(({ struck }) => !struck).sort(castOrder);

/** Those removed from the cast, in the order they would have. */
export const struckFrom = (day: Day): Voice[] =>
  [...day.voices.values()].filter(({ struck }) => struck).sort(castOrder);

/** `plain('Zoë')` is `'zoe'`: for comparing names as somebody types. */
export const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();

const IS_FOUND: Record<VoiceText, boolean> = {
  part: true,
  person: true,
  place: true,
  number: true,
  pickUp: false,
  onSet: false,
};
const FOUND = (Object.keys(IS_FOUND) as VoiceText[]).filter((field) => IS_FOUND[field]);

/**
 * Whether a search matches this voice: each typed word must start a word of its part, performer or place, or
 * its cast number. An empty search matches everybody.
 */
export function isFoundBy(voice: Voice, typed: string): boolean {
  const words = plain(FOUND.map((field) => voice[field]).join(' ')).split(/[\s'’-]+/);
  return plain(typed)
    .split(/[\s'’-]+/)
    .every((wanted) => words.some((word) => word.startsWith(wanted)));
}

/** Who already has this cast number, in the cast or removed from it. */
export const holderOf = (day: Day, number: string): Voice | undefined =>
  number.trim() === ''
    ? undefined
    : [...day.voices.values()].find((voice) => collator.compare(voice.number, number.trim()) === 0);
