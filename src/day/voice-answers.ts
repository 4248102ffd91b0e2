import type { FactId } from '../shared/ids.ts';
import { leadsOf, needOf, tunedTo, wornBy } from './links.ts';
import type { Lead, Link, Links, Need, PartId, Voice } from './model.ts';
import type { Reach, Standing } from './reach.ts';
import type { TrackAnswer, TrackState } from './track-answers.ts';

/** How a voice is recorded; `off` is somebody whom nobody waits for and who wears nothing. */
export type VoiceState = 'alone' | 'gang' | 'clash' | 'muted' | 'unrecorded' | 'off';

/** Where a chain breaks, named link by link from the body. */
export type Break =
  | 'no-transmitter'
  | 'no-channel'
  | 'no-output'
  | 'no-lead'
  | 'lead-hangs'
  | 'pushed-out'
  | 'switched-away'
  | 'no-track';

/** One way from a body to the tracks, as far as it goes. */
export interface Path {
  readonly transmitter: PartId | null;
  readonly channel: PartId | null;
  readonly output: PartId | null;
  readonly lead: string | null;
  readonly input: PartId | null;
  readonly selector: PartId | null;
  readonly tracks: readonly PartId[];
  /** The receiver channel or hardline voice it is heard as, once there is one. */
  readonly source: string | null;
  readonly broken: Break | null;
  readonly because: readonly FactId[];
}

export interface VoiceAnswer {
  readonly voice: Voice;
  readonly state: VoiceState;
  readonly need: Need | null;
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

/** For every voice of the cast, as said: its ways to the tracks, and how it is recorded. */
export function voiceAnswers(
  standing: Standing,
  links: Links,
  reach: readonly Reach[],
  tracks: readonly TrackAnswer[],
): VoiceAnswer[] {
  const wiring = wiringOf(standing, links, reach);
  const byTrack = new Map(tracks.map((track) => [track.track.id, track]));
  return [...standing.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice) => voiceAnswer(standing, links, wiring, byTrack, voice));
}

/** The chain read backwards, built once for all voices. */
interface Wiring {
  readonly packsOn: ReadonlyMap<string, readonly { transmitter: PartId; by: FactId }[]>;
  readonly channelsOf: ReadonlyMap<PartId, readonly { channel: PartId; by: FactId }[]>;
  readonly outputsOf: ReadonlyMap<PartId, readonly PartId[]>;
  readonly leadsFrom: ReadonlyMap<string, readonly { id: string; link: Link<Lead> }[]>;
  readonly reachOf: ReadonlyMap<PartId, Reach>;
}

function wiringOf({ rig }: Standing, links: Links, reach: readonly Reach[]): Wiring {
  const packsOn = new Map<string, { transmitter: PartId; by: FactId }[]>();
  const channelsOf = new Map<PartId, { channel: PartId; by: FactId }[]>();
  const outputsOf = new Map<PartId, PartId[]>();
  const leadsFrom = new Map<string, { id: string; link: Link<Lead> }[]>();
  for (const { id } of rig.transmitters) {
    const worn = wornBy(links, id);
    if (worn?.value) push(packsOn, worn.value, { transmitter: id, by: worn.by });
  }
  for (const { id } of rig.channels) {
    const tuned = tunedTo(links, id);
    if (tuned?.value) push(channelsOf, tuned.value, { channel: id, by: tuned.by });
  }
  for (const output of rig.outputs) {
    if (!output.reserved) for (const channel of output.carries ?? []) push(outputsOf, channel, output.id);
  }
  for (const lead of leadsOf(links)) {
    if (lead.link.value.from) push(leadsFrom, lead.link.value.from, lead);
  }
  return { packsOn, channelsOf, outputsOf, leadsFrom, reachOf: new Map(reach.map((r) => [r.input.id, r])) };
}

function push<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}

function voiceAnswer(
  standing: Standing,
  links: Links,
  wiring: Wiring,
  byTrack: ReadonlyMap<PartId, TrackAnswer>,
  voice: Voice,
): VoiceAnswer {
  const need = needOf(links, voice.id)?.value ?? null;
  const radio = (wiring.packsOn.get(voice.id) ?? []).flatMap((pack) => radioPaths(wiring, pack));
  // A hardline that is unplugged is no source; it waits like a pack that is on nobody.
  const plugged = wiring.leadsFrom.get(voice.id)?.some(({ link }) => link.value.to !== null);
  const wired = plugged ? leadPaths(wiring, voice.id, { ...START, source: voice.id }, voice.id) : [];
  const paths = [...radio, ...wired];
  const tracks = [...new Set(paths.flatMap((path) => path.tracks))].filter((id) => standing.rig.byId.has(id));
  if (paths.length === 0) {
    const state = need === 'needed' ? 'unrecorded' : 'off';
    return {
      voice,
      state,
      need,
      tracks,
      paths: [{ ...START, broken: voice.kind === 'performer' ? 'no-transmitter' : 'no-lead' }],
    };
  }
  return { voice, state: stateOn(voice, tracks, byTrack, need), need, tracks, paths };
}

function radioPaths(wiring: Wiring, pack: { transmitter: PartId; by: FactId }): Path[] {
  const worn: Path = { ...START, transmitter: pack.transmitter, because: [pack.by] };
  const channels = wiring.channelsOf.get(pack.transmitter) ?? [];
  if (channels.length === 0) return [{ ...worn, broken: 'no-channel' }];
  return channels.flatMap(({ channel, by }) => {
    const tuned: Path = { ...worn, channel, source: channel, because: [...worn.because, by] };
    const outputs = wiring.outputsOf.get(channel) ?? [];
    if (outputs.length === 0) return [{ ...tuned, broken: 'no-output' as const }];
    return outputs.flatMap((output) => leadPaths(wiring, output, { ...tuned, output }, channel));
  });
}

function leadPaths(wiring: Wiring, from: string, path: Path, source: string): Path[] {
  const leads = wiring.leadsFrom.get(from) ?? [];
  if (leads.length === 0) return [{ ...path, broken: 'no-lead' }];
  return leads.map((lead) => inputPath(wiring, lead, path, source));
}

function inputPath(wiring: Wiring, lead: { id: string; link: Link<Lead> }, path: Path, source: string): Path {
  const led: Path = { ...path, lead: lead.id, because: [...path.because, lead.link.by] };
  const reach = lead.link.value.to ? wiring.reachOf.get(lead.link.value.to) : undefined;
  if (!reach) return { ...led, broken: 'lead-hangs' };
  const at: Path = {
    ...led,
    input: reach.input.id,
    selector: reach.selector?.part.id ?? null,
    because: [...led.because, ...reach.because],
  };
  const arrives = reach.arrival?.lead === lead.id && reach.arrival.sources.some(({ id }) => id === source);
  if (!arrives) return { ...at, broken: reach.away?.lead === lead.id ? 'switched-away' : 'pushed-out' };
  return reach.tracks.length === 0 ? { ...at, broken: 'no-track' } : { ...at, tracks: reach.tracks };
}

const BEST_FIRST: readonly TrackState[] = ['single', 'gang', 'clash'];
const AS_VOICE: Partial<Record<TrackState, VoiceState>> = { single: 'alone', gang: 'gang', clash: 'clash' };

function stateOn(
  voice: Voice,
  tracks: readonly PartId[],
  byTrack: ReadonlyMap<PartId, TrackAnswer>,
  need: Need | null,
): VoiceState {
  const on = tracks.map((id) => byTrack.get(id)).filter((track) => track !== undefined);
  const heard = on.filter((track) => track.heard.some((one) => one.voice === voice.id && !one.muted));
  const best = BEST_FIRST.find((state) => heard.some((track) => track.state === state));
  if (best) return AS_VOICE[best]!;
  if (on.some((track) => track.heard.some((one) => one.voice === voice.id))) return 'muted';
  return need === 'resting' || need === 'done' ? 'off' : 'unrecorded';
}
