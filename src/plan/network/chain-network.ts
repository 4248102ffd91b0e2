import {
  byId,
  type PlanChannel,
  type PlanInput,
  type PlanPath,
  type PlanProblem,
  type PlanSelector,
  type PlanTrack,
  type PlanTransmitter,
  type PlanVoice,
  SCENES_AHEAD,
} from '../plan-problem.ts';

/** The cost of changes in the fourth order; `extras` counts those that cost nothing, for ties. */
export interface Effort {
  readonly bench: number;
  readonly extras: number;
}

const STAYS: Effort = { bench: 0, extras: 0 };
const NEVER: Effort = { bench: Infinity, extras: 0 };
const change = (weight: number): Effort => ({ bench: weight, extras: weight === 0 ? 1 : 0 });
const sum = (a: Effort, b: Effort): Effort => ({
  bench: a.bench + b.bench,
  extras: a.extras + b.extras,
});

export interface NetworkPath extends Effort {
  readonly path: PlanPath;
  readonly source: number;
  readonly input: number;
  /** The shared selector it passes, or -1; a selector before one input only is part of the effort. */
  readonly bank: number;
  readonly position: number;
}

/** A selector shared by several inputs, so that throwing it moves them together. */
export interface Bank extends Effort {
  readonly selector: PlanSelector;
  readonly positions: readonly string[];
  readonly current: number;
}

/**
 * The usable part of a rig as five layers: needed voices, packs, sources, inputs, tracks. Nodes are sorted by
 * id, so the order of the problem's lists never matters. A hardline voice has its own pack entry (undefined).
 */
export interface ChainNetwork {
  readonly problem: PlanProblem;
  readonly voices: readonly PlanVoice[];
  readonly packs: readonly (PlanTransmitter | undefined)[];
  readonly sources: readonly (PlanChannel | string)[];
  readonly inputs: readonly PlanInput[];
  readonly tracks: readonly PlanTrack[];
  /** Third order: voice by pack; Infinity if not allowed. */
  readonly wear: Float64Array;
  /** 1 if the pack has to come off somebody first, for the tie-break. */
  readonly wearExtras: Float64Array;
  /** Fourth order: pack by source, input by track. */
  readonly tune: Float64Array;
  readonly feed: Float64Array;
  readonly tuneExtras: Float64Array;
  readonly feedExtras: Float64Array;
  readonly paths: readonly NetworkPath[];
  readonly banks: readonly Bank[];
  /** Voice by track: 0 on the last track or if there is none, 1 elsewhere, Infinity if pinned away. */
  readonly end: Float64Array;
  /** Voice by source and voice by input: 1 if pinned away. */
  readonly sourceBarred: Uint8Array;
  readonly inputBarred: Uint8Array;
}

/** Builds the layers of a problem. `chainNetwork(problem).voices` are the needed ones, sorted by id. */
export function chainNetwork(problem: PlanProblem): ChainNetwork {
  const voices = problem.voices.filter(({ needed }) => needed).sort(byId);
  const hardlines = voices.filter(({ hardline }) => hardline !== undefined);
  const packs = [...usable(problem.transmitters), ...hardlines.map(() => undefined)];
  const sources = [...usable(problem.channels), ...new Set(hardlines.map(({ hardline }) => hardline!))];
  const inputs = usable(problem.inputs);
  const tracks = usable(problem.tracks).filter(({ iso }) => iso);
  const layers = { problem, voices, packs, sources, inputs, tracks };
  return {
    ...layers,
    ...wearing(problem, voices, packs, hardlines),
    ...tuning(problem, packs, sources, hardlines),
    ...feeding(problem, inputs, tracks),
    ...reaching(problem, sources, inputs),
    ...pinning(voices, sources, inputs, tracks),
  };
}

const usable = <T extends { readonly id: string; readonly out?: boolean }>(list: readonly T[]): T[] =>
  list.filter(({ out }) => !out).sort(byId);

type Layer<T> = readonly T[];

function wearing(
  { voices: everybody, weights }: PlanProblem,
  voices: Layer<PlanVoice>,
  packs: Layer<PlanTransmitter | undefined>,
  hardlines: Layer<PlanVoice>,
) {
  const person = new Map(everybody.map((voice) => [voice.id, voice]));
  const isKept = (pack: string, from: string) =>
    everybody.some(({ id, pinnedTransmitter }) => pinnedTransmitter === pack && id !== from);
  const isPinnedToPack = ({ mayWear, pinnedTransmitter }: PlanVoice) =>
    mayWear === true && pinnedTransmitter !== undefined;
  const ownPack = packs.length - hardlines.length;
  const cost = (voice: PlanVoice, pack: PlanTransmitter | undefined, at: number): number => {
    if (!pack) return hardlines[at - ownPack] === voice && !isPinnedToPack(voice) ? 0 : Infinity;
    if (voice.hardline !== undefined && !voice.mayWear) return Infinity;
    if ((voice.pinnedTransmitter ?? pack.id) !== pack.id) return Infinity;
    if (isKept(pack.id, voice.id)) return Infinity;
    if (pack.wornBy === voice.id) return 0;
    const wearer = pack.wornBy === undefined ? undefined : person.get(pack.wornBy);
    if (!wearer) return weights.fit;
    return wearer.done || wearer.needed ? weights.move : weights.borrow + soonness(wearer);
  };
  return {
    wear: matrix(voices, packs, (voice, pack, _row, at) => cost(voice, pack, at)),
    wearExtras: matrix(voices, packs, ({ id }, pack) => {
      const wearer = pack?.wornBy;
      return wearer !== undefined && wearer !== id && person.has(wearer) ? 1 : 0;
    }),
  };
}

/**
 * The sooner somebody is needed again, the dearer their pack: it goes back the sooner. With packs that are all
 * alike, taking the one that is needed again last makes the fewest moves over all scenes (Belady, IBM Systems
 * Journal 5, 1966).
 */
const soonness = ({ neededAgain }: PlanVoice): number =>
  neededAgain === undefined ? 0 : Math.max(1, SCENES_AHEAD + 1 - neededAgain);

function tuning(
  { weights }: PlanProblem,
  packs: Layer<PlanTransmitter | undefined>,
  sources: Layer<PlanChannel | string>,
  hardlines: Layer<PlanVoice>,
) {
  const ownPack = packs.length - hardlines.length;
  const effort = (pack: PlanTransmitter | undefined, source: PlanChannel | string, at: number): Effort => {
    if (!pack || typeof source === 'string') {
      return !pack && hardlines[at - ownPack]?.hardline === source ? STAYS : NEVER;
    }
    if (source.tunedTo === pack.id) return STAYS;
    if (source.canTune && !source.canTune.includes(pack.id)) return NEVER;
    return change(source.weight ?? weights.retune);
  };
  return {
    tune: matrix(packs, sources, (pack, source, at) => effort(pack, source, at).bench),
    tuneExtras: matrix(packs, sources, (pack, source, at) => effort(pack, source, at).extras),
  };
}

function feeding({ weights }: PlanProblem, inputs: Layer<PlanInput>, tracks: Layer<PlanTrack>) {
  const effort = (input: PlanInput, track: PlanTrack): Effort => {
    if (input.track === track.id) return STAYS;
    return input.mayFeed?.includes(track.id) ? change(input.weight ?? weights.route) : NEVER;
  };
  return {
    feed: matrix(inputs, tracks, (input, track) => effort(input, track).bench),
    feedExtras: matrix(inputs, tracks, (input, track) => effort(input, track).extras),
  };
}

function reaching(problem: PlanProblem, sources: Layer<PlanChannel | string>, inputs: Layer<PlanInput>) {
  const { weights, selectors } = problem;
  const sourceAt = new Map(
    sources.map((source, at) => [typeof source === 'string' ? source : source.id, at]),
  );
  const inputAt = new Map(inputs.map(({ id }, at) => [id, at]));
  const used = usable(problem.paths).filter(
    ({ source, input }) => sourceAt.has(source) && inputAt.has(input),
  );
  const inputsBehind = (id: string) =>
    new Set(used.filter(({ selector }) => selector?.id === id).map(({ input }) => input));
  const shared = [...selectors].sort(byId).filter(({ id }) => inputsBehind(id).size > 1);
  const banks = shared.map((selector): Bank => {
    const behind = used.filter((path) => path.selector?.id === selector.id);
    const positions = [
      ...new Set([selector.position, ...behind.map((path) => path.selector!.position)]),
    ].sort();
    const current = positions.indexOf(selector.position);
    return { selector, positions, current, ...change(selector.weight ?? weights.throwSelector) };
  });
  const paths = used.map((path): NetworkPath => {
    const selector = selectors.find(({ id }) => id === path.selector?.id);
    const bank = selector ? shared.indexOf(selector) : -1;
    const throws = selector && bank < 0 && selector.position !== path.selector!.position;
    return {
      path,
      source: sourceAt.get(path.source)!,
      input: inputAt.get(path.input)!,
      bank,
      position: bank < 0 ? 0 : banks[bank]!.positions.indexOf(path.selector!.position),
      ...sum(
        path.plugged ? STAYS : change(path.weight ?? weights.replug),
        throws ? change(selector.weight ?? weights.throwSelector) : STAYS,
      ),
    };
  });
  return { paths, banks };
}

function pinning(
  voices: Layer<PlanVoice>,
  sources: Layer<PlanChannel | string>,
  inputs: Layer<PlanInput>,
  tracks: Layer<PlanTrack>,
) {
  const isAway = (pin: string | undefined, id: string) => (pin !== undefined && pin !== id ? 1 : 0);
  return {
    sourceBarred: Uint8Array.from(
      matrix(voices, sources, ({ pinnedChannel }, source) =>
        isAway(pinnedChannel, typeof source === 'string' ? source : source.id),
      ),
    ),
    inputBarred: Uint8Array.from(
      matrix(voices, inputs, ({ pinnedInput }, { id }) => isAway(pinnedInput, id)),
    ),
    end: matrix(voices, tracks, ({ pinnedTrack, lastTrack }, { id }) =>
      isAway(pinnedTrack, id) ? Infinity : isAway(lastTrack, id),
    ),
  };
}

function matrix<R, C>(
  rows: Layer<R>,
  columns: Layer<C>,
  value: (row: R, column: C, rowAt: number, columnAt: number) => number,
): Float64Array {
  const filled = new Float64Array(rows.length * columns.length);
  let at = 0;
  rows.forEach((row, rowAt) => {
    columns.forEach((column, columnAt) => {
      filled[at] = value(row, column, rowAt, columnAt);
      at += 1;
    });
  });
  return filled;
}
