import type { VoiceAnswer } from '../../day/answers/voice-answers.ts';
import type { Rig, VoiceKind } from '../../day/model.ts';
import { breakWords, pathWords } from '../words/chain.ts';

export const KIND_WORD: Record<VoiceKind, string> = {
  performer: 'performer',
  boom: 'boom',
  plant: 'plant',
  feed: 'line feed',
};

/** The chain in one line, or as far as it goes and what is missing there. */
export function chainWords(rig: Rig, { voice, paths }: VoiceAnswer): string {
  const whole = paths.filter(({ broken }) => broken === null);
  if (whole.length > 0) return whole.map((path) => pathWords(rig, path)).join(' + ');
  const [first] = paths;
  if (!first) return '';
  if (first.broken === 'no-transmitter')
    return voice.kind === 'performer' ? 'wears no pack' : 'not plugged in';
  if (first.broken === 'pack-gone') return breakWords(rig, first);
  const far = pathWords(rig, first);
  return far ? `${far}: ${breakWords(rig, first)}` : breakWords(rig, first);
}
