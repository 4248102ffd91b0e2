import type { OnRecorder } from './on-recorders.ts';
import type { TakeLine } from './take-lines.ts';

interface FileOf {
  readonly line: TakeLine;
  readonly on: OnRecorder;
}

/** A file name that two recorders have. */
export interface SharedName extends FileOf {
  readonly name: string;
  readonly other: FileOf;
}

/** Names that differ only in case or in how accents are encoded are the same file on many disks. */
export const onDisk = (name: string): string => name.normalize('NFC').toLowerCase();

/** The names that files have on more than one recorder, each once, with a file of another take if there is one. */
export function sharedNames(lines: readonly TakeLine[]): SharedName[] {
  const first = new Map<string, FileOf & { readonly name: string }>();
  const shared = new Map<string, SharedName>();
  for (const line of lines) {
    for (const on of line.recorders) {
      for (const { name } of on.files) {
        const key = onDisk(name);
        const known = first.get(key);
        if (!known) first.set(key, { line, on, name });
        else if (known.on.id !== on.id && (!shared.has(key) || known.line !== line))
          shared.set(key, { ...known, other: { line, on } });
      }
    }
  }
  return [...shared.values()];
}

/** Two recorders whose files have the same names, and whether their rolls tell all of these apart. */
export interface NamedAlike {
  readonly recorders: readonly [string, string];
  readonly areRollsApart: boolean;
}

export function namedAlike(shared: readonly SharedName[]): NamedAlike[] {
  const pairs = new Map<string, NamedAlike>();
  for (const { on, other } of shared) {
    const key = [on.id, other.on.id].sort().join(' ');
    const areRollsApart = on.roll !== '' && other.on.roll !== '' && on.roll !== other.on.roll;
    const known = pairs.get(key);
    pairs.set(key, {
      recorders: known?.recorders ?? [on.name, other.on.name],
      areRollsApart: areRollsApart && (known?.areRollsApart ?? true),
    });
  }
  return [...pairs.values()];
}
