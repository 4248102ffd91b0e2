import { isolated } from './isolated.ts';

/** `'Cart'`, `'Cart and Backup'`, `'Cart, Bag and Backup'`. */
export function recordersText(names: readonly string[]): string {
  const said = names.map(isolated);
  return said.length < 2 ? (said[0] ?? '') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}
