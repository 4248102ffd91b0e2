import type { PackOffer, Reason, VoiceOffer } from '../../../day/answers/pack-offers.ts';
import type { PackReach } from '../../../day/answers/pack-reach.ts';
import type { Day, PartId } from '../../../day/model.ts';
import { wordIn } from '../../../shared/open-word.ts';
import { listOf, nameOf, partName } from '../../words/chain.ts';
import { NEED_WORD } from '../../words/needs.ts';
import { nameWithRecorder } from '../../words/recorder-names.ts';

const WORDS: Record<Reason, (packs: string, input: string) => string> = {
  'needed-unrecorded': (packs) => (packs ? `needed, ${packs} is not recorded` : 'needed, has no pack'),
  'needed-muted': (packs) => `needed, ${packs} is muted`,
  'needed-clash': (_, input) => `needed, clash on ${input}`,
  'needed-ganged': (_, input) => `needed, shares ${input}`,
  'wears-nothing': () => 'has no pack',
  recorded: (packs) => `has ${packs}`,
  resting: (packs) => (packs ? `not in this setup, has ${packs}` : 'not in this setup'),
  done: () => 'wrapped',
};

/** Why somebody may get a pack, and what they have, with its track: `has A3 · track 8`. */
export function voiceOfferWords(
  day: Day,
  { voice, reason }: VoiceOffer,
  reachOf: (pack: PartId) => PackReach,
): string {
  const worn = [...new Set(voice.paths.flatMap(({ transmitter }) => transmitter ?? []))];
  const packs = listOf(worn.map((pack) => partName(day.rig, pack)));
  const input = partName(day.rig, voice.paths.find((path) => path.input)?.input);
  const tracks = worn.flatMap((pack) => reachOf(pack).tracks.map(({ id }) => nameWithRecorder(day, id)));
  const words = WORDS[reason](packs, input);
  return packs && words.includes(packs) ? onTracks(words, tracks) : words;
}

const onTracks = (words: string, tracks: readonly string[]): string =>
  tracks.length === 0 ? words : `${words} · track ${listOf([...new Set(tracks)])}`;

/** The channel a pack is received on, and the track it is for: `near 3 › track 8`. */
export function reachWords(day: Day, { channels, tracks }: PackReach): string {
  if (channels.length === 0) return 'no channel tuned to it';
  const on = listOf(channels.map(({ name }) => name));
  return tracks.length === 0
    ? `${on}, no track`
    : `${on} › track ${listOf(tracks.map(({ id }) => nameWithRecorder(day, id)))}`;
}

export function packOfferWords(day: Day, { wearer, wearerNeed }: PackOffer): string {
  if (wearer === null) return 'on nobody';
  return wearerNeed
    ? `on ${nameOf(day, wearer)}, ${wordIn(NEED_WORD, wearerNeed)}`
    : `on ${nameOf(day, wearer)}`;
}
