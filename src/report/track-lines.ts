import type { Answers } from '../day/answers/answers.ts';
import { heardTwice, nameOnTrack, type TrackAnswer, type TrackState } from '../day/answers/track-answers.ts';
import { isRecorded } from '../day/files/take-files.ts';
import { isNumber, trackLabels } from '../day/files/track-labels.ts';
import type { Day, Part, PartId, VoiceId } from '../day/model.ts';
import { cleanLine } from './clean-text.ts';
import { REPORT_FORM, SECOND_FORM } from './form.ts';

export interface VoiceOnTrack {
  readonly voice: VoiceId;
  readonly name: string;
  readonly muted: boolean;
  /** It is heard by more than one source, such as one pack on two channels. */
  readonly twice?: true;
}

/** One track of one take, as editors read it. */
export interface TrackLine {
  readonly track: PartId;
  /** The track's unique label: `'5'`. */
  readonly number: string;
  readonly name: string;
  /** `empty` only if nobody is on it but a name was typed by hand. */
  readonly state: TrackState;
  /** The name was typed by hand and does not come from the chain. */
  readonly typed: boolean;
  readonly voices: readonly VoiceOnTrack[];
}

export const trackNumber = ({ rig }: Pick<Day, 'rig'>, track: PartId): string =>
  cleanLine(trackLabels(rig).get(track) ?? rig.byId.get(track)?.name ?? track);

/**
 * The tracks that carry something, in recorder order. Takes that share answers share the lines too, if
 * `known` is the same for all of them.
 */
export function trackLinesOf(
  day: Day,
  answers: Answers,
  known: Map<TrackAnswer, TrackLine> = new Map(),
  form = REPORT_FORM,
): TrackLine[] {
  const lines: TrackLine[] = [];
  for (const answer of answers.tracks) {
    if (!isRecorded(answer)) continue;
    const line = known.get(answer) ?? trackLine(day, answer, form);
    known.set(answer, line);
    lines.push(line);
  }
  return lines;
}

function trackLine(day: Day, answer: TrackAnswer, form: number): TrackLine {
  const { track, state, typed } = answer;
  const voices = voicesOn(day, answer, form > SECOND_FORM);
  const number = trackNumber(day, track.id);
  return {
    track: track.id,
    number,
    name: typed ? cleanLine(answer.name) : track.mix ? mixName(track, number) : namesOf(voices),
    state,
    typed,
    voices,
  };
}

/** The name, unless the number already says it. */
const mixName = ({ name }: Part, number: string): string =>
  isNumber(name) || cleanLine(name) === number ? 'Mix' : cleanLine(name);

/** Two voices with the same name are both listed. */
const namesOf = (voices: readonly VoiceOnTrack[]): string => voices.map(({ name }) => name).join(', ');

/** A voice that reaches a track twice is heard unless both paths are muted. */
function voicesOn(day: Day, answer: TrackAnswer, withPacks: boolean): VoiceOnTrack[] {
  const twice = new Set(heardTwice(answer));
  const voices = new Map<VoiceId, VoiceOnTrack>();
  for (const { voice, muted } of answer.heard) {
    const before = voices.get(voice);
    const name = before?.name ?? cleanLine(nameOnTrack(day, answer.heard, voice, withPacks));
    const isMuted = muted && (before?.muted ?? true);
    voices.set(voice, { voice, name, muted: isMuted, ...(twice.has(voice) && { twice: true }) });
  }
  return [...voices.values()];
}

const keys = new WeakMap<TrackLine, string>();

/** Two tracks with the same key mean the same to an editor. Takes share lines, so each is written once. */
export function trackKey(line: TrackLine): string {
  const known = keys.get(line) ?? keyOf(line);
  keys.set(line, known);
  return known;
}

const keyOf = ({ name, state, typed, voices }: TrackLine): string =>
  JSON.stringify([name, state, typed, voices.map(({ name, muted, twice }) => [name, muted, twice])]);
