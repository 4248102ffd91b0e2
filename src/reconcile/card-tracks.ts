import type { Day, Part, PartId } from '../day/model.ts';
import { newIds } from '../day/new-ids.ts';
import type { Draft } from '../facts/fact.ts';
import type { Recording, RecordingTrack } from '../wave/recording/recordings.ts';
import { fileTracksOf } from './log-and-card/file-tracks.ts';
import { cutText, plainKey } from './log-and-card/plain-key.ts';

const MOST_TRACKS = 64;

/** A track of the recorder, as the card has it. */
interface CardTrack {
  readonly part: PartId;
  readonly channel: number;
  readonly mix: boolean;
  /** The matching track of the day, if there is one. */
  readonly known: Part | undefined;
}

/** The tracks of a card in channel order, and their names in each recording. */
export interface CardTracks {
  readonly tracks: readonly CardTrack[];
  readonly namesIn: (recording: Recording) => ReadonlyMap<PartId, string>;
}

/** Every track in the recordings: the day's own, and new ones for other channels. */
export function cardTracksOf(recordings: readonly Recording[], onto?: Day): CardTracks {
  const known = onto?.rig.tracks ?? [];
  const newId = onto ? newIds(onto) : (id: PartId) => id;
  const added = new Map<number, PartId>();
  const newPart = (channel: number): PartId => {
    const part = added.get(channel) ?? newId(`tr${channel}`);
    added.set(channel, part);
    return part;
  };
  const tracks = new Map<PartId, CardTrack>();
  const names = new Map<Recording, Map<PartId, string>>();
  for (const recording of recordings) {
    const partOf = knownParts(known, recording);
    const named = new Map<PartId, string>();
    names.set(recording, named);
    for (const [channel, track] of numbered(recording)) {
      if (channel < 1 || channel > MOST_TRACKS) continue;
      const part = partOf(track, channel) ?? newPart(channel);
      const mix = isMix(track) || tracks.get(part)?.mix === true;
      tracks.set(part, { part, channel, mix, known: known.find(({ id }) => id === part) });
      named.set(part, cutText(track.name?.trim() ?? '', 200));
    }
  }
  return {
    tracks: [...tracks.values()].sort((a, b) => a.channel - b.channel),
    namesIn: (recording) => names.get(recording) ?? new Map(),
  };
}

/** The tracks as parts of a rig. Existing ones keep their name and place. */
export const rigOf = ({ tracks }: CardTracks): Draft[] =>
  tracks.length === 0
    ? []
    : [
        {
          kind: 'rig-laid',
          parts: tracks.map(({ part, channel, mix, known }) => {
            const { name = `${channel}`, order = channel } = known ?? {};
            const isMixed = mix || known?.mix === true;
            return {
              part,
              fields: { type: 'track', name, order, mix: isMixed, tap: isMixed ? 'post' : 'pre' },
            };
          }),
        },
      ];

const isMix = ({ function: role, name }: RecordingTrack): boolean =>
  /MIX/.test(plainKey(`${role ?? ''} ${name ?? ''}`));

/** The channels of a recording with the machine's numbers; their positions if the files have none. */
function numbered({ tracks }: Recording): (readonly [channel: number, track: RecordingTrack])[] {
  const known = tracks.filter(({ channel }) => channel !== undefined);
  return known.length > 0
    ? known.map((track) => [track.channel!, track])
    : tracks.map((track, at) => [at + 1, track]);
}

/** Which track of the day each track of a recording is; by number or position if the files do not say. */
function knownParts(
  tracks: readonly Part[],
  recording: Recording,
): (track: RecordingTrack, channel: number) => PartId | undefined {
  const found = fileTracksOf(tracks, recording);
  if (found) {
    const parts = new Map([...found].map(([part, track]) => [track, part]));
    return (track) => parts.get(track);
  }
  return (_, channel) => {
    const inPlace = tracks[channel - 1];
    const byNumber = tracks.find(({ name }) => name.trim() === `${channel}`);
    return (byNumber ?? (inPlace?.mix ? inPlace : undefined))?.id;
  };
}
