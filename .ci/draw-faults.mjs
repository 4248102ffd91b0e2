// Draws which faults the mutation run plants.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { faultsIn } from './plant-faults.mjs';

const lotOf = (seed, ...what) =>
  createHash('sha256')
    .update([seed, ...what].join('\n'))
    .digest('hex');

/** Puts a lot on each and gives them in the order of the lots. */
const byLot = (list, lot) =>
  list
    .map((one) => ({ one, lot: lot(one) }))
    .sort((a, b) => (a.lot < b.lot ? -1 : 1))
    .map(({ one }) => one);

/** A line on paper that is a point further down is where nobody could say it should not be. */
const isOfLooks = ({ file, kind }) =>
  kind === 'number one off' && /^src\/report\/(pdf\/|html-style\.ts)/.test(file);

/** The faults that could be planted in a room, together by the line they are on. */
function linesOf(root, room) {
  const lines = new Map();
  for (const name of readdirSync(join(root, 'src', room), { recursive: true, encoding: 'utf8' })) {
    if (!name.endsWith('.ts') || name.endsWith('.d.ts')) continue;
    const file = `src/${room}/${name.replaceAll('\\', '/')}`;
    const text = readFileSync(join(root, file), 'utf8');
    for (const fault of faultsIn(file, text)) {
      if (isOfLooks(fault)) continue;
      const line = `${file} ${text.split('\n')[fault.line - 1].trim()}`;
      lines.set(line, [...(lines.get(line) ?? []), fault]);
    }
  }
  return [...lines];
}

/**
 * Draws so many lines of a room, and a fault on each. The lots hang on the seed and on what a line says, so that a change of the code
 * draws no other faults on the lines it leaves alone.
 */
export function drawFaults(root, room, { seed, count }) {
  return byLot(linesOf(root, room), ([line]) => lotOf(seed, line))
    .slice(0, count)
    .map(([line, faults]) => byLot(faults, ({ kind, becomes }) => lotOf(seed, line, kind, becomes))[0]);
}
