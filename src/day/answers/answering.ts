import { asBefore } from '../../shared/as-before.ts';
import { Chain } from '../chain/chain.ts';
import { rollIn } from '../chain/links.ts';
import { type ChainEnds, type Reach, reachOfInputs } from '../chain/reach.ts';
import type { Links, PartId, VoiceId } from '../model.ts';
import { type InputAnswer, inputAnswer } from './input-answers.ts';
import {
  type RecorderAnswers,
  type RolledVoice,
  recorderAnswers,
  rolledVoices,
  worstOf,
} from './recorder-answers.ts';
import type { Summary } from './summary.ts';
import { type TrackAnswer, trackAnswer } from './track-answers.ts';

/** Every answer of the chain at one place on the line. */
export interface ChainAnswers {
  /** Of all recorders. */
  readonly inputs: readonly InputAnswer[];
  /** Of all recorders. */
  readonly tracks: readonly TrackAnswer[];
  /** On the recorders that roll. */
  readonly voices: readonly RolledVoice[];
  /** The main recorder's, with the worst of those that roll. */
  readonly summary: Summary;
  /** Each recorder by itself, the first one first. */
  readonly recorders: readonly RecorderAnswers[];
  /** The first of those that roll. */
  readonly main: RecorderAnswers;
  /** The sound roll in the main recorder; empty if not entered. */
  readonly roll: string;
}

/**
 * Computes from the links what reaches each input, what each track records, and who is on which. What is as in the
 * answers `before`, of the same rig and cast, is shared with them: a change on the line concerns few of them.
 */
export function chainAnswers(ends: ChainEnds, links: Links, before?: ChainAnswers): ChainAnswers {
  const { rig } = ends;
  const chain = new Chain(rig, links);
  const reach = asBefore(
    reachOfInputs(ends, chain),
    before?.inputs.map((input) => input.reach),
  );
  const byInput = new Map(reach.map((at) => [at.input.id, at]));
  const feeding = feedingOf(reach);
  const tracks = asBefore(
    rig.tracks.map((track) => trackAnswer(ends, chain, track, (!track.mix && feeding.get(track.id)) || [])),
    before?.tracks,
  );
  const byTrack = new Map(tracks.map((answer) => [answer.track.id, answer]));
  const inputs = asBefore(
    reach.map((at) => inputAnswer(at, (track) => byTrack.get(track)?.state)),
    before?.inputs,
  );
  const wiring = {
    ends,
    chain,
    leadsFrom: (end: PartId | VoiceId) => chain.leadsFrom(end),
    reachOf: (input: PartId) => byInput.get(input),
    trackOf: (track: PartId) => byTrack.get(track),
  };
  const recorders = recorderAnswers(wiring, { inputs, tracks }, before?.recorders);
  const rolling = recorders.filter(({ rolls }) => rolls);
  const main = rolling[0]!;
  const voices = asBefore(rolledVoices(rolling), before?.voices);
  return {
    inputs,
    tracks,
    voices,
    summary: worstOf(rolling, voices),
    recorders,
    main,
    roll: rollIn(chain, main.recorder)?.value ?? '',
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
