import type { PlanInput, PlanPath, PlanProblem, PlanVoice } from '../../src/plan/plan-problem.ts';

export type Next = (below: number) => number;

/** A seeded generator of whole numbers below a limit (Marsaglia, J. Stat. Software 8 (2003), xorshift 13-17-5). */
export function seeded(seed: number): Next {
  let state = (seed * 2_654_435_761) | 0 || 1;
  const next: Next = (below) => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) % below;
  };
  for (let round = 0; round < 10; round += 1) next(2);
  return next;
}

interface RigSize {
  readonly voices: number;
  readonly transmitters: number;
  readonly channels: number;
  readonly inputs: number;
  readonly tracks: number;
}

/** Scarce: a bit of everything, little of it whole. Roomy: nearly everybody can be recorded. Gangs: few tracks. */
export type RigKind = 'scarce' | 'roomy' | 'gangs';

/** A rig of up to so many of everything, the same for the same seed. */
export function smallRig(seed: number, kind: RigKind, most: number): PlanProblem {
  const next = seeded(seed);
  const some = () => (kind === 'scarce' ? 1 + next(most) : Math.max(1, most - next(3)));
  const size = { voices: some(), transmitters: some(), channels: some(), inputs: some(), tracks: some() };
  return randomRig(next, kind === 'gangs' ? { ...size, tracks: 1 + next(3) } : size, kind);
}

const list = <T>(length: number, make: (at: number) => T): T[] =>
  Array.from({ length }, (_value, at) => make(at));

/** A small rig with a bit of everything: pins, gangs, hardlines, shared selectors, broken things, uneven weights. */
function randomRig(next: Next, size: RigSize, kind: RigKind): PlanProblem {
  const chance = (percent: number) => next(100) < percent;
  const broken = (percent: number) => chance(kind === 'scarce' ? percent : percent / 4);
  const ganging = (percent: number) => chance(kind === 'gangs' ? 85 : percent);
  const pick = <T>(items: readonly T[]): T => items[next(items.length)]!;
  const tracks = list(size.tracks, (at) => ({
    id: `k${at + 1}`,
    iso: !broken(8),
    out: broken(4),
    gangAllowed: ganging(50),
  }));
  const transmitters = list(size.transmitters, (at) => ({ id: `t${at + 1}`, out: broken(12) }));
  const unpinned = transmitters.map(({ id }) => id);
  const isHardline = list(size.voices, () => chance(12));
  const mayWear = isHardline.map((hardline) => !hardline || chance(50));
  const spread = pick([1, 2, size.voices]);
  const voices = list(
    size.voices,
    (at): PlanVoice => ({
      id: `v${at + 1}`,
      priority: next(spread),
      needed: chance(85),
      done: chance(50),
      ...(isHardline[at] && { hardline: `h${at + 1}`, mayWear: mayWear[at]! }),
      ...(mayWear[at] &&
        unpinned.length > 0 &&
        chance(8) && { pinnedTransmitter: unpinned.splice(next(unpinned.length), 1)[0]! }),
      ...(broken(8) && { pinnedInput: `i${1 + next(size.inputs)}` }),
      ...(broken(10) && { pinnedTrack: pick(tracks).id }),
      ...(broken(20) && { alone: true }),
      ...(chance(60) && { lastTrack: pick(tracks).id }),
    }),
  );
  const wearers = voices.filter((_voice, at) => mayWear[at]).map(({ id }) => id);
  const worn = transmitters.map((transmitter) => {
    const at = next(wearers.length + 2);
    const wearer = wearers.splice(at, 1)[0];
    return wearer ? { ...transmitter, wornBy: wearer } : transmitter;
  });
  const channels = list(size.channels, (at) => ({
    id: `c${at + 1}`,
    out: broken(8),
    ...(chance(80) && { tunedTo: pick(transmitters).id }),
    ...(chance(20) && { canTune: transmitters.filter(() => chance(60)).map(({ id }) => id) }),
    ...(chance(15) && { weight: next(4) }),
  }));
  const selectors = list(next(3), (at) => ({
    id: `s${at + 1}`,
    position: pick(['A', 'B']),
    ...(chance(30) && { weight: 1 + next(3) }),
  }));
  const inputs = list(
    size.inputs,
    (at): PlanInput => ({
      id: `i${at + 1}`,
      out: broken(5),
      ...(chance(85) && { track: pick(tracks).id }),
      ...(chance(50) && { mayFeed: tracks.filter(() => chance(60)).map(({ id }) => id) }),
      canGang: ganging(60),
      ...(chance(15) && { weight: next(3) }),
    }),
  );
  const sources = [...channels.map(({ id }) => id), ...voices.flatMap(({ hardline }) => hardline ?? [])];
  const paths = list(
    sources.length + next(3),
    (at): PlanPath => ({
      id: `p${at + 1}`,
      source: sources[at] ?? pick(sources),
      input: at < size.inputs && chance(60) ? `i${at + 1}` : pick(inputs).id,
      lead: `lead of ${sources[at] ?? `path ${at + 1}`}`,
      plugged: chance(75),
      ...(selectors.length > 0 &&
        chance(45) && { selector: { id: pick(selectors).id, position: pick(['A', 'B']) } }),
      ...(broken(4) && { out: true }),
      ...(chance(15) && { weight: 1 + next(3) }),
    }),
  );
  return {
    voices,
    transmitters: worn,
    channels,
    selectors,
    paths,
    inputs,
    tracks,
    weights: {
      fit: 1,
      move: pick([1, 1, 2]),
      borrow: pick([1, 2, 3]),
      retune: pick([0, 1, 1, 2]),
      throwSelector: pick([0, 1, 2]),
      replug: pick([1, 1, 3]),
      route: pick([0, 1, 1]),
    },
  };
}
