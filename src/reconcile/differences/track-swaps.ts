import { answersAtTake, answersFrom } from '../../day/answers/answers.ts';
import { key, linksAtTake, sentTo } from '../../day/chain/links.ts';
import type { Day, TakeId } from '../../day/model.ts';
import type { TrackSwap } from '../../day/wrap/card-settlement.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { differingTracks, type TrackCheck } from '../log-and-card/track-names.ts';

/**
 * The exchanges after which two tracks match the recording and no other track is wrong that was not: packs on
 * each other's bodies first, since that happens most (common practice, no source), then inputs. Each is tried
 * out on the chain.
 */
export function swapsOf(
  day: Day,
  take: TakeId,
  [one, other]: readonly [TrackCheck, TrackCheck],
  recording: Recording,
): TrackSwap[] {
  const known = differingTracks(day, answersAtTake(day, take), recording);
  const helps = (swap: TrackSwap): boolean => {
    const differing = differingTracks(day, answersFrom(day, linksWith(day, take, swap)), recording);
    const both = [one.track.id, other.track.id];
    return !both.some((track) => differing.has(track)) && [...differing].every((track) => known.has(track));
  };
  return [byPacks(one, other), byInputs(day, take, one, other)].filter(
    (swap): swap is TrackSwap => swap !== null && helps(swap),
  );
}

/** Only where each carries one voice with a pack. */
function byPacks({ answer: a }: TrackCheck, { answer: b }: TrackCheck): TrackSwap | null {
  const [heardA, heardB] = [a.heard[0], b.heard[0]];
  if (a.heard.length !== 1 || b.heard.length !== 1 || !heardA || !heardB) return null;
  const [packA, packB] = [heardA.source.transmitter, heardB.source.transmitter];
  if (!packA || !packB) return null;
  return {
    by: 'packs',
    worn: [
      { transmitter: packA, voice: heardB.voice },
      { transmitter: packB, voice: heardA.voice },
    ],
  };
}

/** What fed either track feeds the other; a further track of an input stays. */
function byInputs(day: Day, take: TakeId, one: TrackCheck, other: TrackCheck): TrackSwap | null {
  const { links } = answersAtTake(day, take);
  const exchanged = new Map([
    [one.track.id, other.track.id],
    [other.track.id, one.track.id],
  ]);
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
