import type { Move, MoveReason, RecordedVoice } from '../moves.ts';
import type { PlanProblem, PlanTransmitter } from '../plan-problem.ts';

/**
 * The moves that make the recorded chains, in working order: packs first, each freed before it is given and
 * the old one off before the new one goes on, then selectors, leads, channels and tracks. What stands already
 * is not listed: `moveList(problem, [])` is empty.
 */
export function moveList(problem: PlanProblem, recorded: readonly RecordedVoice[]): readonly Move[] {
  return [
    ...packMoves(problem, recorded),
    ...throws(problem, recorded),
    ...replugs(problem, recorded),
    ...retunes(problem, recorded),
    ...routes(problem, recorded),
  ];
}

function packMoves(problem: PlanProblem, recorded: readonly RecordedVoice[]): Move[] {
  const given = new Map(
    recorded.flatMap(({ voice, transmitter }) => (transmitter ? [[transmitter, voice]] : [])),
  );
  const newWearers = new Set<string>();
  for (const [id, voice] of given) {
    if (problem.transmitters.find((transmitter) => transmitter.id === id)?.wornBy !== voice)
      newWearers.add(voice);
  }
  const off = new Set<string>();
  const moves: Move[] = [];
  const takeOff = (transmitter: PlanTransmitter): void => {
    if (transmitter.wornBy === undefined || off.has(transmitter.id)) return;
    off.add(transmitter.id);
    const because = whyTaken(problem, recorded, transmitter, given.get(transmitter.id));
    moves.push({ kind: 'take', transmitter: transmitter.id, from: transmitter.wornBy, because });
  };
  for (const { voice, transmitter: id } of recorded) {
    const transmitter = problem.transmitters.find((other) => other.id === id);
    if (!transmitter || transmitter.wornBy === voice) continue;
    takeOff(transmitter);
    const worn = problem.transmitters.filter(({ wornBy }) => wornBy === voice);
    worn.forEach(takeOff);
    moves.push({
      kind: 'fit',
      transmitter: transmitter.id,
      to: voice,
      because: whyFitted(voice, worn, given),
    });
  }
  return moves;
}

function whyTaken(
  problem: PlanProblem,
  recorded: readonly RecordedVoice[],
  { out, wornBy }: PlanTransmitter,
  to: string | undefined,
): MoveReason {
  if (to === undefined) return { code: out ? 'pack-out' : 'not-used', voice: wornBy! };
  const wearer = problem.voices.find(({ id }) => id === wornBy);
  const isRecorded = recorded.some(({ voice }) => voice === wornBy);
  if (!wearer || (!wearer.needed && wearer.done)) return { code: 'given-to', voice: to, wearer: 'done' };
  if (!wearer.needed) return { code: 'given-to', voice: to, wearer: 'waiting' };
  return { code: 'given-to', voice: to, wearer: isRecorded ? 'moved' : 'left-out' };
}

function whyFitted(
  voice: string,
  worn: readonly PlanTransmitter[],
  given: ReadonlyMap<string, string>,
): MoveReason {
  if (worn.length === 0) return { code: 'has-no-pack', voice };
  if (worn.every(({ out }) => out)) return { code: 'pack-out', voice };
  const to = worn.map(({ id }) => given.get(id)).find((other) => other !== undefined);
  return to === undefined ? { code: 'other-pack', voice } : { code: 'pack-given-away', voice, to };
}

const pathsOf = (problem: PlanProblem, recorded: readonly RecordedVoice[]) =>
  recorded.flatMap(({ voice, path: id }) => {
    const path = problem.paths.find((other) => other.id === id);
    return path ? [{ voice, path }] : [];
  });

function throws(problem: PlanProblem, recorded: readonly RecordedVoice[]): Move[] {
  const thrown = new Set<string>();
  return pathsOf(problem, recorded).flatMap(({ voice, path }): Move[] => {
    const selector = problem.selectors.find(({ id }) => id === path.selector?.id);
    const to = path.selector?.position;
    if (!selector || to === undefined || selector.position === to || thrown.has(selector.id)) return [];
    thrown.add(selector.id);
    return [
      {
        kind: 'throw',
        selector: selector.id,
        from: selector.position,
        to,
        because: { code: 'to-hear', voice },
      },
    ];
  });
}

function replugs(problem: PlanProblem, recorded: readonly RecordedVoice[]): Move[] {
  return pathsOf(problem, recorded).flatMap(
    ({ voice, path: { id: path, lead, source, input, plugged } }): Move[] =>
      plugged ? [] : [{ kind: 'replug', path, lead, source, input, because: { code: 'to-hear', voice } }],
  );
}

function retunes(problem: PlanProblem, recorded: readonly RecordedVoice[]): Move[] {
  const planned = new Set(recorded.map(({ source }) => source));
  return recorded.flatMap(({ voice, transmitter, source }): Move[] => {
    const channel = problem.channels.find(({ id }) => id === source);
    if (!channel || transmitter === undefined || channel.tunedTo === transmitter) return [];
    const from = channel.tunedTo === undefined ? {} : { from: channel.tunedTo };
    const leaving = problem.channels
      .filter(({ id, tunedTo, stays }) => tunedTo === transmitter && !stays && !planned.has(id))
      .map(({ id }) => id)
      .sort();
    return [
      {
        kind: 'retune',
        channel: source,
        ...from,
        to: transmitter,
        ...(leaving.length > 0 && { leaving }),
        because: { code: 'to-hear', voice },
      },
    ];
  });
}

function routes(problem: PlanProblem, recorded: readonly RecordedVoice[]): Move[] {
  return recorded.flatMap(({ voice, input: id, track, gangedWith }): Move[] => {
    const input = problem.inputs.find((other) => other.id === id);
    if (!input || input.track === track) return [];
    const from = input.track === undefined ? {} : { from: input.track };
    const isLast = problem.voices.some((other) => other.id === voice && other.lastTrack === track);
    const because: MoveReason =
      gangedWith.length > 0
        ? { code: 'gang', voice, others: gangedWith }
        : { code: isLast ? 'last-track' : 'own-track', voice };
    return [{ kind: 'route', input: id, ...from, to: track, because }];
  });
}
