import { answersAtTake, answersFrom } from '../../day/answers/answers.ts';
import { key, linksAtTake, sentTo } from '../../day/chain/links.ts';
import type { Day, PartId, TakeId } from '../../day/model.ts';
import type { TrackSwap } from '../../day/wrap/card-settlement.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { carries, differingTracks, type TrackCheck } from '../log-and-card/track-names.ts';

/** Tracks of which each carries in the file what the chain has on the next, and the last what the first has. */
export type Round = readonly [TrackCheck, ...TrackCheck[]];

/** The round that begins with this track; it alone if there is none. A swap of two comes first. */
export function roundFrom(day: Day, first: TrackCheck, others: ReadonlySet<TrackCheck>): Round {
  const round: [TrackCheck, ...TrackCheck[]] = [first];
  for (let last = first; ; last = round.at(-1)!) {
    const next = [...others].filter((one) => !round.includes(one) && carries(day, last, one));
    const closing = next.find((one) => carries(day, one, first));
    if (closing) return [...round, closing];
    if (!next[0]) return [first];
    round.push(next[0]);
  }
}

const afterEach = (round: Round): (readonly [one: TrackCheck, next: TrackCheck])[] =>
  round.map((one, at) => [one, round[(at + 1) % round.length]!]);

/**
 * The exchanges after which these tracks match the recording and no other track is wrong that was not: packs on
 * each other's bodies first, since that happens most (common practice, no source), then inputs. Each is tried
 * out on the chain.
 */
export function swapsOf(
  day: Day,
  take: TakeId,
  round: Round,
  recording: Recording,
  recorder?: PartId,
): TrackSwap[] {
  const known = differingTracks(day, answersAtTake(day, take), recording, recorder);
  const helps = (swap: TrackSwap): boolean => {
    const differing = differingTracks(day, answersFrom(day, linksWith(day, take, swap)), recording, recorder);
    return (
      !round.some(({ track }) => differing.has(track.id)) && [...differing].every((track) => known.has(track))
    );
  };
  return [byPacks(round), byInputs(day, take, round)].filter(
    (swap): swap is TrackSwap => swap !== null && helps(swap),
  );
}

/** Only where each carries one voice with a pack. */
function byPacks(round: Round): TrackSwap | null {
  const worn = afterEach(round).flatMap(([{ answer }, next]) => {
    const [own, other] = [answer.heard[0], next.answer.heard[0]];
    const transmitter = own?.source.transmitter;
    return answer.heard.length === 1 && transmitter && other ? [{ transmitter, voice: other.voice }] : [];
  });
  return worn.length === round.length ? { by: 'packs', worn } : null;
}

/** What fed the next track feeds this one; a further track of an input stays. */
function byInputs(day: Day, take: TakeId, round: Round): TrackSwap | null {
  const { links } = answersAtTake(day, take);
  const exchanged = new Map(afterEach(round).map(([one, next]) => [next.track.id, one.track.id]));
  const routes = day.rig.inputs.flatMap(({ id: input }) => {
    const tracks = sentTo(links, input)?.value ?? [];
    const now = tracks.map((track) => exchanged.get(track) ?? track);
    return tracks.some((track) => exchanged.has(track)) ? [{ input, tracks: [...new Set(now)] }] : [];
  });
  return routes.length > 0 ? { by: 'inputs', routes } : null;
}

function linksWith(day: Day, take: TakeId, swap: TrackSwap) {
  const links = new Map(linksAtTake(day, take));
  const write = (name: string, value: unknown): void => {
    links.set(name, { ...links.get(name), value, by: take });
  };
  if (swap.by === 'packs')
    for (const { transmitter, voice } of swap.worn) write(key.worn(transmitter), voice);
  else for (const { input, tracks } of swap.routes) write(key.sent(input), tracks);
  return links;
}
