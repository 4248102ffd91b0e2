import { chainNetwork } from '../network/chain-network.ts';
import type { PlanProblem } from '../plan-problem.ts';
import { recordedChains } from '../search/best-chains.ts';
import { FULL_BUDGET, type Steps } from '../steps.ts';

export type AdditionKind = 'transmitter' | 'channel' | 'input' | 'track';

/** The single addition that would help most, and whom. */
export interface Addition {
  readonly kind: AdditionKind;
  /** Voices recorded only with it; with equal priorities another choice may do as well. */
  readonly voices: readonly string[];
}

const KINDS = ['transmitter', 'channel', 'input', 'track'] as const;

/**
 * Which one more pack, channel, input or track would record the most, by the first two orders; the first of
 * these kinds if several are equal. Undefined if everybody is recorded already or no single one would help. A
 * new channel could reach every input, a new input could take every source, and a new track every input.
 * Pausable.
 */
export function* bestAdditionSteps(problem: PlanProblem): Steps<Addition | undefined> {
  const now = yield* outcome(problem);
  if (!now || now.leftOut.every((count) => count === 0)) return undefined;
  let best: { kind: AdditionKind; outcome: Outcome } | undefined;
  for (const kind of KINDS) {
    const then = yield* outcome(withOneMore(problem, kind));
    if (!then || compare(then.leftOut, now.leftOut) >= 0) continue;
    if (!best || compare(then.all, best.outcome.all) < 0) best = { kind, outcome: then };
  }
  const missing = new Set(now.missing);
  for (const voice of best?.outcome.missing ?? []) missing.delete(voice);
  return best && { kind: best.kind, voices: [...missing] };
}

interface Outcome {
  readonly leftOut: readonly number[];
  readonly all: readonly number[];
  readonly missing: readonly string[];
}

function* outcome(problem: PlanProblem): Steps<Outcome | undefined> {
  const network = chainNetwork(problem);
  const recorded = yield* recordedChains(network, FULL_BUDGET);
  if (!recorded.ok) return undefined;
  const { leftOut, ganged, ganging } = recorded.value;
  const missing = network.voices.filter((_voice, at) => ganging.chains[4 * at]! < 0).map(({ id }) => id);
  return { leftOut, all: [...leftOut, ...ganged], missing };
}

const compare = (a: readonly number[], b: readonly number[]): number => {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at < 0 ? 0 : a[at]! - b[at]!;
};

/** No id of a rig starts with a plus sign and a space. */
const ID = '+ one more';

function withOneMore(problem: PlanProblem, kind: AdditionKind): PlanProblem {
  const path = (source: string, input: string) => ({
    id: `${ID} ${source} ${input}`,
    source,
    input,
    lead: `${ID} ${source}`,
    plugged: false,
  });
  switch (kind) {
    case 'transmitter':
      return {
        ...problem,
        transmitters: [...problem.transmitters, { id: ID }],
        channels: problem.channels.map(({ canTune, ...channel }) =>
          canTune ? { ...channel, canTune: [...canTune, ID] } : channel,
        ),
      };
    case 'channel':
      return {
        ...problem,
        channels: [...problem.channels, { id: ID }],
        paths: [...problem.paths, ...problem.inputs.map(({ id }) => path(ID, id))],
      };
    case 'input': {
      const sources = [
        ...problem.channels.map(({ id }) => id),
        ...problem.voices.flatMap(({ hardline }) => hardline ?? []),
      ];
      const mayFeed = problem.tracks.map(({ id }) => id);
      return {
        ...problem,
        inputs: [...problem.inputs, { id: ID, mayFeed, canGang: false }],
        paths: [...problem.paths, ...new Set(sources)].map((item) =>
          typeof item === 'string' ? path(item, ID) : item,
        ),
      };
    }
    case 'track':
      return {
        ...problem,
        tracks: [...problem.tracks, { id: ID, iso: true, gangAllowed: false }],
        inputs: problem.inputs.map((input) => ({ ...input, mayFeed: [...(input.mayFeed ?? []), ID] })),
      };
  }
}
