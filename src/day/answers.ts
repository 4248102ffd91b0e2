import { changesIn } from './fold.ts';
import { type InputAnswer, inputAnswer } from './input-answers.ts';
import { linksAt } from './links.ts';
import type { Day, Links, TakeId, VoiceId } from './model.ts';
import { reachOf, type Standing } from './reach.ts';
import { type TrackAnswer, type TrackState, trackAnswer } from './track-answers.ts';
import { type VoiceAnswer, voiceAnswers } from './voice-answers.ts';

export interface Summary {
  /** Sources somebody is on. */
  readonly sources: number;
  readonly tracksUsed: number;
  readonly tracks: number;
  readonly free: number;
  readonly gangs: number;
  readonly clashes: number;
  readonly muted: number;
  readonly unrecorded: readonly VoiceId[];
}

/** What the day says at one place on the line: for every voice, input and track, each with its because. */
export interface Answers {
  readonly links: Links;
  readonly inputs: readonly InputAnswer[];
  readonly tracks: readonly TrackAnswer[];
  readonly voices: readonly VoiceAnswer[];
  readonly summary: Summary;
}

/** What holds just before the item at `index` of the line, computed once for every chain. */
export function answersAt(day: Day, index: number): Answers {
  const changes = day.line[index]?.changesBefore ?? changesIn(day);
  const known = day.memory.answers.get(changes) as Answers | undefined;
  if (known) return known;
  const answers = answersFrom(day, linksAt(day, index));
  day.memory.answers.set(changes, answers);
  return answers;
}

/** What holds for a take. */
export const answersAtTake = (day: Day, take: TakeId): Answers =>
  answersAt(day, day.placeOf.get(take) ?? day.line.length);

/** What holds just before a take, or now where none is named: where a change that is about to be said will stand. */
export const answersBefore = (day: Day, take: TakeId | undefined): Answers =>
  take === undefined ? answersNow(day) : answersAtTake(day, take);

/** What holds now. */
export const answersNow = (day: Day): Answers => answersAt(day, day.line.length);

/** The answers for any set of links: also those of a plan that nobody has accepted yet. */
export function answersFrom(standing: Standing, links: Links): Answers {
  const reach = reachOf(standing, links);
  const tracks = standing.rig.tracks.map((track) => trackAnswer(standing, links, track, reach));
  const stateOf = new Map(tracks.map(({ track, state }) => [track.id, state]));
  const inputs = reach.map((input) => inputAnswer(input, stateOf));
  const voices = voiceAnswers(standing, links, reach, tracks);
  return { links, inputs, tracks, voices, summary: summaryOf(inputs, tracks, voices) };
}

/** Two voices on an input that feeds no iso track: no track can tell. */
const isTracklessClash = ({ state, reach }: InputAnswer): boolean =>
  state === 'clash' && reach.tracks.length === 0;

function summaryOf(
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
    muted: voices.filter(({ state }) => state === 'muted').length,
    unrecorded: voices.filter(({ state }) => state === 'unrecorded').map(({ voice }) => voice.id),
  };
}

/** A source is live from where a body or a hardline becomes one, wherever its chain may break after that. */
const liveSources = (voices: readonly VoiceAnswer[]): number =>
  new Set(voices.flatMap(({ paths }) => paths.flatMap(({ source }) => source ?? []))).size;
