import type { FactId } from '../../shared/ids.ts';
import type { Chain, SaidOf } from '../chain/chain.ts';
import type { PluggedLead } from '../chain/leads.ts';
import { hadPack, needOf } from '../chain/links.ts';
import { outputsOf } from '../chain/outputs.ts';
import type { ChainEnds, Reach } from '../chain/reach.ts';
import type { Link, Need, Open, PartId, Rig, Voice, VoiceId } from '../model.ts';
import type { TrackAnswer, TrackState } from './track-answers.ts';

/**
 * How a voice is recorded. Somebody who wore a pack today and has none now is `unrecorded` until marked as
 * resting or done; `off` means nobody is waiting for them: they rest, or have not been wired yet.
 */
export type VoiceState = 'alone' | 'gang' | 'clash' | 'muted' | 'unrecorded' | 'off';

/** Where a chain breaks, link by link from the body. */
export type Break =
  | 'no-transmitter'
  | 'pack-gone'
  | 'no-channel'
  | 'no-output'
  | 'no-lead'
  | 'lead-hangs'
  | 'pushed-out'
  | 'switched-away'
  | 'no-track';

/** One path from a body to the tracks, as far as it goes. */
export interface Path {
  readonly transmitter: PartId | null;
  readonly channel: PartId | null;
  readonly output: PartId | null;
  readonly lead: string | null;
  readonly input: PartId | null;
  readonly selector: PartId | null;
  readonly tracks: readonly PartId[];
  /** The receiver channel or hardline voice it is heard as, if it gets that far. */
  readonly source: string | null;
  readonly broken: Break | null;
  readonly because: readonly FactId[];
}

export interface VoiceAnswer {
  readonly voice: Voice;
  readonly state: VoiceState;
  readonly need: Open<Need> | null;
  readonly tracks: readonly PartId[];
  readonly paths: readonly Path[];
}

const START: Path = {
  transmitter: null,
  channel: null,
  output: null,
  lead: null,
  input: null,
  selector: null,
  tracks: [],
  source: null,
  broken: null,
  because: [],
};

/** What a voice's paths are looked up in. */
export interface Wiring {
  readonly ends: ChainEnds;
  readonly chain: Chain;
  readonly leadsFrom: (end: PartId | VoiceId) => readonly PluggedLead[];
  readonly reachOf: (input: PartId) => Reach | undefined;
  readonly trackOf: (track: PartId) => TrackAnswer | undefined;
}

/** Whether a voice is heard on a track, alone or with others. */
export const isHeard = ({ state }: Pick<VoiceAnswer, 'state'>): boolean =>
  state === 'alone' || state === 'gang' || state === 'clash';

/** Whether a voice is needed but not heard, which includes one that is muted. */
export const isMissed = ({ state, need }: Pick<VoiceAnswer, 'state' | 'need'>): boolean =>
  state === 'unrecorded' || (state === 'muted' && isWaitedFor(need));

/** A need that only a newer version knows does not count as resting or done. */
export const isWaitedFor = (need: Open<Need> | null): boolean =>
  need !== null && need !== 'resting' && need !== 'done';

/** A voice's paths to the tracks of a recorder, and how it is recorded. `radio`: its radio paths, which all recorders share. */
export function voiceAnswer(wiring: Wiring, voice: Voice, radio: readonly Path[]): VoiceAnswer {
  const { chain, ends, leadsFrom } = wiring;
  const need = needOf(chain, voice.id)?.value ?? null;
  // An unplugged hardline is no source, like a pack that nobody wears. One whose socket was taken does count.
  const plugged = leadsFrom(voice.id).some(
    ({ link, pushedOutOf }) => link.value.to !== null || pushedOutOf !== null,
  );
  const wired = plugged ? leadPaths(wiring, voice.id, { ...START, source: voice.id }) : [];
  const received = radio.flatMap((path) => (path.output ? leadPaths(wiring, path.output, path) : [path]));
  const paths = [...received, ...wired];
  const tracks = [...new Set(paths.flatMap((path) => path.tracks))].filter((id) => ends.rig.byId.has(id));
  if (paths.length === 0) {
    const had = hadPack(chain, voice.id);
    const lost = had && ends.rig.byId.has(had.value) ? had : undefined;
    const state = isWaitedFor(need) || (lost && need === null) ? 'unrecorded' : 'off';
    return { voice, state, need, tracks, paths: [withNothing(voice, lost)] };
  }
  return { voice, state: stateOn(wiring, voice, tracks, need), need, tracks, paths };
}

/** The path of somebody who wears nothing and is plugged into nothing. */
function withNothing(voice: Voice, lost: Link<PartId> | undefined): Path {
  if (lost) return { ...START, broken: 'pack-gone', because: [lost.by] };
  return { ...START, broken: voice.kind === 'performer' ? 'no-transmitter' : 'no-lead' };
}

/** The radio paths of a voice up to the outputs of its receivers, or to where they break before. */
export const radioPaths = ({ rig }: Pick<ChainEnds, 'rig'>, chain: Chain, voice: VoiceId): Path[] =>
  chain.packsOn(voice).flatMap((pack) => packPaths(rig, chain, pack));

function packPaths(rig: Rig, chain: Chain, pack: SaidOf): Path[] {
  const worn: Path = { ...START, transmitter: pack.part, because: [pack.by] };
  const channels = chain.channelsOf(pack.part);
  if (channels.length === 0) return [{ ...worn, broken: 'no-channel' }];
  return channels.flatMap(({ part: channel, by }): Path[] => {
    const tuned: Path = { ...worn, channel, source: channel, because: [...worn.because, by] };
    const outputs = outputsOf(rig, channel);
    if (outputs.length === 0) return [{ ...tuned, broken: 'no-output' }];
    return outputs.map((output) => ({ ...tuned, output }));
  });
}

function leadPaths(wiring: Wiring, from: string, path: Path): Path[] {
  const leads = wiring.leadsFrom(from);
  if (leads.length === 0) return [{ ...path, broken: 'no-lead' }];
  return leads.map((lead) => inputPath(wiring, lead, path));
}

function inputPath(wiring: Wiring, lead: PluggedLead, path: Path): Path {
  const { by, value } = lead.link;
  const reach = value.to ? wiring.reachOf(value.to) : undefined;
  if (!reach) return hangingPath(wiring, lead, { ...path, lead: lead.id, because: [...path.because, by] });
  const arrives = reach.arrival?.lead === lead.id;
  const tracks = arrives ? reach.tracks : path.tracks;
  // Made at once: at every answer there is one of these for each voice and recorder.
  return {
    ...path,
    lead: lead.id,
    input: reach.input.id,
    selector: reach.selector?.part.id ?? null,
    tracks,
    broken: !arrives ? 'switched-away' : tracks.length === 0 ? 'no-track' : path.broken,
    because: [...path.because, by, ...reach.because],
  };
}

/** A lead that goes nowhere; or one that was pushed out, while another is still in its socket. */
function hangingPath({ reachOf }: Wiring, { pushedOutOf }: PluggedLead, led: Path): Path {
  const reach = pushedOutOf ? reachOf(pushedOutOf.input) : undefined;
  const isThrown = !reach?.selector || reach.selector.position === pushedOutOf?.position;
  const other = isThrown ? reach?.arrival : reach?.away;
  if (!reach || !other) return { ...led, broken: 'lead-hangs' };
  return { ...led, input: reach.input.id, because: [...led.because, other.because], broken: 'pushed-out' };
}

const BEST_FIRST: readonly TrackState[] = ['single', 'gang', 'clash'];
const AS_VOICE: Partial<Record<TrackState, VoiceState>> = { single: 'alone', gang: 'gang', clash: 'clash' };

function stateOn(
  { trackOf }: Wiring,
  voice: Voice,
  tracks: readonly PartId[],
  need: Open<Need> | null,
): VoiceState {
  const on = tracks.map(trackOf).filter((track) => track !== undefined);
  const heard = on.filter((track) => track.heard.some((one) => one.voice === voice.id && !one.muted));
  const best = BEST_FIRST.find((state) => heard.some((track) => track.state === state));
  if (best) return AS_VOICE[best]!;
  if (on.some((track) => track.heard.some((one) => one.voice === voice.id))) return 'muted';
  return need === 'resting' || need === 'done' ? 'off' : 'unrecorded';
}
