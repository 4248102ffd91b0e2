import type { RecordedVoice } from '../../src/plan/moves.ts';
import type { PlanProblem } from '../../src/plan/plan-problem.ts';

/** What of a recorded voice's chain does not stand in the problem as it is; empty where all of it does. */
export function missingLinks(problem: PlanProblem, recorded: RecordedVoice): string[] {
  const { voice, transmitter, source, path: pathId, input, track } = recorded;
  const find = <T extends { readonly id: string }>(list: readonly T[], id: string | undefined) =>
    list.find((item) => item.id === id);
  const path = find(problem.paths, pathId);
  const selector = find(problem.selectors, path?.selector?.id);
  const links: [string, boolean][] = [
    ['worn', transmitter === undefined || find(problem.transmitters, transmitter)?.wornBy === voice],
    ['tuned', transmitter === undefined || find(problem.channels, source)?.tunedTo === transmitter],
    ['own source', transmitter !== undefined || find(problem.voices, voice)?.hardline === source],
    ['path', path?.source === source && path.input === input],
    ['plugged', path?.plugged === true],
    ['selected', selector === undefined || selector.position === path?.selector?.position],
    ['fed', find(problem.inputs, input)?.track === track],
  ];
  return links.filter(([, stands]) => !stands).map(([name]) => name);
}
