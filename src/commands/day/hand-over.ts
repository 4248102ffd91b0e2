import type { Draft } from '../../facts/fact.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';

export type Handing = Omit<Extract<Draft, { kind: 'handed-over' }>, 'kind' | 'before'>;

const LONGEST = 200;

/** Records that cards or drives went to somebody. */
export function handOver(handing: Handing): CommandResult {
  const to = handing.to.trim();
  const carriers = handing.carriers.map((one) => ({ ...one, name: one.name.trim() }));
  if (carriers.length === 0) return fail({ code: 'nothing-chosen' });
  if (to === '' || carriers.some(({ name }) => name === '')) return fail({ code: 'name-empty' });
  const names = [to, handing.role ?? '', handing.signature?.typed ?? '', ...carriers.map(({ name }) => name)];
  if (names.some((name) => name.length > LONGEST)) return fail({ code: 'name-too-long', longest: LONGEST });
  return ok([{ kind: 'handed-over', ...handing, to, carriers }]);
}
