import type { FactId } from '../../shared/ids.ts';
import type { Chain } from '../chain/chain.ts';
import type { Gang } from '../chain/gang-links.ts';
import { nameTypedFor } from '../chain/links.ts';
import { micToldApart } from '../chain/mics.ts';
import { type ChainEnds, isMuted, liveSources, type Reach, type Source } from '../chain/reach.ts';
import type { Part, PartId, VoiceId } from '../model.ts';

export type TrackState = 'mix' | 'empty' | 'single' | 'gang' | 'clash' | 'muted';

/** A source with somebody on it, as it arrives at a track. */
export interface Heard {
  readonly source: Source;
  readonly voice: VoiceId;
  readonly input: PartId;
  readonly muted: boolean;
  /** What tells its mic from others on the same body, or the name of its pack; missing if there is only one. */
  readonly mic?: string;
  /** Nothing said of the mics tells them apart, only the packs do. */
  readonly byPack?: true;
}

export interface TrackAnswer {
  readonly track: Part;
  readonly state: TrackState;
  /** What editors read: the parts heard on it, or the name typed by hand. Empty if there is nobody. */
  readonly name: string;
  readonly typed: boolean;
  readonly heard: readonly Heard[];
  readonly because: readonly FactId[];
}

/** Those heard on a track: muted ones arrive there but are not heard. */
export const audibleOn = ({ heard }: Pick<TrackAnswer, 'heard'>): Heard[] =>
  heard.filter(({ muted }) => !muted);

/** What a track records, from what reaches its inputs; a mix has no inputs of its own. */
export function trackAnswer(
  ends: ChainEnds,
  chain: Chain,
  track: Part,
  feeding: readonly Reach[],
): TrackAnswer {
  const typed = nameTypedFor(chain, track.id);
  const heard = feeding.flatMap((at) =>
    liveSources(at).map((source) => ({
      source,
      voice: source.voice!,
      input: at.input.id,
      muted: isMuted(at, source),
      ...micOf(ends, chain, source),
    })),
  );
  const audible = audibleOn({ heard });
  const voices = new Set(audible.map(({ voice }) => voice)).size;
  const gang = voices > 1 ? gangFor(chain.gangsOn(track.id), audible) : undefined;
  // A voice that arrives twice counts once; two voices with one name are two.
  const named = [...new Set(heard.map(({ voice }) => voice))].map((voice) => nameOnTrack(ends, heard, voice));
  return {
    track,
    state: track.mix ? 'mix' : trackState(heard.length, voices, gang !== undefined),
    name: typed?.value ?? (track.mix ? track.name : named.join(', ')),
    typed: Boolean(typed?.value),
    heard,
    because: [
      ...feeding.flatMap(({ because }) => because),
      ...heard.flatMap(({ source }) => source.because),
      ...[gang?.by, typed?.by].filter((id) => id !== undefined),
    ],
  };
}

/** The gang that lets those heard share a track. A voice that comes by two sources is in it by either. */
export const gangFor = (gangs: readonly Gang[], audible: readonly Heard[]): Gang | undefined =>
  gangs.find(({ sources }) =>
    audible.every(({ voice }) =>
      audible.some((one) => one.voice === voice && sources.includes(one.source.id)),
    ),
  );

/** The voices that a track hears by more than one source: one pack on two channels, say. */
export function heardTwice(answer: Pick<TrackAnswer, 'heard'>): VoiceId[] {
  const voices = audibleOn(answer).map(({ voice }) => voice);
  return [...new Set(voices.filter((voice, at) => voices.indexOf(voice) !== at))];
}

/** A voice that arrives twice is one voice: it cannot clash with itself. */
function trackState(live: number, audible: number, onPurpose: boolean): TrackState {
  if (live === 0) return 'empty';
  if (audible === 0) return 'muted';
  if (audible === 1) return 'single';
  return onPurpose ? 'gang' : 'clash';
}

/** What tells the mic of a source from others on that body. */
function micOf(
  { rig }: ChainEnds,
  chain: Chain,
  { voice, transmitter }: Source,
): Pick<Heard, 'mic' | 'byPack'> {
  if (voice === null || transmitter === null) return {};
  const packs = chain.packsOn(voice);
  if (packs.length < 2) return {};
  const mic = micToldApart(
    chain,
    voice,
    packs.map(({ part }) => part),
    transmitter,
  );
  if (mic) return { mic };
  // A pack that nobody receives is on no track.
  const received = packs.filter(({ part }) => chain.channelsOf(part).length > 0);
  return received.length < 2 ? {} : { mic: rig.byId.get(transmitter)?.name ?? '', byPack: true };
}

/**
 * A voice's name on one track, with which of its mics that is where it wears several: `'Ines chest'`, or `'Ines A2'`
 * where only the packs tell; reports once did without.
 */
export function nameOnTrack(
  ends: Pick<ChainEnds, 'voices'>,
  heard: readonly Heard[],
  voice: VoiceId,
  withPacks = true,
): string {
  const own = heard.filter((one) => one.voice === voice);
  const mics = new Set(own.map(({ mic = '', byPack }) => (byPack && !withPacks ? '' : mic)));
  const [mic = ''] = mics;
  const name = voiceName(ends, voice);
  // Both of them on the track are simply the voice.
  return mics.size === 1 && mic !== '' ? `${name} ${mic}` : name;
}

/** A voice's name on tracks: its part, or the performer if there is no part. */
export function voiceName({ voices }: Pick<ChainEnds, 'voices'>, id: VoiceId): string {
  const voice = voices.get(id);
  return voice?.part || voice?.person || '(no name)';
}
