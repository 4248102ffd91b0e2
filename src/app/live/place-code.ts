import type { LogPlace } from './log.ts';

/** The first word of a live code, which `npm run hub` prints. */
const LIVE = 'rollbook-live';
/** Below the page's own address: no code can lead a phone to another host. */
const PATH = /^\/[\w-][\w./-]{0,99}$/;
const WORD = /^[\w-]{1,100}$/;

export const placeCode = ({ path, user, password }: LogPlace): string =>
  [LIVE, path, user, password].join(' ');

/** Null for any other code. */
export function readPlaceCode(text: string): LogPlace | null {
  const [first, path = '', user = '', password = '', ...more] = text.trim().split(/\s+/);
  const isSound = PATH.test(path) && WORD.test(user) && WORD.test(password) && more.length === 0;
  return first === LIVE && isSound ? { path, user, password } : null;
}
