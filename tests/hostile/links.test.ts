import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hrefOf, PAGES, readRoute, TABS } from '../../src/ui/frame/route.ts';
import { noteFault } from '../browser/faults-table.ts';
import { CASES, isUnpolluted, NASTY_TEXTS, SHARE } from './cases.ts';

const SEED = 20_261_031;

const piece = fc.oneof(
  fc.constantFrom(
    '#/',
    '#',
    '/',
    'day/',
    'day-1',
    'now',
    'wrap',
    'plan',
    'roll',
    'shared',
    'help',
    '?',
    '&',
    '..',
  ),
  fc.constantFrom(...NASTY_TEXTS),
  fc.string({ unit: 'binary', maxLength: 8 }),
);
const link = fc.oneof(
  fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')),
  // Shaped as a link into a day, with something else in one of its places.
  fc
    .tuple(fc.oneof(piece, fc.constantFrom('d1')), fc.oneof(piece, fc.constantFrom('now', 'card')), piece)
    .map(([day, page, more]) => `#/day/${day}/${page}${more}`),
  fc
    .tuple(fc.stringMatching(/^[\w.:-]{1,70}$/), fc.constantFrom('now', 'card', '__proto__', 'constructor'))
    .map(([day, page]) => `#/day/${day}/${page}`),
);

const DAY_PAGES = [...TABS, ...Object.keys(PAGES)];

describe(`hostile deep links, seed ${SEED}`, () => {
  test(`${CASES.deepLinks} generated ones lead to a screen there is, with a fit id or none, or to the days`, () => {
    const led: Record<string, number> = {};
    let cases = 0;
    let harmed = 0;
    fc.assert(
      fc.property(link, (hash) => {
        cases += 1;
        const route = readRoute(hash);
        led[route.at] = (led[route.at] ?? 0) + 1;
        const fine =
          route.at === 'day'
            ? /^[\w.:-]{1,64}$/.test(route.day) && DAY_PAGES.includes(route.tab) && hrefOf(route) === hash
            : route.at === 'arriving'
              ? ['roll', 'inputs', 'report', 'shared'].includes(route.wish) && hash === `#/${route.wish}`
              : Object.keys(route).length === 1 && ['days', 'help'].includes(route.at);
        harmed += Number(!fine);
        expect(fine, JSON.stringify([hash, route])).toBe(true);
      }),
      { seed: SEED, numRuns: CASES.deepLinks, endOnFailure: true },
    );
    noteFault('hostile deep links', `${cases} links, ${led.day} to a day, ${led.days} to the days`, harmed);
    expect(cases).toBe(CASES.deepLinks);
    expect(Math.min(led.day ?? 0, led.days ?? 0)).toBeGreaterThan(SHARE * 1000);
    expect(isUnpolluted()).toBe(true);
  });

  test('fifty thousand cases are generated over the four entrances in the long run, and five thousand in the short', () => {
    const all = Object.values(CASES).reduce((sum, cases) => sum + cases, 0);
    expect(all).toBeGreaterThanOrEqual(SHARE * 50_000);
  });
});
