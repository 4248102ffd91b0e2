import type { TakeId } from '../../day/model.ts';
import { isolated } from '../isolated.ts';

/** One difference from the last report sent. */
export interface Change {
  readonly part: 'head' | 'track' | 'take' | 'open';
  readonly kind: 'added' | 'gone' | 'changed';
  /** `'Mixer'`, `'Track 5'`, `'24B/3'`, `'24B/1 to 26/3 (40 takes)'`. */
  readonly what: string;
  /** For a changed take: `'length'`, `'track 5'`. Empty otherwise. */
  readonly field: string;
  readonly was: string;
  readonly is: string;
  /** The takes it concerns, for navigation. */
  readonly takes: readonly TakeId[];
}

interface Sides {
  readonly what: string;
  /** Empty if missing. */
  readonly was: string;
  readonly is: string;
}

/** A change outside the takes; none if both sides are equal. */
export const changesOf = (part: Change['part'], sides: Sides): Change[] =>
  sides.was === sides.is ? [] : [{ part, kind: kindOf(sides), field: '', takes: [], ...sides }];

const kindOf = ({ was, is }: Sides): Change['kind'] =>
  was === '' ? 'added' : is === '' ? 'gone' : 'changed';

/** `'24B/3: length was 1:52 (2800 frames), is 1:58 (2950 frames).'`, `'Mixer: was A, is B.'`, `'24B/4 added: …'` */
export function changeText(change: Change): string {
  const { part, kind, field } = change;
  const [what, was, is] = [isolated(change.what), isolated(change.was), isolated(change.is)];
  // An open matter is a sentence of its own.
  if (part === 'open') return `${what}: ${was || is}`;
  if (kind === 'added') return `${what} added: ${is}.`;
  if (kind === 'gone') return `${what} gone: was ${was}.`;
  const lead = field ? `${what}: ${field}` : `${what}:`;
  return `${lead} was ${was || 'empty'}, is ${is || 'empty'}.`;
}
