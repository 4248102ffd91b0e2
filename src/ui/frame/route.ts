import { signal } from '@preact/signals';

export const TABS = ['now', 'cast', 'rig', 'line', 'wrap'] as const;
export type Tab = (typeof TABS)[number];

/** Pages that are opened from a tab and belong to it. */
export const PAGES = {
  plan: 'cast',
  unit: 'rig',
  scenes: 'cast',
  radio: 'rig',
  upkeep: 'rig',
  listeners: 'rig',
  card: 'wrap',
  picture: 'wrap',
  phones: 'line',
} as const satisfies Record<string, Tab>;
export type DayPage = Tab | keyof typeof PAGES;

const isPage = (name: string | undefined): name is DayPage =>
  name !== undefined && (TABS.some((tab) => tab === name) || Object.hasOwn(PAGES, name));

export const tabOf = (page: DayPage): Tab =>
  page in PAGES ? PAGES[page as keyof typeof PAGES] : (page as Tab);

/** What a home-screen shortcut or another app asked for, decided before anything is shown. */
export const WISHES = ['roll', 'inputs', 'report', 'shared', 'turned-away', 'not-shared'] as const;
export type Wish = (typeof WISHES)[number];

/** Where the user is: the days, the settings, the help, getting a day off another phone, or one tab of a day. In the address, so that back works. */
export type Route =
  | { readonly at: 'days' }
  | { readonly at: 'settings' }
  | { readonly at: 'help' }
  | { readonly at: 'get' }
  | { readonly at: 'arriving'; readonly wish: Wish }
  | { readonly at: 'day'; readonly day: string; readonly tab: DayPage };

export function readRoute(hash: string): Route {
  const wish = WISHES.find((one) => hash === `#/${one}`);
  if (wish) return { at: 'arriving', wish };
  if (hash === '#/help') return { at: 'help' };
  if (hash === '#/get') return { at: 'get' };
  if (hash === '#/settings') return { at: 'settings' };
  const [, day, tab] = /^#\/day\/([\w.:-]{1,64})\/(\w+)$/.exec(hash) ?? [];
  return day && isPage(tab) ? { at: 'day', day, tab } : { at: 'days' };
}

export const hrefOf = (route: Route): string =>
  route.at === 'day' ? `#/day/${route.day}/${route.tab}` : '#/';

export const route = signal<Route>({ at: 'days' });

export function followAddress(): void {
  const read = (): void => {
    route.value = readRoute(location.hash);
  };
  addEventListener('hashchange', read);
  read();
}

export function goTo(next: Route): void {
  location.hash = hrefOf(next);
}

/** The sheet that the day's first screen, or the list of days, opens with when a shortcut asked for it. */
export const opensWith = signal<'inputs' | 'new-day' | null>(null);
