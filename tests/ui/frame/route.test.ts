import { describe, expect, test } from 'vitest';
import { type DayPage, hrefOf, PAGES, readRoute, TABS, tabOf, WISHES } from '../../../src/ui/frame/route.ts';

const ALL = [...TABS, ...(Object.keys(PAGES) as DayPage[])];

describe('an address', () => {
  test.each(ALL)('of %s leads back to it', (tab) => {
    const there = { at: 'day', day: 'd123', tab } as const;
    expect(readRoute(hrefOf(there))).toEqual(there);
    expect(TABS).toContain(tabOf(tab));
  });

  test.each(WISHES)('of the shortcut %s is not a day', (wish) => {
    expect(readRoute(`#/${wish}`)).toEqual({ at: 'arriving', wish });
  });

  test.each(['help', 'settings'] as const)('of %s is not a day', (at) => {
    expect(readRoute(`#/${at}`)).toEqual({ at });
  });

  test.each(['', '#/', '#/day/d123', '#/day/d123/nowhere', '#/day/a b/now', '#/day/d123/toString'])(
    '%j, which leads nowhere, is the list of days',
    (hash) => {
      expect(readRoute(hash)).toEqual({ at: 'days' });
    },
  );
});
