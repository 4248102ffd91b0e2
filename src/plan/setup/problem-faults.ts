import type { PlanProblem } from '../plan-problem.ts';

/** Why a problem cannot be planned. */
export type ProblemFault =
  | { readonly code: 'id-used-twice'; readonly list: string; readonly id: string }
  | { readonly code: 'weight-not-whole'; readonly name: string; readonly weight: number }
  | { readonly code: 'priority-not-a-number'; readonly voice: string }
  | { readonly code: 'pinned-twice'; readonly transmitter: string }
  | { readonly code: 'lead-of-two-sources'; readonly lead: string };

const LISTS = ['voices', 'transmitters', 'channels', 'selectors', 'paths', 'inputs', 'tracks'] as const;
const AT_LEAST_ONE = ['fit', 'move', 'borrow'];

/** The first fault found, or undefined. Unknown ids are no fault: that link just does not exist. */
export function faultOf(problem: PlanProblem): ProblemFault | undefined {
  for (const list of LISTS) {
    const id = firstTwice(problem[list].map((item) => item.id));
    if (id !== undefined) return { code: 'id-used-twice', list, id };
  }
  const voice = problem.voices.find(({ priority }) => !Number.isFinite(priority));
  if (voice) return { code: 'priority-not-a-number', voice: voice.id };
  const transmitter = firstTwice(problem.voices.flatMap(({ pinnedTransmitter }) => pinnedTransmitter ?? []));
  if (transmitter !== undefined) return { code: 'pinned-twice', transmitter };
  return weightFault(problem) ?? leadFault(problem);
}

function weightFault({ weights, ...lists }: PlanProblem): ProblemFault | undefined {
  const own = [lists.channels, lists.selectors, lists.paths, lists.inputs].flatMap((list) =>
    list.map(({ id, weight }) => [id, weight ?? 1] as const),
  );
  const wrong = [...Object.entries(weights), ...own].find(
    ([name, weight]) => !Number.isSafeInteger(weight) || weight < (AT_LEAST_ONE.includes(name) ? 1 : 0),
  );
  return wrong && { code: 'weight-not-whole', name: wrong[0], weight: wrong[1] };
}

function leadFault({ paths }: PlanProblem): ProblemFault | undefined {
  const sourceOf = new Map<string, string>();
  for (const { lead, source } of paths) {
    if ((sourceOf.get(lead) ?? source) !== source) return { code: 'lead-of-two-sources', lead };
    sourceOf.set(lead, source);
  }
  return undefined;
}

function firstTwice(ids: readonly string[]): string | undefined {
  const seen = new Set<string>();
  return ids.find((id) => {
    if (seen.has(id)) return true;
    seen.add(id);
    return false;
  });
}
