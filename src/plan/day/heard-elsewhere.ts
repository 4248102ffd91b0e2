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
  /** The pack that a voice is heard by. */
  readonly packs: ReadonlyMap<VoiceId, PartId>;
  /** The channels that somebody is heard by, each with the pack it is tuned to. */
  readonly channels: ReadonlyMap<PartId, PartId>;
}

/** What the recorders have that roll and come before this one, the main one first. */
export function settledBefore({ recorders }: Answers, recorder: PartId): Settled {
  const rolling = recorders.filter(({ rolls }) => rolls);
  const place = rolling.findIndex((one) => one.recorder === recorder);
  const heard = rolling.slice(0, Math.max(0, place)).flatMap(heardOn);
  return {
    packs: new Map(heard.map(({ voice, pack }) => [voice, pack])),
    channels: new Map(heard.map(({ channel, pack }) => [channel, pack])),
  };
}

const heardOn = ({ tracks }: RecorderAnswers) =>
  tracks.flatMap(({ heard }) =>
    heard.flatMap(({ voice, source: { channel, transmitter: pack }, muted }) =>
      channel && pack && !muted ? [{ voice, channel, pack }] : [],
    ),
  );
