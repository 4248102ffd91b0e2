import type { PartId } from '../day/model.ts';
import { at, type Matter } from './matter.ts';
import type { SharedName } from './names-shared.ts';
import type { TakeLine } from './take-lines.ts';

/** What is open about single recorders, on a day with several. */
export const mattersOfRecorders = (lines: readonly TakeLine[], shared: readonly SharedName[]): Matter[] => [
  ...rollsLacking(lines),
  ...namesOnTwo(shared),
];

/** Recorders whose roll nobody entered, where others have one; a day without any says so in one word. */
function rollsLacking(lines: readonly TakeLine[]): Matter[] {
  const said = lines.flatMap((line) => line.recorders.map((on) => ({ line, on })));
  if (said.every(({ on }) => on.roll === '')) return [];
  const lacking = new Map<PartId, { readonly name: string; readonly lines: TakeLine[] }>();
  for (const { line, on } of said) {
    if (on.roll !== '') continue;
    const known = lacking.get(on.id) ?? { name: on.name, lines: [] };
    lacking.set(on.id, known);
    known.lines.push(line);
  }
  return [...lacking.values()].map(({ name, lines: of }) => ({ code: 'roll-lacking', name, ...at(of) }));
}

/** A file of one take on one recorder that is called as a file of another take on another. */
function namesOnTwo(shared: readonly SharedName[]): Matter[] {
  const [first, ...others] = shared.filter(({ line, other }) => line !== other.line);
  if (!first) return [];
  const { name, line, on, other } = first;
  return [
    {
      code: 'name-on-two-recorders',
      file: name,
      name: on.name,
      on: other.on.name,
      more: others.length,
      ...at([line, other.line]),
    },
  ];
}
