import type { Day } from '../../day/model.ts';
import { holdersOf, type PhoneHolder } from '../../day/phones/holders.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult, Moment } from '../command.ts';

/** Says who holds this phone, unless the day knows. */
export function namePhone(day: Day, { database = '' }: Moment, { name, job }: PhoneHolder): CommandResult {
  const known = holdersOf(day).get(database);
  const isKnown = (known?.name ?? '') === name && (known?.job ?? '') === job;
  return ok(isKnown ? [] : [{ kind: 'phone-named', name, job }]);
}
