import type { Answers } from '../../day/answers/answers.ts';
import { type TrackAnswer, voiceName } from '../../day/answers/track-answers.ts';
import { aboutTracksOf } from '../../day/files/take-files.ts';
import { trackLabels } from '../../day/files/track-labels.ts';
import type { Day, Part, PartId } from '../../day/model.ts';
import { tracksOf } from '../../day/recorders/recorder-parts.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { Recording, RecordingTrack } from '../../wave/recording/recordings.ts';
import { fileTracksOf } from './file-tracks.ts';
import { plainKey } from './plain-key.ts';

/** One track of the recorder in a recording, compared with the chain. */
export interface TrackCheck {
  readonly track: Part;
  /** Its label: `'5'`. */
  readonly number: string;
  readonly answer: TrackAnswer;
  /** Undefined if the recording lacks the track. */
  readonly file: RecordingTrack | undefined;
  readonly verdict: 'same' | 'name-differs' | 'not-recorded';
}

/**
 * Every track against its channel in the files; null if the files do not say which channel is which. Default
 * names from recorders, truncated names, one name out of a gang, and any name of a mix count as equal.
 */
export function checkTracks(
  day: Day,
  answers: Answers,
  recording: Recording,
  recorder: PartId = FIRST_RECORDER,
): TrackCheck[] | null {
  const files = fileTracksOf(tracksOf(day.rig, recorder), recording);
  if (!files) return null;
  const labels = trackLabels(day.rig);
  return aboutTracksOf(day.rig, answers.tracks, recorder, ({ track }) => track.id).map((answer) => {
    const { track } = answer;
    const file = files.get(track.id);
    const number = labels.get(track.id) ?? track.name;
    return { track, number, answer, file, verdict: verdictOn(day, answer, file) };
  });
}

/** Whether a track carries in the file what the chain has on the other. */
export const carries = (day: Day, { file }: TrackCheck, { answer }: TrackCheck): boolean =>
  answer.name !== '' &&
  !answer.track.mix &&
  file !== undefined &&
  !isOfItself(file) &&
  agrees(day, answer, file);

/** The ids of the recorder's tracks that differ. */
export const differingTracks = (
  day: Day,
  answers: Answers,
  recording: Recording,
  recorder?: PartId,
): Set<PartId> =>
  new Set(
    (checkTracks(day, answers, recording, recorder) ?? [])
      .filter(({ verdict }) => verdict !== 'same')
      .map(({ track }) => track.id),
  );

function verdictOn(day: Day, answer: TrackAnswer, file: RecordingTrack | undefined): TrackCheck['verdict'] {
  if (!file) return isMissed(answer) ? 'not-recorded' : 'same';
  return agrees(day, answer, file) ? 'same' : 'name-differs';
}

/** Somebody can be heard on the track; a track with only muted voices may be left unarmed. */
const isMissed = ({ state }: TrackAnswer): boolean =>
  state === 'single' || state === 'gang' || state === 'clash';

/** What recorders call an unnamed track: '5', 'Tr 5', 'Ch05', 'Input 5' (common practice, no source). */
const OF_ITSELF = /^(?:TR|TRK|TRACK|CH|CHANNEL|IN|INPUT|ISO)?\W?\s*\d{0,3}$/;

const isOfItself = ({ name }: RecordingTrack): boolean => OF_ITSELF.test(plainKey(name ?? ''));

function agrees(day: Day, answer: TrackAnswer, file: RecordingTrack): boolean {
  const name = plainKey(file.name ?? '');
  if (isOfItself(file)) return true;
  const { state, heard, typed } = answer;
  if (state === 'mix')
    return /MIX/.test(`${plainKey(file.function ?? '')} ${name}`) || isSame(answer.name, name);
  if (isSame(answer.name, name)) return true;
  if (typed || heard.length === 0) return false;
  const voices = [...new Set(heard.map(({ voice }) => voiceName(day, voice)))];
  const named = name.split(/\s*[,;/+&|]\s*/).filter(Boolean);
  return named.length > 0 && named.every((one) => voices.some((voice) => isSame(voice, one)));
}

/** Recorders truncate names, but never below eight characters (common practice, no source). */
const CUT_AT = 8;

function isSame(logged: string, file: string): boolean {
  const [whole, found] = [lettersOf(logged), lettersOf(file)];
  return whole === found || (found.length >= CUT_AT && whole.startsWith(found));
}

const lettersOf = (text: string): string => {
  const key = plainKey(text);
  return key.replaceAll(/[^\p{L}\p{N}]+/gu, '') || key;
};
