import type { Day, PartId } from '../../day/model.ts';
import type { Logged } from '../log-and-card/logged.ts';
import type { Recorded } from '../log-and-card/recorded.ts';
import { checkTracks } from '../log-and-card/track-names.ts';
import { trackBits } from './likelihood.ts';

/**
 * What the names of tracks say of a pair. Only channels whose name changes over the card count: what a
 * recorder calls them all day says nothing. Takes with the same chain and files with the same names share
 * their answer.
 */
export function trackEvidence(
  day: Day,
  recordings: readonly Recorded[],
  recorder?: PartId,
): (logged: Logged, recorded: Recorded) => number {
  const changing = changingNames(recordings);
  if (changing.size === 0) return () => 0;
  const known = new Map<unknown, Map<string, number>>();
  return ({ answers }, { recording, trackKey }) => {
    const ofChain = known.get(answers.tracks) ?? new Map<string, number>();
    known.set(answers.tracks, ofChain);
    const said = ofChain.get(trackKey);
    if (said !== undefined) return said;
    const checks = (checkTracks(day, answers, recording, recorder) ?? []).filter(
      ({ file }) => file !== undefined && changing.has(`${file.channel} ${file.interleave}`),
    );
    const fitting = checks.filter(({ verdict }) => verdict === 'same').length;
    const bits = trackBits(fitting, checks.length - fitting);
    ofChain.set(trackKey, bits);
    return bits;
  };
}

function changingNames(recordings: readonly Recorded[]): Set<string> {
  const names = new Map<string, Set<string>>();
  for (const { recording } of recordings)
    for (const { channel, interleave, name = '' } of recording.tracks) {
      const key = `${channel} ${interleave}`;
      names.set(key, (names.get(key) ?? new Set()).add(name));
    }
  return new Set([...names].flatMap(([key, said]) => (said.size > 1 ? [key] : [])));
}
