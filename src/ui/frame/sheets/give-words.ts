import type { PackOffer, Reason, VoiceOffer } from '../../../day/answers/pack-offers.ts';
import type { Day } from '../../../day/model.ts';
import { wordIn } from '../../../shared/open-word.ts';
import { listOf, nameOf, partName } from '../../words/chain.ts';
import { NEED_WORD } from '../../words/needs.ts';

const WORDS: Record<Reason, (packs: string, input: string) => string> = {
  'needed-unrecorded': (packs) => (packs ? `needed, ${packs} is not recorded` : 'needed, has no pack'),
  'needed-muted': (packs) => `needed, ${packs} is muted`,
  'needed-clash': (_, input) => `needed, shares ${input}: this ends the clash`,
  'needed-ganged': (_, input) => `needed, shares ${input}`,
  'wears-nothing': () => 'has no pack',
  recorded: (packs) => `has ${packs}`,
  resting: (packs) => (packs ? `not in this setup, has ${packs}` : 'not in this setup'),
  done: () => 'wrapped',
};

export function voiceOfferWords(day: Day, { voice, reason }: VoiceOffer): string {
  const packs = listOf(
    voice.paths.flatMap(({ transmitter }) => (transmitter ? partName(day.rig, transmitter) : [])),
  );
  const input = partName(day.rig, voice.paths.find((path) => path.input)?.input);
  return WORDS[reason](packs, input);
}

export function packOfferWords(day: Day, { wearer, wearerNeed }: PackOffer): string {
  if (wearer === null) return 'on nobody';
  return wearerNeed
    ? `on ${nameOf(day, wearer)}, ${wordIn(NEED_WORD, wearerNeed)}`
    : `on ${nameOf(day, wearer)}`;
}
