import type { FactId } from '../shared/ids.ts';
import { isOtherSocket, switchedInputs } from './leads.ts';
import { HAD_PACK } from './links.ts';
import type { Day, Take } from './model.ts';
import { takesNumberedTwice } from './takes.ts';

/** What cannot both be true, shown until somebody settles it. */
export type Conflict =
  /** Two phones that did not know of each other said different things of one link. */
  | { readonly kind: 'said-twice'; readonly link: string; readonly by: readonly FactId[] }
  /** One slate and take number was logged twice. */
  | { readonly kind: 'take-twice'; readonly takes: readonly Take[] };

/** The conflicts of the day as it stands; any later word on the same thing settles one. */
export function conflictsOf(day: Day): Conflict[] {
  const switched = switchedInputs(day.rig);
  const links = [...day.tail].filter(
    ([name, { rivals }]) => rivals && !isOtherSocket(switched, name) && !name.startsWith(HAD_PACK),
  );
  return [
    ...links.map(
      ([name, link]): Conflict => ({
        kind: 'said-twice',
        link: name,
        by: [link.by, ...(link.rivals ?? []).map(({ by }) => by)],
      }),
    ),
    ...takesNumberedTwice(day).map((takes): Conflict => ({ kind: 'take-twice', takes })),
  ];
}
