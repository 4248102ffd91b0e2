// Finds every place of a file where a small fault could be planted, and plants one.
import { parseSync } from 'vite';
import { KINDS } from './fault-kinds.mjs';

/** What says nothing to whoever runs the code, or only words to whoever reads an error. */
const PASSED_OVER = /^(Import|ExportAll|Throw)/;
const WITH_A_TYPE = new Set(['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression']);

function* nodesIn(value) {
  if (Array.isArray(value)) for (const one of value) yield* nodesIn(one);
  else if (typeof value?.type !== 'string' || PASSED_OVER.test(value.type)) return;
  else if (WITH_A_TYPE.has(value.type)) yield* nodesIn(value.expression);
  else if (!value.type.startsWith('TS')) {
    yield value;
    for (const part of Object.values(value)) if (part && typeof part === 'object') yield* nodesIn(part);
  }
}

/** The faults that could be planted in a file, in the order of its text. */
export function faultsIn(file, text) {
  const { program, errors } = parseSync(file, text);
  if (errors.length > 0) throw new Error(`${file} cannot be read: ${errors[0].message}`);
  const faults = [];
  for (const node of nodesIn(program)) {
    for (const [kind, placeIn] of Object.entries(KINDS)) {
      const place = placeIn(node, text);
      if (!place) continue;
      const [from, end, becomes] = place;
      const start = from + text.slice(from).search(/\S/);
      faults.push({ kind, file, line: text.slice(0, start).split('\n').length, start, end, becomes });
    }
  }
  return faults;
}

/** The text of the file with the fault in it. */
export const plant = (text, { start, end, becomes }) => text.slice(0, start) + becomes + text.slice(end);
