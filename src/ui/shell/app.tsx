import type { ComponentType } from 'preact';
import { useEffect, useLayoutEffect, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import type { DayStore } from '../../app/day-store.ts';
import { openTakes } from '../../day/takes.ts';
import type { Result } from '../../shared/result.ts';
import { AppContext, DayContext, RestartContext } from '../frame/context.ts';
import { type DayPage, route } from '../frame/route.ts';
import { Boundary } from '../kit/boundary.tsx';
import { lazy } from '../kit/lazy.tsx';
import { Live } from '../kit/live.tsx';
import { endOffers } from '../kit/messages.ts';
import { isReadOnly } from '../kit/reads-only.ts';
import { useWakeLock } from '../kit/wake-lock.ts';
import { Now } from '../now/now.tsx';
import { ScreenMissing } from './screen-missing.tsx';

// The first load carries the day's first screen; the others follow, and all are available offline.
const Days = lazy(() => import('../days/days.tsx').then((part) => part.Days), ScreenMissing);
const Arriving = lazy(() => import('../days/arriving.tsx').then((part) => part.Arriving), ScreenMissing);
const NoSuchDay = lazy(() => import('./no-such-day.tsx').then((part) => part.NoSuchDay), ScreenMissing);
const Settings = lazy(() => import('../days/settings.tsx').then((part) => part.Settings), ScreenMissing);
const Help = lazy(() => import('../help/help.tsx').then((part) => part.Help), ScreenMissing);
const Cast = lazy(() => import('../cast/cast.tsx').then((part) => part.Cast), ScreenMissing);
const Scenes = lazy(() => import('../cast/scenes/scenes.tsx').then((part) => part.Scenes), ScreenMissing);
const Rig = lazy(() => import('../rig/rig.tsx').then((part) => part.Rig), ScreenMissing);
const Line = lazy(() => import('../line/line.tsx').then((part) => part.Line), ScreenMissing);
const Wrap = lazy(() => import('../wrap/wrap.tsx').then((part) => part.Wrap), ScreenMissing);
const Plan = lazy(() => import('../plan/plan.tsx').then((part) => part.Plan), ScreenMissing);
const MoveUnit = lazy(() => import('../plan/unit/unit.tsx').then((part) => part.MoveUnit), ScreenMissing);
const Radio = lazy(() => import('../radio/radio.tsx').then((part) => part.Radio), ScreenMissing);
const Upkeep = lazy(() => import('../upkeep/upkeep.tsx').then((part) => part.Upkeep), ScreenMissing);
const Listeners = lazy(
  () => import('../upkeep/listeners/listeners.tsx').then((part) => part.Listeners),
  ScreenMissing,
);
const Card = lazy(() => import('../card/card.tsx').then((part) => part.Card), ScreenMissing);
const Picture = lazy(() => import('../picture/picture.tsx').then((part) => part.Picture), ScreenMissing);
const GetDay = lazy(() => import('../phones/get-day.tsx').then((part) => part.GetDay), ScreenMissing);
const Phones = lazy(() => import('../phones/phones.tsx').then((part) => part.Phones), ScreenMissing);

const SCREENS: Record<DayPage, ComponentType> = {
  now: Now,
  cast: Cast,
  scenes: Scenes,
  rig: Rig,
  line: Line,
  wrap: Wrap,
  plan: Plan,
  unit: MoveUnit,
  radio: Radio,
  upkeep: Upkeep,
  listeners: Listeners,
  card: Card,
  picture: Picture,
  phones: Phones,
};

interface AppProps {
  readonly app: AppStore;
  /** Starts the waiting version, or says why not now. */
  readonly restart: () => Promise<Result<unknown>>;
}

export function App({ app, restart }: AppProps) {
  const where = route.value;
  useEffect(() => {
    if ('launchQueue' in window)
      void import('../../app/import/arrivals.ts').then((part) => part.hearLaunches());
  }, []);
  return (
    <AppContext.Provider value={app}>
      <RestartContext.Provider value={restart}>
        {where.at === 'day' ? (
          <OpenDay key={where.day} app={app} id={where.day} tab={where.tab} />
        ) : (
          <Boundary key={where.at}>
            {where.at === 'days' && <Days />}
            {where.at === 'settings' && <Settings />}
            {where.at === 'help' && <Help />}
            {where.at === 'get' && <GetDay />}
            {where.at === 'arriving' && <Arriving wish={where.wish} />}
          </Boundary>
        )}
        <Live />
      </RestartContext.Provider>
    </AppContext.Provider>
  );
}

function OpenDay({ app, id, tab }: { app: AppStore; id: string; tab: DayPage }) {
  // The day in the address is read before the first screen is drawn.
  const [store, setStore] = useState<DayStore | null>(() => {
    const open = app.current();
    return open?.day.peek().id === id ? open : null;
  });
  const [refused, setRefused] = useState<string | null>(null);
  useEffect(() => {
    app.open(id).then(setStore, (error: unknown) => setRefused(String(error)));
  }, [app, id]);
  useEffect(() => {
    app.parts.live?.start(id);
    return app.parts.live?.stop;
  }, [app, id, store]);
  // Undo in a message left standing would act on this day, whichever is shown by then.
  useEffect(() => endOffers, []);
  const isRead = store !== null && store.readsOnly.value !== null;
  useLayoutEffect(() => {
    isReadOnly.value = isRead;
    return () => {
      isReadOnly.value = false;
    };
  }, [isRead]);
  // A short page scrolls as a whole, and another tab starts at its top.
  useEffect(() => scrollTo(0, 0), [tab]);
  useWakeLock(store !== null && openTakes(store.day.value).length > 0);
  if (refused) return <main class="section problem">This day could not be opened: {refused}</main>;
  if (!store) return <main class="page" aria-busy="true" />;
  if (store.erased.value) {
    return (
      <main class="section problem">
        Erased in another window. <a href="#/">All days</a>
      </main>
    );
  }
  const { facts, unknown } = store.day.value;
  // A day that this phone has just joined is on its way.
  const isJoined = app.parts.live?.places.of(id) !== undefined;
  if (!isJoined && facts.length + unknown.length + store.damaged.value === 0) return <NoSuchDay day={id} />;
  const Screen = SCREENS[tab];
  return (
    <DayContext.Provider value={store}>
      <Boundary key={tab}>
        <Screen />
      </Boundary>
    </DayContext.Provider>
  );
}
