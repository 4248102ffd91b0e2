import { type Answers, answersAtTake, answersNow } from '../../day/answers/answers.ts';
import type { VoiceState } from '../../day/answers/voice-answers.ts';
import { isHardline } from '../../day/cast-in-order.ts';
import { gangsOn } from '../../day/chain/gang-links.ts';
import { leadsOf } from '../../day/chain/leads.ts';
import { pinsOf, sentTo, thrownTo, tunedTo, weightsIn, wornBy } from '../../day/chain/links.ts';
import type { Day, Links, Part, PartId, Voice, VoiceId } from '../../day/model.ts';
import { takesInOrder } from '../../day/takes.ts';
import { batchOf } from '../../facts/kinds/envelope.ts';
import { inputOf } from '../../facts/kinds/rig-kinds.ts';
import { PLAIN_WEIGHTS, type PlanInput, type PlanProblem, type PlanVoice } from '../plan-problem.ts';
import { isOut, planPaths } from './day-paths.ts';

/** How far back to look for a voice's last track. */
const TAKES_BACK = 60;

/** The next setup of a day as a planning problem: the current chain, and who is needed. */
export function problemOf(day: Day, wanted: ReadonlySet<VoiceId>): PlanProblem {
  const answers = answersNow(day);
  const { links } = answers;
  const { rig } = day;
  const canShare = sharersOf(day, answers);
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
      .map((input) => planInput(links, input, isos, canShare.has(input.id))),
    tracks: isos.map(({ id }) => ({ id, iso: true, out: isOut(links, id), gangAllowed: true })),
    weights: { ...PLAIN_WEIGHTS, ...definedOf(weightsIn(links)?.value ?? {}) },
  };
}

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
        ...waysOf(day, links, voice),
        ...(pins.transmitter && { pinnedTransmitter: pins.transmitter }),
        ...(pins.channel && { pinnedChannel: pins.channel }),
        ...(pins.input && { pinnedInput: pins.input }),
        ...(pins.track && { pinnedTrack: pins.track }),
        ...(pins.alone && { alone: true }),
        ...(lastTrack && { lastTrack }),
      };
    });
}

/**
 * A boom, plant or feed comes in by its own lead or by a pack; a performer by a pack, or by a lead if there
 * is one. Both stay possible, so that giving up a pack restores the earlier plan.
 */
function waysOf({ rig }: Day, links: Links, { id, kind }: Voice): Pick<PlanVoice, 'hardline' | 'mayWear'> {
  const hasLead = isHardline(kind) || [...leadsOf(rig, links)].some(({ link }) => link.value.from === id);
  if (!hasLead) return {};
  const wears = rig.transmitters.some((pack) => wornBy(links, pack.id)?.value === id);
  const isPinned = pinsOf(links, id)?.value?.transmitter !== undefined;
  return { hardline: id, mayWear: kind === 'performer' || wears || isPinned };
}

const IS_RECORDED: ReadonlySet<VoiceState> = new Set(['alone', 'gang', 'clash']);

/** The track each voice was last recorded on. */
function lastTracks(day: Day): Map<VoiceId, PartId> {
  const tracks = new Map<VoiceId, PartId>();
  for (const { id } of takesInOrder(day).slice(-TAKES_BACK)) {
    for (const { voice, state, tracks: on } of answersAtTake(day, id).voices) {
      if (on[0] && IS_RECORDED.has(state)) tracks.set(voice.id, on[0]);
    }
  }
  return tracks;
}

/**
 * Inputs that may share a track: slots, those set up to share one, and those sharing one now in a declared
 * gang. Feeding the same track by chance does not count: a plan's own routes must not allow new gangs.
 */
function sharersOf(day: Day, { links, inputs }: Answers): Set<PartId> {
  const laid = laidRoutes(day);
  const fed = [...laid.values()].flat();
  const isLaidShared = (input: PartId): boolean =>
    (laid.get(input) ?? []).some((track) => fed.indexOf(track) !== fed.lastIndexOf(track));
  const declared = day.rig.tracks.flatMap(({ id }) =>
    gangsOn(links, id).flatMap(({ sources }) => {
      const on = inputs.filter(
        ({ reach }) =>
          reach.tracks.includes(id) && reach.arrival?.sources.some((one) => sources.includes(one.id)),
      );
      return on.length > 1 ? on.map(({ input }) => input.id) : [];
    }),
  );
  const sharing = day.rig.inputs.filter(
    ({ id, inputKind }) => inputOf(inputKind)?.sharesTrack || isLaidShared(id),
  );
  return new Set([...sharing.map(({ id }) => id), ...declared]);
}

/** Where each input was routed when it was set up. */
function laidRoutes({ facts, takenBack }: Day): Map<PartId, readonly PartId[]> {
  const layings = new Set<string>();
  for (const fact of facts)
    if (fact.kind === 'rig-laid' && !takenBack.has(fact.id)) layings.add(batchOf(fact));
  const routes = facts.flatMap((fact) => {
    const isLaid = fact.kind === 'inputs-sent' && layings.has(batchOf(fact)) && !takenBack.has(fact.id);
    return isLaid ? fact.routes : [];
  });
  return new Map(routes.map(({ input, tracks }) => [input, tracks]));
}

function planInput(links: Links, { id }: Part, isos: readonly Part[], canGang: boolean): PlanInput {
  const track = sentTo(links, id)?.value.find((one) => isos.some((iso) => iso.id === one));
  return {
    id,
    out: isOut(links, id),
    ...(track && { track }),
    mayFeed: isos.map((iso) => iso.id),
    canGang,
  };
}
