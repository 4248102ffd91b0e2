import {
  PLAIN_WEIGHTS,
  type PlanChannel,
  type PlanInput,
  type PlanPath,
  type PlanProblem,
  type PlanTrack,
  type PlanTransmitter,
  type PlanVoice,
} from '../../src/plan/plan-problem.ts';

export interface SceneChange {
  readonly performers: number;
  readonly packs: number;
  readonly needed: number;
  readonly tracks: number;
  /** Any input may feed any track, where 0 the wiring is fixed. */
  readonly routing: 'free' | 'fixed';
  readonly priorities: 'distinct' | 'few' | 'equal';
  readonly broken: number;
  readonly routeWeight: number;
}

type Next = (below: number) => number;

const list = <T>(length: number, make: (at: number) => T): T[] =>
  Array.from({ length }, (_value, at) => make(at));

/**
 * A cart with 24 channels on 20 inputs: two booms on inputs 1 and 2, two spare ones, eight AES3 inputs with a selector
 * each (near receiver or far box), eight slot inputs that can be summed. The scene before is random, and so are the
 * people of the next one; where there are too few tracks the last slots share one.
 */
export function sceneChange(next: Next, change: SceneChange): PlanProblem {
  const first = 2;
  const inputs = list(
    20,
    (at): PlanInput => ({
      id: `in ${at + 1}`,
      canGang: at >= 12,
      track: `track ${Math.min(first + at, change.tracks)}`,
      ...(change.routing === 'free' && { mayFeed: list(change.tracks - 1, (track) => `track ${track + 2}`) }),
    }),
  );
  const tracks = list(
    change.tracks,
    (at): PlanTrack => ({
      id: `track ${at + 1}`,
      iso: at > 0,
      gangAllowed: at === change.tracks - 1 || (change.routing === 'free' && at >= change.tracks - 4),
    }),
  );
  const transmitters = list(change.packs, (at): PlanTransmitter => ({ id: `pack ${at + 1}` }));
  const channels = list(
    24,
    (at): PlanChannel => ({
      id: `ch ${at + 1}`,
      ...(at < change.packs && { tunedTo: `pack ${at + 1}` }),
    }),
  );
  const wired = (at: number): Pick<PlanPath, 'input' | 'selector'> =>
    at < 8
      ? { input: `in ${at + 13}` }
      : {
          input: `in ${5 + (at % 8)}`,
          selector: { id: `selector ${5 + (at % 8)}`, position: at < 16 ? 'near' : 'far' },
        };
  const paths = channels.map(
    (channel, at): PlanPath => ({
      id: `path ${at + 1}`,
      source: channel.id,
      lead: `lead ${at + 1}`,
      plugged: true,
      ...wired(at),
    }),
  );
  const booms = [1, 2].map(
    (at): PlanVoice => ({
      id: `boom ${at}`,
      priority: 0,
      needed: true,
      done: false,
      hardline: `boom ${at}`,
      pinnedInput: `in ${at}`,
      lastTrack: `track ${at + 1}`,
    }),
  );
  const boomPaths = booms.map(
    ({ id, pinnedInput }): PlanPath => ({
      id: `path of ${id}`,
      source: id,
      input: pinnedInput!,
      lead: `lead of ${id}`,
      plugged: true,
    }),
  );
  const people = cast(next, change);
  const worn = shuffled(
    next,
    people.filter(({ wasOn }) => wasOn).map(({ voice }) => voice.id),
  );
  const bodies = shuffled(
    next,
    transmitters.map(({ id }) => id),
  ).slice(0, worn.length);
  const broken = new Set(list(change.broken, () => `pack ${1 + next(change.packs)}`));
  const noisy = new Set(list(change.broken, () => `ch ${1 + next(24)}`));
  return {
    voices: [...booms, ...people.map(({ voice }) => voice)],
    transmitters: transmitters.map((pack) => ({
      ...pack,
      out: broken.has(pack.id),
      ...(bodies.includes(pack.id) && { wornBy: worn[bodies.indexOf(pack.id)]! }),
    })),
    channels: channels.map((channel) => ({ ...channel, out: noisy.has(channel.id) })),
    selectors: list(8, (at) => ({ id: `selector ${at + 5}`, position: next(3) ? 'near' : 'far' })),
    paths: [...paths, ...boomPaths],
    inputs,
    tracks,
    weights: { ...PLAIN_WEIGHTS, route: change.routeWeight, replug: 2 },
  };
}

function cast(next: Next, change: SceneChange): { voice: PlanVoice; wasOn: boolean }[] {
  const wasOn = new Set(
    shuffled(
      next,
      list(change.performers, (at) => at),
    ).slice(0, Math.min(change.packs, 16)),
  );
  const stay = shuffled(next, [...wasOn]).slice(0, Math.max(0, change.needed - 5));
  const others = shuffled(
    next,
    list(change.performers, (at) => at).filter((at) => !stay.includes(at)),
  );
  const needed = new Set([...stay, ...others.slice(0, change.needed - stay.length)]);
  return list(change.performers, (at) => ({
    wasOn: wasOn.has(at),
    voice: {
      id: `voice ${at + 1}`,
      priority: change.priorities === 'distinct' ? at + 1 : change.priorities === 'few' ? 1 + (at >> 2) : 1,
      needed: needed.has(at),
      done: next(2) === 0,
      ...(next(4) > 0 && { lastTrack: `track ${4 + next(change.tracks - 3)}` }),
    },
  }));
}

function shuffled<T>(next: Next, items: readonly T[]): T[] {
  const left = [...items];
  return items.map(() => left.splice(next(left.length), 1)[0]!);
}
