import { isolated } from '../isolated.ts';

const NAMED = 4;

/** `'24B/1, 24B/2'`; of more than four the first three and how many more. */
export function namesText(names: readonly string[]): string {
  const said = names.map(isolated);
  return said.length <= NAMED
    ? said.join(', ')
    : `${said.slice(0, NAMED - 1).join(', ')} and ${said.length - NAMED + 1} more`;
}
