import { answersNow } from '../../src/day/answers/answers.ts';
import { mutedAt } from '../../src/day/chain/links.ts';
import type { Day, PartId, VoiceId } from '../../src/day/model.ts';
import type { RecordedVoice } from '../../src/plan/moves.ts';

interface Arrival {
  readonly voice: VoiceId;
  readonly track: PartId;
  readonly muted: boolean;
  /** What can be muted on the way. */
  readonly parts: readonly PartId[];
  readonly name: string;
}

/** Every arrival of somebody at a track, by voice, source, input and track. */
const arrivalsIn = (day: Day): Arrival[] =>
  answersNow(day).tracks.flatMap(({ track, heard }) =>
    heard.map(({ voice, source, input, muted }) => ({
      voice,
      track: track.id,
      muted,
      parts: [source.transmitter ?? input, input],
      name: `${voice} by ${source.id} at ${input} on ${track.id}`,
    })),
  );

const nameOf = ({ voice, source, input, track }: RecordedVoice): string =>
  `${voice} by ${source} at ${input} on ${track}`;

/**
 * What a day does not keep of what was promised, in words; none where all is as promised: everybody heard on the
 * planned track by the planned way, alone or in the planned gang, and nobody else heard there. Those who are coming are
 * promised a track too, but not all of their moves are made: they may be heard anywhere. Of neither is anybody muted
 * who was not before, nor comes anybody promised into a clash.
 */
export function brokenPromises(
  before: Day,
  after: Day,
  promised: readonly RecordedVoice[],
  coming: readonly RecordedVoice[] = [],
): string[] {
  const arrivals = arrivalsIn(after);
  return [
    ...promised.flatMap((one) => onTrack(after, arrivals, one, promised, coming)),
    ...newlyMuted(before, arrivals, [...promised, ...coming]),
    ...newlyClashing(before, after, arrivals, promised),
  ];
}

function onTrack(
  after: Day,
  arrivals: readonly Arrival[],
  one: RecordedVoice,
  promised: readonly RecordedVoice[],
  coming: readonly RecordedVoice[],
): string[] {
  const { voice, track } = one;
  const answers = answersNow(after);
  const kept = new Set(promised.filter((other) => other.track === track).map(nameOf));
  const heard = arrivals.filter((arrival) => arrival.track === track && !arrival.muted);
  if (!heard.some(({ name }) => name === nameOf(one))) return [`${nameOf(one)}: not heard`];
  const others = heard.filter(({ name }) => !kept.has(name));
  const strangers = others.filter((other) => !coming.some((next) => next.voice === other.voice));
  const unasked = strangers.map(({ name }) => `${name}: heard where ${voice} was promised`);
  if (others.length > 0) return unasked;
  const isGang = kept.size > 1;
  const state = answers.tracks.find((other) => other.track.id === track)!.state;
  const asVoice = answers.voices.find((other) => other.voice.id === voice)!.state;
  const wrong =
    state !== (isGang ? 'gang' : 'single') || !['alone', isGang ? 'gang' : 'alone'].includes(asVoice);
  return wrong ? [`${nameOf(one)}: the track is ${state} and the voice ${asVoice}`] : [];
}

function newlyMuted(before: Day, arrivals: readonly Arrival[], recorded: readonly RecordedVoice[]): string[] {
  const voices = new Set(recorded.map(({ voice }) => voice));
  const { links } = answersNow(before);
  const muted = arrivals.filter((arrival) => arrival.muted && voices.has(arrival.voice));
  return muted
    .filter(({ parts }) => !parts.some((part) => mutedAt(links, part)?.value))
    .map(({ name }) => `${name}: newly muted`);
}

function newlyClashing(
  before: Day,
  after: Day,
  arrivals: readonly Arrival[],
  promised: readonly RecordedVoice[],
): string[] {
  const voices = new Set(promised.map(({ voice }) => voice));
  const tracks = new Set(promised.map(({ track }) => track));
  const were = new Set(arrivalsIn(before).flatMap(({ muted, name }) => (muted ? [] : [name])));
  const clashes = answersNow(after).tracks.filter(({ state }) => state === 'clash');
  return arrivals
    .filter(({ voice, track, muted, name }) => {
      const isNew = !muted && voices.has(voice) && !tracks.has(track) && !were.has(name);
      return isNew && clashes.some((clash) => clash.track.id === track);
    })
    .map(({ name }) => `${name}: newly in a clash`);
}
