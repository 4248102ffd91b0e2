import { at, type Matter } from './matter.ts';
import { onDisk } from './names-shared.ts';
import type { TakeLine } from './take-lines.ts';

/** File names shared by several takes; those of the same takes are one matter. */
export function filesNamedTwice(lines: readonly TakeLine[]): Matter[] {
  const byName = new Map<string, { name: string; lines: Set<TakeLine> }>();
  for (const line of lines) {
    for (const { name } of line.files) {
      const named = byName.get(onDisk(name)) ?? { name, lines: new Set() };
      byName.set(onDisk(name), named);
      named.lines.add(line);
    }
  }
  const byTakes = new Map<string, { file: string; more: number; lines: readonly TakeLine[] }>();
  for (const { name, lines: of } of byName.values()) {
    if (of.size < 2) continue;
    const key = [...of].map(({ takeId }) => takeId).join(' ');
    const known = byTakes.get(key);
    if (known) known.more += 1;
    else byTakes.set(key, { file: name, more: 0, lines: [...of] });
  }
  return [...byTakes.values()].map(({ file, more, lines: of }) => {
    const isOfSeveral = of.some(({ files }) => files.length > 1);
    return { code: 'files-named-twice', file, more, isOfSeveral, ...at(of) };
  });
}
