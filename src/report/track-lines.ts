import type { Answers } from '../day/answers.ts';
import type { Day, Part, PartId, VoiceId } from '../day/model.ts';
import { type TrackAnswer, type TrackState, voiceName } from '../day/track-answers.ts';
import { cleanLine } from './clean-text.ts';

export interface VoiceOnTrack {
  readonly voice: VoiceId;
  readonly name: string;
  readonly muted: boolean;
}

/** One track of one take, as editors read it. */
export interface TrackLine {
  readonly track: PartId;
  /** How the track is called: `'5'`. */
  readonly number: string;
  readonly name: string;
  /** `empty` only where nobody is on it but a name was typed by hand. */
  readonly state: TrackState;
  /** The name was typed by hand and does not follow from the chain. */
  readonly typed: boolean;
  readonly voices: readonly VoiceOnTrack[];
}

/** A mix track may be called by words; its number is then its place among the tracks. */
export const trackNumber = (track: Part, at: number): string =>
  cleanLine(track.mix && !isNumber(track.name) ? String(at + 1) : track.name);

const isNumber = (text: string): boolean => /^\d+$/.test(text.trim());

/**
 * The tracks that carry something, in the order of the recorder. Answers that takes share become lines that they share,
 * where `known` is the same for all of them.
 */
export function trackLinesOf(
  day: Day,
  answers: Answers,
  known: Map<TrackAnswer, TrackLine> = new Map(),
): TrackLine[] {
  const lines: TrackLine[] = [];
  for (const [at, answer] of answers.tracks.entries()) {
    if (answer.state === 'empty' && !answer.typed) continue;
    const line = known.get(answer) ?? trackLine(day, answer, at);
    known.set(answer, line);
    lines.push(line);
  }
  return lines;
}

function trackLine(day: Day, answer: TrackAnswer, at: number): TrackLine {
  const { track, state, typed } = answer;
  const voices = voicesOn(day, answer);
  return {
    track: track.id,
    number: trackNumber(track, at),
    name: typed ? cleanLine(answer.name) : track.mix ? mixName(track) : namesOf(voices),
    state,
    typed,
    voices,
  };
}

const mixName = (track: Part): string => (isNumber(track.name) ? 'Mix' : cleanLine(track.name));

const namesOf = (voices: readonly VoiceOnTrack[]): string =>
  [...new Set(voices.map(({ name }) => name))].join(', ');

/** A voice that reaches a track twice is heard unless both ways are muted. */
function voicesOn(day: Day, { heard }: TrackAnswer): VoiceOnTrack[] {
  const voices = new Map<VoiceId, VoiceOnTrack>();
  for (const { voice, muted } of heard) {
    const before = voices.get(voice);
    const name = before?.name ?? cleanLine(voiceName(day, voice));
    voices.set(voice, { voice, name, muted: muted && (before?.muted ?? true) });
  }
  return [...voices.values()];
}

/** Two tracks with one key say the same to an editor. */
export const trackKey = ({ name, state, typed, voices }: TrackLine): string =>
  JSON.stringify([name, state, typed, voices.map(({ name, muted }) => [name, muted])]);
