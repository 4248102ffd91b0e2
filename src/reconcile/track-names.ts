import type { Answers } from '../day/answers.ts';
import type { Day, Part, PartId } from '../day/model.ts';
import { type TrackAnswer, voiceName } from '../day/track-answers.ts';
import type { Recording, RecordingTrack } from '../wave/recordings.ts';
import { plainKey } from './plain-key.ts';

/** One track of the recorder in a recording, against what the chain says of it. */
export interface TrackCheck {
  readonly track: Part;
  readonly number: number;
  readonly answer: TrackAnswer;
  /** Undefined where the recording does not hold the track. */
  readonly file: RecordingTrack | undefined;
  readonly verdict: 'same' | 'name-differs' | 'not-recorded';
}

/**
 * Every track against its channel in the files; null where the files do not say which channel is which. Names that
 * recorders give by themselves, cut names, one name out of a gang, and any name of a mix count as the same.
 */
export function checkTracks(day: Day, answers: Answers, recording: Recording): TrackCheck[] | null {
  const channels = channelsOf(recording, answers.tracks.length);
  if (!channels) return null;
  return answers.tracks.map((answer, at) => {
    const number = trackNumber(answer.track, at);
    const file = channels.get(number);
    return { track: answer.track, number, answer, file, verdict: verdictOn(day, answer, file) };
  });
}

/** Which tracks of the recorder differ, by their ids. */
export const differingTracks = (day: Day, answers: Answers, recording: Recording): Set<PartId> =>
  new Set(
    (checkTracks(day, answers, recording) ?? [])
      .filter(({ verdict }) => verdict !== 'same')
      .map(({ track }) => track.id),
  );

/** A track is called by its number, and a mix called by a word by its place. */
const trackNumber = ({ name }: Part, at: number): number =>
  /^\s*\d{1,4}\s*$/.test(name) ? Number(name) : at + 1;

/** CHANNEL_INDEX is the number on the machine (iXML 3.01); without it, place by place where there are as many. */
function channelsOf({ tracks }: Recording, expected: number): Map<number, RecordingTrack> | null {
  const numbered = tracks.filter(({ channel }) => channel !== undefined);
  if (numbered.length > 0) return new Map(numbered.map((track) => [track.channel!, track]));
  const isNamed = tracks.some(({ name }) => name !== undefined);
  if (!isNamed || tracks.length !== expected) return null;
  return new Map(tracks.map((track, at) => [at + 1, track]));
}

function verdictOn(day: Day, answer: TrackAnswer, file: RecordingTrack | undefined): TrackCheck['verdict'] {
  if (!file) return isMissed(answer) ? 'not-recorded' : 'same';
  return agrees(day, answer, file) ? 'same' : 'name-differs';
}

/** Somebody can be heard on the track; one who is muted may be left unarmed. */
const isMissed = ({ state }: TrackAnswer): boolean =>
  state === 'single' || state === 'gang' || state === 'clash';

/** What recorders call a track nobody has named: '5', 'Tr 5', 'Ch05', 'Input 5' (common practice, no source). */
const OF_ITSELF = /^(?:TR|TRK|TRACK|CH|CHANNEL|IN|INPUT|ISO)?\W?\s*\d{0,3}$/;

function agrees(day: Day, answer: TrackAnswer, file: RecordingTrack): boolean {
  const name = plainKey(file.name ?? '');
  if (OF_ITSELF.test(name)) return true;
  const { state, heard, typed } = answer;
  if (state === 'mix')
    return /MIX/.test(`${plainKey(file.function ?? '')} ${name}`) || isSame(answer.name, name);
  if (isSame(answer.name, name)) return true;
  if (typed || heard.length === 0) return false;
  const voices = [...new Set(heard.map(({ voice }) => voiceName(day, voice)))];
  const named = name.split(/\s*[,;/+&|]\s*/).filter(Boolean);
  return named.length > 0 && named.every((one) => voices.some((voice) => isSame(voice, one)));
}

/** Recorders cut names, none of them below eight characters (common practice, no source). */
const CUT_AT = 8;

function isSame(logged: string, file: string): boolean {
  const [whole, found] = [lettersOf(logged), lettersOf(file)];
  return whole === found || (found.length >= CUT_AT && whole.startsWith(found));
}

const lettersOf = (text: string): string => {
  const key = plainKey(text);
  return key.replaceAll(/[^\p{L}\p{N}]+/gu, '') || key;
};
