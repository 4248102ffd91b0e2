import { answersNow } from '../../day/answers/answers.ts';
import { key } from '../../day/chain/links.ts';
import type { Day } from '../../day/model.ts';
import { type Conflict, conflictsOf } from '../../day/phones/conflicts.ts';
import { namesAlong } from './carried-along.ts';

/** The links that a rig and a day take along, by how their names begin; see `key` in `day/chain/links.ts`. */
const RIG_LINKS = ['tuned:', 'lead:', 'socket:', 'thrown:', 'sent:', 'gang:'];
const DAY_LINKS = [...RIG_LINKS, 'pins:', 'out:', 'weights'];

/** Fields of the head that are the day's own. */
const OWN_FIELDS: ReadonlySet<string> = new Set(['date', 'remarks', 'sample']);

/**
 * Where phones differ, at the end of a day, in something that goes along to the next one, or in what of it is the rig: the
 * next day would have one answer of two.
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
