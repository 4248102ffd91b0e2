import { answersAtTake, answersNow } from '../day/answers.ts';
import { leadsOf } from '../day/leads.ts';
import { outAt, pinsOf, sentTo, thrownTo, tunedTo, weightsIn, wornBy } from '../day/links.ts';
import type { Day, Lead, Links, Part, PartId, Voice, VoiceId } from '../day/model.ts';
import { takesInOrder } from '../day/takes.ts';
import type { InputKind, OutputKind } from '../facts/part-described.ts';
import {
  PLAIN_WEIGHTS,
  type PlanInput,
  type PlanPath,
  type PlanProblem,
  type PlanVoice,
} from './plan-problem.ts';

/** What a lead from this kind of output fits (common practice, no source); an internal receiver stays in its slot. */
const FITS: Record<OutputKind, readonly InputKind[]> = {
  analogue: ['mic', 'line', 'return'],
  aes3: ['aes3'],
  network: ['network'],
  slot: [],
};

/** How far back a voice's last track is looked for. */
const TAKES_BACK = 60;

/** The next setup of a day as a planning problem: the chain as it stands, and who is wanted. */
export function problemOf(day: Day, wanted: ReadonlySet<VoiceId>): PlanProblem {
  const { links } = answersNow(day);
  const { rig } = day;
  const shared = sharedTracks(links, rig.inputs);
  const isos = rig.tracks.filter(({ mix }) => !mix);
  return {
    voices: planVoices(day, links, wanted),
    transmitters: rig.transmitters.map(({ id }) => {
      const worn = wornBy(links, id)?.value;
      return { id, out: isOut(links, id), ...(worn && { wornBy: worn }) };
    }),
    channels: rig.channels.map(({ id }) => {
      const tuned = tunedTo(links, id)?.value;
      return { id, out: isOut(links, id), ...(tuned && { tunedTo: tuned }) };
    }),
    selectors: rig.selectors.map(({ id }) => ({ id, position: thrownTo(links, id)?.value ?? 'a' })),
    paths: planPaths(day, links),
    inputs: rig.inputs
      .filter(({ reserved }) => !reserved)
      .map((input) => planInput(links, input, isos, shared)),
    tracks: isos.map(({ id }) => ({ id, iso: true, out: isOut(links, id), gangAllowed: true })),
    weights: { ...PLAIN_WEIGHTS, ...definedOf(weightsIn(links)?.value ?? {}) },
  };
}

const isOut = (links: Links, part: string): boolean => outAt(links, part)?.value ?? false;

const definedOf = <T extends object>(fields: T): { [K in keyof T]: NonNullable<T[K]> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: NonNullable<T[K]>;
  };

function planVoices(day: Day, links: Links, wanted: ReadonlySet<VoiceId>): PlanVoice[] {
  const last = lastTracks(day);
  const need = new Map(answersNow(day).voices.map((answer) => [answer.voice.id, answer.need]));
  return [...day.voices.values()]
    .filter(({ struck }) => !struck)
    .map((voice) => {
      const pins = pinsOf(links, voice.id)?.value ?? {};
      const lastTrack = last.get(voice.id);
      return {
        id: voice.id,
        priority: voice.priority,
        needed: wanted.has(voice.id),
        done: need.get(voice.id) === 'done',
        ...(isHardline(day, links, voice) && { hardline: voice.id }),
        ...(pins.transmitter && { pinnedTransmitter: pins.transmitter }),
        ...(pins.channel && { pinnedChannel: pins.channel }),
        ...(pins.input && { pinnedInput: pins.input }),
        ...(pins.track && { pinnedTrack: pins.track }),
        ...(pins.alone && { alone: true }),
        ...(lastTrack && { lastTrack }),
      };
    });
}

/** A boom, plant or feed comes by a lead of its own unless it wears a pack. */
function isHardline({ rig }: Day, links: Links, { id, kind }: Voice): boolean {
  const wearsPack = rig.transmitters.some((pack) => wornBy(links, pack.id)?.value === id);
  const hasLead = [...leadsOf(rig, links)].some(({ link }) => link.value.from === id);
  return !wearsPack && (kind !== 'performer' || hasLead);
}

/** The track on which each voice was recorded last. */
function lastTracks(day: Day): Map<VoiceId, PartId> {
  const tracks = new Map<VoiceId, PartId>();
  for (const { id } of takesInOrder(day).slice(-TAKES_BACK)) {
    for (const { voice, tracks: on } of answersAtTake(day, id).voices) {
      if (on[0]) tracks.set(voice.id, on[0]);
    }
  }
  return tracks;
}

/** Every way from a source to an input: as plugged now, and wherever its lead could be plugged instead. */
function planPaths(day: Day, links: Links): PlanPath[] {
  const { rig } = day;
  const plugged = new Map<string, { lead: string; at: Lead }>();
  for (const { id, link } of leadsOf(rig, links)) {
    if (link.value.from) plugged.set(link.value.from, { lead: id, at: link.value });
  }
  const ends: { end: string; source: string; fits: readonly InputKind[] }[] = [];
  for (const output of rig.outputs) {
    const [source] = output.carries ?? [];
    // An output of two channels brings both at once; only the first can be planned as somebody's own.
    if (!output.reserved && source) {
      const fits = output.outputKind ? FITS[output.outputKind] : [];
      ends.push({ end: output.id, source, fits });
    }
  }
  for (const { id, kind, struck } of day.voices.values()) {
    if (!struck && (kind !== 'performer' || plugged.has(id))) {
      ends.push({ end: id, source: id, fits: ['mic', 'line'] });
    }
  }
  return ends.flatMap(({ end, source, fits }) => {
    const now = plugged.get(end);
    const lead = now?.lead ?? `lead-${end}`;
    const out = isOut(links, lead) || isOut(links, end);
    return rig.inputs.flatMap((input) => waysInto(day, input, { lead, source, fits, out, now: now?.at }));
  });
}

interface From {
  readonly lead: string;
  readonly source: string;
  readonly fits: readonly InputKind[];
  readonly out: boolean;
  readonly now: Lead | undefined;
}

function waysInto(day: Day, input: Part, { lead, source, fits, out, now }: From): PlanPath[] {
  const selector = day.rig.selectors.find((one) => one.input === input.id);
  const positions = selector ? (['a', 'b'] as const) : (['a'] as const);
  return positions.flatMap((position) => {
    const isThere = now?.to === input.id && (!selector || now.position === position);
    if (!isThere && !(input.inputKind && fits.includes(input.inputKind))) return [];
    return {
      id: pathId({ lead, input: input.id, position }),
      source,
      input: input.id,
      lead,
      plugged: isThere,
      out,
      ...(selector && { selector: { id: selector.id, position } }),
    };
  });
}

interface PathEnds {
  readonly lead: string;
  readonly input: PartId;
  readonly position: 'a' | 'b';
}

const pathId = ({ lead, input, position }: PathEnds): string => JSON.stringify([lead, input, position]);

/** The ends of a path, from the id that `problemOf` gave it. */
export function pathEnds(id: string): PathEnds {
  const [lead, input, position] = JSON.parse(id) as [string, string, 'a' | 'b'];
  return { lead, input, position };
}

/** Tracks that several inputs feed already: sharing them is how this rig is meant. */
function sharedTracks(links: Links, inputs: readonly Part[]): Set<PartId> {
  const fed = inputs.flatMap(({ id }) => sentTo(links, id)?.value ?? []);
  return new Set(fed.filter((track, at) => fed.indexOf(track) !== at));
}

function planInput(
  links: Links,
  { id, inputKind }: Part,
  isos: readonly Part[],
  shared: ReadonlySet<PartId>,
): PlanInput {
  const [track] = sentTo(links, id)?.value ?? [];
  return {
    id,
    out: isOut(links, id),
    ...(track && { track }),
    mayFeed: isos.map((iso) => iso.id),
    canGang: inputKind === 'slot' || (track !== undefined && shared.has(track)),
  };
}
