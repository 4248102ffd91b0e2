import type { FactId } from '../../shared/ids.ts';
import { isMuted, liveSources, type Reach } from '../chain/reach.ts';
import type { Part, PartId } from '../model.ts';
import type { TrackState } from './track-answers.ts';

export type InputState = 'free' | 'idle' | 'single' | 'gang' | 'clash' | 'muted' | 'reserved';
export interface InputAnswer {
  readonly input: Part;
  readonly state: InputState;
  readonly reach: Reach;
  readonly because: readonly FactId[];
}

/** How an input is used; one that shares a track is a gang or a clash as that track is. */
export function inputAnswer(reach: Reach, stateOf: (track: PartId) => TrackState | undefined): InputAnswer {
  return { input: reach.input, state: inputState(reach, stateOf), reach, because: reach.because };
}

function inputState(reach: Reach, stateOf: (track: PartId) => TrackState | undefined): InputState {
  if (reach.input.reserved || reach.arrival?.reserved) return 'reserved';
  if (!reach.arrival) return 'free';
  const live = liveSources(reach);
  if (live.length === 0) return 'idle';
  const audible = live.filter((source) => !isMuted(reach, source));
  if (audible.length === 0) return 'muted';
  const states = reach.tracks.map(stateOf);
  if (states.includes('clash')) return 'clash';
  if (states.includes('gang')) return 'gang';
  // Two voices on one input that feeds no iso track: nobody declared that this was meant.
  return new Set(audible.map(({ voice }) => voice)).size > 1 ? 'clash' : 'single';
}
