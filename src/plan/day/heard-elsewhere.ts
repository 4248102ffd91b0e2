import type { Answers } from '../../day/answers/answers.ts';
import type { RecorderAnswers } from '../../day/answers/recorder-answers.ts';
import type { PartId, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';

/** The receiver channels with a lead to another recorder than this one. */
export const channelsElsewhere = ({ inputs }: Answers, recorder: PartId): ReadonlySet<PartId> =>
  new Set(
    inputs
      .filter(({ input }) => recorderOfPart(input) !== recorder)
      .flatMap(({ reach }) => [reach.arrival, reach.away])
      .flatMap((arrival) => arrival?.sources.flatMap(({ channel }) => channel ?? []) ?? []),
  );

/** What recorders that come first have, which stays as it is when a later one is planned. */
export interface Settled {
  /** The pack that a voice is heard by; of two, that by which the later one hears it already. */
  readonly packs: ReadonlyMap<VoiceId, PartId>;
  /** The channels that arrive on a track, each with the pack it is tuned to: another would be heard there too. */
  readonly channels: ReadonlyMap<PartId, PartId | null>;
}

/** What the recorders have that roll and come before this one, the main one first. */
export function settledBefore({ recorders }: Answers, recorder: PartId): Settled {
  const rolling = recorders.filter(({ rolls }) => rolls);
  const place = rolling.findIndex((one) => one.recorder === recorder);
  const before = rolling.slice(0, Math.max(0, place));
  const packs = before.flatMap(packsOn);
  const isSettled = ([voice, pack]: VoicesPack): boolean =>
    packs.some((one) => one[0] === voice && one[1] === pack);
  const own = recorders.filter((one) => one.recorder === recorder).flatMap(packsOn);
  return {
    packs: new Map([...packs, ...own.filter(isSettled)]),
    channels: new Map(before.flatMap(channelsOn)),
  };
}

type VoicesPack = readonly [voice: VoiceId, pack: PartId];

const packsOn = ({ tracks }: RecorderAnswers): VoicesPack[] =>
  tracks.flatMap(({ heard }) =>
    heard.flatMap(({ voice, source: { channel, transmitter }, muted }) =>
      channel && transmitter && !muted ? [[voice, transmitter]] : [],
    ),
  );

const channelsOn = ({ inputs }: RecorderAnswers) =>
  inputs.flatMap(({ reach: { arrival, tracks } }) =>
    arrival && tracks.length > 0
      ? arrival.sources.flatMap(({ channel, transmitter }) =>
          channel ? [[channel, transmitter] as const] : [],
        )
      : [],
  );
