import { answersNow } from '../../day/answers/answers.ts';
import { key } from '../../day/chain/links.ts';
import type { Day } from '../../day/model.ts';
import { type Conflict, conflictsOf } from '../../day/phones/conflicts.ts';
import { namesAlong } from './carried-along.ts';

/** Key prefixes of the links that a rig and a day carry over; see `key` in `day/chain/links.ts`. */
const RIG_LINKS = ['tuned:', 'lead:', 'socket:', 'thrown:', 'sent:', 'gang:'];
const DAY_LINKS = [...RIG_LINKS, 'pins:', 'out:', 'weights'];

/** Header fields that belong to the day alone. */
const OWN_FIELDS: ReadonlySet<string> = new Set(['date', 'remarks', 'sample']);

/**
 * Conflicts between phones, at the end of a day, in anything that carries over to the next one (or only in
 * its rig): the next day could only take one side.
 */
export function differingAlong(day: Day, what: 'day' | 'rig' = 'day'): Conflict[] {
  const { links } = answersNow(day);
  const along = what === 'day' ? [...DAY_LINKS, ...[...namesAlong(day).keys()].map(key.named)] : RIG_LINKS;
  return conflictsOf(day).filter((conflict) => {
    if (conflict.kind === 'link-conflict') {
      const { link } = conflict;
      return along.some((start) => link.startsWith(start)) && links.get(link)?.rivals !== undefined;
    }
    if (conflict.kind !== 'field-conflict') return false;
    if (conflict.of === 'part') return true;
    if (what === 'rig') return false;
    return conflict.of === 'voice' || (conflict.of === 'day' && !OWN_FIELDS.has(conflict.field));
  });
}
