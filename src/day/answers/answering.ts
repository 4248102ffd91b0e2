import { Chain } from '../chain/chain.ts';
import { rollIn } from '../chain/links.ts';
import { type ChainEnds, inputReach, type Reach } from '../chain/reach.ts';
import type { Links, PartId } from '../model.ts';
import { type InputAnswer, inputAnswer } from './input-answers.ts';
import { type Summary, summaryOf } from './summary.ts';
import { type TrackAnswer, trackAnswer } from './track-answers.ts';
import { type VoiceAnswer, voiceAnswer } from './voice-answers.ts';

/** Every answer of the chain at one place on the line. */
export interface ChainAnswers {
  readonly inputs: readonly InputAnswer[];
  readonly tracks: readonly TrackAnswer[];
  readonly voices: readonly VoiceAnswer[];
  readonly summary: Summary;
  /** The sound roll in the recorder; empty if not entered. */
  readonly roll: string;
}

/** Computes from the links what reaches each input, what each track records, and who is on which. */
export function chainAnswers(ends: ChainEnds, links: Links): ChainAnswers {
  const { rig } = ends;
  const chain = new Chain(rig, links);
  const reach = new Map(rig.inputs.map((input) => [input.id, inputReach(ends, chain, input)]));
  const feeding = feedingOf([...reach.values()]);
  const tracks = rig.tracks.map((track) =>
    trackAnswer(ends, chain, track, (!track.mix && feeding.get(track.id)) || []),
  );
  const byTrack = new Map(tracks.map((answer) => [answer.track.id, answer]));
  const inputs = [...reach.values()].map((at) => inputAnswer(at, (track) => byTrack.get(track)?.state));
  const wiring = {
    ends,
    chain,
    reachOf: (input: PartId) => reach.get(input),
    trackOf: (track: PartId) => byTrack.get(track),
  };
  const voices = [...ends.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice) => voiceAnswer(wiring, voice));
  return {
    inputs,
    tracks,
    voices,
    summary: summaryOf(inputs, tracks, voices),
    roll: rollIn(chain)?.value ?? '',
  };
}

/** What feeds each track, in the order of the inputs. */
function feedingOf(reach: readonly Reach[]): ReadonlyMap<PartId, readonly Reach[]> {
  const feeding = new Map<PartId, Reach[]>();
  for (const at of reach) {
    for (const track of new Set(at.tracks)) {
      const others = feeding.get(track);
      if (others) others.push(at);
      else feeding.set(track, [at]);
    }
  }
  return feeding;
}
