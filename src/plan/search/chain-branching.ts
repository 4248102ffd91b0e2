import { type Branch, GANG, OPEN, type Relaxed, SINGLE } from '../bounds/relaxation.ts';
import type { Chains, StageCosts } from '../network/stage-costs.ts';
import { countTracks } from './voice-matching.ts';

/**
 * Splits a branch where its bound relies on something not allowed: a shared selector in two positions, a
 * track used by several at the price of one, a node used twice, or an unpaid toll. The parts cover the
 * branch. Empty if the bound relies on nothing of the kind and is thus attained.
 */
export function split(costs: StageCosts, branch: Branch, relaxed: Relaxed): readonly Branch[] {
  return (
    splitBySelector(costs, branch, relaxed) ??
    splitByTrack(costs, branch, relaxed) ??
    splitByIdleSelector(costs, branch) ??
    splitByNode(costs, branch, relaxed) ??
    splitByToll(costs, branch, relaxed) ??
    []
  );
}

function splitBySelector(
  costs: StageCosts,
  branch: Branch,
  { chains, reached }: Relaxed,
): Branch[] | undefined {
  const { banks, paths } = costs.network;
  for (let at = 0; at < chains.length; at += 4) {
    if (chains[at]! < 0) continue;
    const { bank, position } = paths[reached.path[chains[at + 1]! * costs.inputs + chains[at + 2]!]!]!;
    if (bank < 0 || branch.positions[bank]! >= 0 || position === banks[bank]!.current) continue;
    return banks[bank]!.positions.map((_name, to) => ({
      ...branch,
      positions: branch.positions.with(bank, to),
    }));
  }
  return undefined;
}

/** How many shared selectors are decided before voices are held to nodes; after that, any number. */
const FEW_BANKS = 3;
const FEW_HELD = 2;

/** Otherwise voices would be tried in every order on nodes that no position of a selector serves together. */
function splitByIdleSelector({ network }: StageCosts, branch: Branch): Branch[] | undefined {
  const open = branch.positions.filter((position) => position < 0).length;
  const held = branch.mustBeIn.reduce((sum, must) => sum + must, 0);
  if (open === 0 || (open > FEW_BANKS && held < FEW_HELD)) return undefined;
  const bank = branch.positions.indexOf(-1);
  return network.banks[bank]!.positions.map((_name, to) => ({
    ...branch,
    positions: branch.positions.with(bank, to),
  }));
}

/** Whether several use a track that the branch has not yet decided to carry a gang. */
export function breaksTrack(costs: StageCosts, { mode }: Branch, { chains }: Relaxed): boolean {
  const users = countTracks(chains, costs.tracks);
  return users.some((count, track) => count > 1 && mode[track] === OPEN);
}

/**
 * The branch with every open track decided as in chains that may be infeasible: the tracks they share carry
 * gangs and the others do not; likewise for each shared one alone, and for the one easiest to share. Empty if
 * they share none.
 */
export function gangedLike(costs: StageCosts, branch: Branch, chains: Chains): readonly Branch[] {
  const users = countTracks(chains, costs.tracks);
  const isOpen = (track: number) => branch.mode[track] === OPEN;
  const tracks = mostGangsFirst(costs).filter(isOpen);
  const shared = tracks.filter((track) => users[track]! > 1);
  if (shared.length === 0) return [];
  const alone = new Set([tracks[0]!, ...shared]);
  const choices = [...(shared.length > 1 ? [shared] : []), ...[...alone].map((track) => [track])];
  return choices.map((gangs) => ({
    ...branch,
    mode: branch.mode.map((was, track) => (was !== OPEN ? was : gangs.includes(track) ? GANG : SINGLE)),
  }));
}

/** One part for each track that could be the first with a gang, and one without any. */
function splitByTrack(costs: StageCosts, branch: Branch, relaxed: Relaxed): Branch[] | undefined {
  if (!breaksTrack(costs, branch, relaxed)) return undefined;
  const mode = Uint8Array.from(branch.mode);
  const parts: Branch[] = [];
  for (const track of mostGangsFirst(costs)) {
    if (branch.mode[track] !== OPEN) continue;
    parts.push({ ...branch, mode: mode.with(track, GANG) });
    mode[track] = SINGLE;
  }
  return [...parts, { ...branch, mode }];
}

/** Tracks by how many inputs that can be summed feed them already: a gang is cheapest there. */
function mostGangsFirst({ inputs, tracks, feed, gangInput }: StageCosts): number[] {
  const fed = new Int32Array(tracks);
  for (let at = 0; at < inputs * tracks; at += 1) {
    if (feed[at] === 0) fed[at % tracks]! += gangInput[Math.floor(at / tracks)]!;
  }
  return [...fed.keys()].sort((a, b) => fed[b]! - fed[a]! || a - b);
}

function usersOfNodes({ packs, sources, inputs }: StageCosts, { chains }: Relaxed): number[][] {
  const users: number[][] = Array.from({ length: packs + sources + inputs }, () => []);
  for (let at = 0; at < chains.length; at += 4) {
    if (chains[at]! < 0) continue;
    for (const node of [chains[at]!, packs + chains[at + 1]!, packs + sources + chains[at + 2]!]) {
      users[node]!.push(at / 4);
    }
  }
  return users;
}

function splitByNode(costs: StageCosts, branch: Branch, relaxed: Relaxed): Branch[] | undefined {
  const users = usersOfNodes(costs, relaxed);
  const node = users.findIndex((list) => list.length > 1);
  if (node < 0) return undefined;
  const own = (voice: number) => (node < costs.packs ? costs.wear[voice * costs.packs + node]! : 0);
  const voice = users[node]!.reduce((kept, other) => (own(other) < own(kept) ? other : kept));
  return [through(costs, branch, voice, node), around(costs, branch, [voice], node)];
}

function splitByToll(costs: StageCosts, branch: Branch, relaxed: Relaxed): Branch[] | undefined {
  const users = usersOfNodes(costs, relaxed);
  let node = -1;
  users.forEach((list, at) => {
    if (list.length === 0 && relaxed.tolls[at]! > (node < 0 ? 0 : relaxed.tolls[node]!)) node = at;
  });
  if (node < 0) return undefined;
  const inner = costs.packs + costs.sources + costs.inputs;
  const everybody = Array.from({ length: costs.voices }, (_value, voice) => voice);
  const allowed = everybody.filter((voice) => !branch.barred[voice * inner + node]);
  return [
    around(costs, branch, everybody, node),
    ...allowed.map((voice) => through(costs, branch, voice, node)),
  ];
}

/** The branch with voices held to nodes; undefined if two voices would meet, or a voice need two nodes. */
export function held(
  costs: StageCosts,
  branch: Branch,
  forced: readonly (readonly [voice: number, node: number])[],
): Branch | undefined {
  const inner = costs.packs + costs.sources + costs.inputs;
  let narrowed = branch;
  for (const [voice, node] of forced) {
    if (narrowed.barred[voice * inner + node]) return undefined;
    narrowed = through(costs, narrowed, voice, node);
  }
  return narrowed;
}

export const barredCount = ({ barred }: Branch): number => barred.reduce((sum, is) => sum + is, 0);

/** The part of the branch in which the voice passes the node. */
function through(costs: StageCosts, branch: Branch, voice: number, node: number): Branch {
  const inner = costs.packs + costs.sources + costs.inputs;
  const barred = Uint8Array.from(branch.barred);
  for (let at = node; at < barred.length; at += inner) barred[at] = 1;
  const [from, to] =
    node < costs.packs
      ? [0, costs.packs]
      : node < costs.packs + costs.sources
        ? [costs.packs, costs.packs + costs.sources]
        : [costs.packs + costs.sources, inner];
  barred.fill(1, voice * inner + from, voice * inner + to);
  barred[voice * inner + node] = branch.barred[voice * inner + node]!;
  return { ...branch, barred, mustBeIn: branch.mustBeIn.with(voice, 1) };
}

/** The part of the branch in which these voices do not pass the node. */
function around(costs: StageCosts, branch: Branch, voices: readonly number[], node: number): Branch {
  const inner = costs.packs + costs.sources + costs.inputs;
  const barred = Uint8Array.from(branch.barred);
  for (const voice of voices) barred[voice * inner + node] = 1;
  return { ...branch, barred };
}
