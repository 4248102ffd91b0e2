import { appendFileSync } from 'node:fs';

/** True in the long run that `npm run faults` starts. */
export const LONG = process.env.FAULTS === 'long';

/** Notes a line of the table of faults, where one is wanted. */
export function noteFault(fault: string, tried: string, lost: number): void {
  const table = process.env.FAULTS_TABLE;
  if (table) appendFileSync(table, `${JSON.stringify({ fault, tried, lost })}\n`);
}

/** Notes a fault that this machine does not let happen, with the reason: it is told, not left out. */
export function notPossible(fault: string, why: string): void {
  const table = process.env.FAULTS_TABLE;
  if (table) appendFileSync(table, `${JSON.stringify({ fault, tried: '0', lost: null, why })}\n`);
}

/** Numbers from 0 to below 1, the same for the same seed: the 32-bit generator mulberry32, from memory. */
export function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
