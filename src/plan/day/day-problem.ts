import { type Answers, answersBefore } from '../../day/answers/answers.ts';
import { gangsOn } from '../../day/chain/gang-links.ts';
import { sentTo, thrownTo, tunedTo, weightsIn, wornBy } from '../../day/chain/links.ts';
import type { Day, Links, Part, PartId, TakeId, VoiceId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { inputsOf, tracksOf } from '../../day/recorders/recorder-parts.ts';
import { batchOf } from '../../facts/kinds/envelope.ts';
import { inputOf } from '../../facts/kinds/rig-kinds.ts';
import { PLAIN_WEIGHTS, type PlanInput, type PlanProblem } from '../plan-problem.ts';
import { isOut, planPaths } from './day-paths.ts';
import { channelsElsewhere, settledBefore } from './heard-elsewhere.ts';
import { planVoices } from './plan-voices.ts';

/** What a setup is planned for, and on. */
export interface PlanOf {
  /** One of the day's recorders; the main one of those that roll if it is left out. */
  readonly recorder?: PartId | undefined;
  /** Just before this take; now if it is left out. */
  readonly before?: TakeId | undefined;
  /** The chain as it will be by then, if that is not how it stands. */
  readonly answers?: Answers | undefined;
}

/**
 * The next setup of a recorder as a planning problem: the chain, and who is needed. What recorders before it
 * that roll hear stays with them: packs on their bodies, and channels tuned as they are.
 */
export function problemOf(day: Day, wanted: ReadonlySet<VoiceId>, of: PlanOf = {}): PlanProblem {
  const answers = of.answers ?? answersBefore(day, of.before);
  const { links } = answers;
  const { rig } = day;
  const rolled = of.recorder ?? answers.main.recorder;
  const recorder = recordsAs(rig, rolled);
  const settled = settledBefore(answers, rolled);
  const elsewhere = channelsElsewhere(answers, recorder);
  const canShare = sharersOf(day, answers, recorder);
  const isos = tracksOf(rig, recorder).filter(({ mix }) => !mix);
  return {
    voices: planVoices(day, answers, wanted, settled, { recorder, before: of.before }),
    transmitters: rig.transmitters.map(({ id }) => {
      const worn = wornBy(links, id)?.value;
      return { id, out: isOut(links, id), ...(worn && { wornBy: worn }) };
    }),
    channels: rig.channels.map(({ id }, place) => {
      const tuned = tunedTo(links, id)?.value;
      const kept = settled.channels.get(id);
      return {
        id,
        place,
        out: isOut(links, id),
        ...(tuned && { tunedTo: tuned }),
        ...(kept !== undefined && { canTune: kept === null ? [] : [kept] }),
        ...(elsewhere.has(id) && { stays: true }),
      };
    }),
    selectors: rig.selectors.map(({ id }) => ({ id, position: thrownTo(links, id)?.value ?? 'a' })),
    paths: planPaths(day, links, recorder),
    inputs: inputsOf(rig, recorder)
      .filter(({ reserved }) => !reserved)
      .map((input, place) => ({ ...planInput(links, input, isos, canShare.has(input.id)), place })),
    tracks: isos.map(({ id }) => ({ id, iso: true, out: isOut(links, id), gangAllowed: true })),
    weights: { ...PLAIN_WEIGHTS, ...definedOf(weightsIn(links)?.value ?? {}) },
  };
}

const definedOf = <T extends object>(fields: T): { [K in keyof T]: NonNullable<T[K]> } =>
  Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: NonNullable<T[K]>;
  };

/**
 * Inputs that may share a track: slots, those set up to share one, and those sharing one now in a declared
 * gang. Feeding the same track by chance does not count: a plan's own routes must not allow new gangs.
 */
function sharersOf(day: Day, { links, inputs }: Answers, recorder: PartId): Set<PartId> {
  const laid = laidRoutes(day);
  const fed = [...laid.values()].flat();
  const isLaidShared = (input: PartId): boolean =>
    (laid.get(input) ?? []).some((track) => fed.indexOf(track) !== fed.lastIndexOf(track));
  const declared = tracksOf(day.rig, recorder).flatMap(({ id }) =>
    gangsOn(links, id).flatMap(({ sources }) => {
      const on = inputs.filter(
        ({ reach }) =>
          reach.tracks.includes(id) && reach.arrival?.sources.some((one) => sources.includes(one.id)),
      );
      return on.length > 1 ? on.map(({ input }) => input.id) : [];
    }),
  );
  const sharing = inputsOf(day.rig, recorder).filter(
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
