import type { Move } from '../../src/plan/moves.ts';
import type { PlanChannel, PlanProblem } from '../../src/plan/plan-problem.ts';

/**
 * The same problem after some moves, in their order; those not done are simply not given. A lead that is plugged
 * leaves the place it was in, and pushes out what was in the new one.
 */
export function applyPlan(problem: PlanProblem, moves: readonly Move[]): PlanProblem {
  return moves.reduce(applyMove, problem);
}

function applyMove(problem: PlanProblem, move: Move): PlanProblem {
  switch (move.kind) {
    case 'take':
      return {
        ...problem,
        transmitters: change(
          problem.transmitters,
          move.transmitter,
          ({ wornBy: _off, ...transmitter }) => transmitter,
        ),
      };
    case 'fit':
      return {
        ...problem,
        transmitters: change(problem.transmitters, move.transmitter, (pack) => ({
          ...pack,
          wornBy: move.to,
        })),
      };
    case 'throw':
      return {
        ...problem,
        selectors: change(problem.selectors, move.selector, (selector) => ({
          ...selector,
          position: move.to,
        })),
      };
    case 'retune':
      return {
        ...problem,
        channels: tuned(problem.channels, move),
      };
    case 'route':
      return {
        ...problem,
        inputs: change(problem.inputs, move.input, (input) => ({ ...input, track: move.to })),
      };
    case 'replug':
      return plug(problem, move.path);
  }
}

function change<T extends { readonly id: string }>(
  list: readonly T[],
  id: string,
  by: (item: T) => T,
): readonly T[] {
  return list.map((item) => (item.id === id ? by(item) : item));
}

function tuned(
  channels: readonly PlanChannel[],
  { channel, to, leaving = [] }: Move & { kind: 'retune' },
): readonly PlanChannel[] {
  return channels.map((one) => {
    if (one.id === channel) return { ...one, tunedTo: to };
    const { tunedTo: _off, ...rest } = one;
    return leaving.includes(one.id) ? rest : one;
  });
}

function plug(problem: PlanProblem, id: string): PlanProblem {
  const plugged = problem.paths.find((path) => path.id === id);
  if (!plugged) return problem;
  const isSamePlace = ({ input, selector }: typeof plugged) =>
    input === plugged.input &&
    selector?.id === plugged.selector?.id &&
    selector?.position === plugged.selector?.position;
  const paths = problem.paths.map((path) => {
    if (path.id === id) return { ...path, plugged: true };
    return path.lead === plugged.lead || isSamePlace(path) ? { ...path, plugged: false } : path;
  });
  return { ...problem, paths };
}
