import type { VoiceId } from '../model.ts';
import type { InputAnswer } from './input-answers.ts';
import type { TrackAnswer, TrackState } from './track-answers.ts';
import { isHeard, isMissed, type VoiceAnswer } from './voice-answers.ts';

/** The answers of one place, counted. */
export interface Summary {
  /** Sources with somebody on them. */
  readonly sources: number;
  readonly tracksUsed: number;
  readonly tracks: number;
  readonly free: number;
  readonly gangs: number;
  readonly clashes: number;
  readonly muted: number;
  /** Those who are needed but heard on no track. */
  readonly unrecorded: readonly VoiceId[];
}

export function summaryOf(
  inputs: readonly InputAnswer[],
  tracks: readonly TrackAnswer[],
  voices: readonly VoiceAnswer[],
): Summary {
  const iso = tracks.filter(({ state }) => state !== 'mix');
  const count = (state: TrackState) => iso.filter((track) => track.state === state).length;
  return {
    sources: liveSources(voices),
    tracksUsed: iso.length - count('empty'),
    tracks: iso.length,
    free: inputs.filter(({ state }) => state === 'free').length,
    gangs: count('gang'),
    clashes: count('clash') + inputs.filter(isTracklessClash).length,
    ...heardOrNot(voices),
  };
}

export const heardOrNot = (voices: readonly VoiceAnswer[]): Pick<Summary, 'muted' | 'unrecorded'> => ({
  muted: voices.filter(({ state }) => state === 'muted').length,
  unrecorded: voices.filter(isMissed).map(({ voice }) => voice.id),
});

/** Whether everybody wired is heard on a track, but for those resting or done: then it may be claimed. */
export const allRecorded = (voices: readonly VoiceAnswer[]): boolean =>
  voices.every(
    (voice) => isHeard(voice) || voice.state === 'off' || voice.need === 'resting' || voice.need === 'done',
  );

/** Two voices on an input that feeds no iso track, so no track can show it. */
const isTracklessClash = ({ state, reach }: InputAnswer): boolean =>
  state === 'clash' && reach.tracks.length === 0;

/** A source is live from its pack or hardline on, even if its chain breaks later. */
function liveSources(voices: readonly VoiceAnswer[]): number {
  const live = new Set<string>();
  for (const { paths } of voices) for (const { source } of paths) if (source) live.add(source);
  return live.size;
}
