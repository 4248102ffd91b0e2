import type { SceneFit } from '../../../app/scene-fits.ts';
import type { Day, VoiceId } from '../../../day/model.ts';
import { countOf, listOf, nameOf } from '../../words/chain.ts';

const names = (day: Day, voices: readonly VoiceId[]): string => listOf(voices.map((id) => nameOf(day, id)));

/** `'5 packs (4 there), 5 channels (8 there)'`: what a scene needs of what there is. */
export const countsWords = ({ needs, there }: SceneFit): string =>
  [
    `${countOf(needs.packs, 'pack')} (${there.packs} there)`,
    `${countOf(needs.channels, 'channel')} (${there.channels} there)`,
    `${countOf(needs.tracks, 'track')} (${there.tracks} there)`,
  ].join(', ');

/** A word for the list; empty where everybody has a track of their own. */
export function fitWord({ leftOut, ganged, exact }: SceneFit): string {
  if (leftOut.length > 0) return exact ? 'does not fit' : 'may not fit';
  return ganged.length > 0 ? 'fits with a gang' : '';
}

const ADDED = {
  transmitter: 'one more pack',
  channel: 'one more receiver channel',
  input: 'one more input',
  track: 'one more track',
} as const;

/** What a scene is short of, and what would make it fit. */
export function fitSentences(day: Day, fit: SceneFit): string[] {
  const { leftOut, ganged, addition } = fit;
  if (leftOut.length === 0)
    return ganged.length > 0 ? [`Fits with a gang: ${names(day, ganged)} share a track.`] : [];
  const out = leftOut.map(({ voice }) => voice);
  const said = [`${names(day, out)} would not be recorded.`];
  if (addition)
    said.push(`It fits better with ${ADDED[addition.kind]}: that records ${names(day, addition.voices)}.`);
  const codes = new Set(leftOut.map(({ why }) => why.code));
  const isShortOfRadio = codes.has('no-transmitter-left') || codes.has('no-channel-left');
  if (isShortOfRadio)
    said.push(
      `Or with ${countOf(out.length, 'lavalier')} fewer: a plant or the boom for ${names(day, out)}.`,
    );
  if (codes.has('no-track-left') || codes.has('no-input-left'))
    said.push('Or with a gang: let two inputs share a track, under Rig.');
  return said;
}
