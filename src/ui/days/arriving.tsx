import { useEffect, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import { takeUpArrival, timesHanded } from '../../app/import/arrivals.ts';
import type { DayImport } from '../../app/import/import-days.ts';
import { openTakes } from '../../day/takes.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { type DayPage, hrefOf, opensWith, type Wish } from '../frame/route.ts';
import { ImportSheet } from './import-sheet.tsx';

/** Follows a home-screen shortcut, or opens the import for files that the system or another app sent. */
export function Arriving({ wish }: { wish: Wish }) {
  const app = useApp();
  const handed = timesHanded.value;
  const [brought, setBrought] = useState<{ readonly days: DayImport; readonly handed: number } | null>(null);
  useEffect(() => {
    if (wish === 'shared') void takeUp(app).then((days) => setBrought(days && { days, handed }));
    else if (wish === 'turned-away' || wish === 'not-shared') {
      complain({ code: wish });
      back(app);
    } else openNewest(app, wish === 'report' ? 'wrap' : 'now', wish);
  }, [app, wish, handed]);
  return (
    <main class="page" aria-busy={brought === null}>
      {brought && <ImportSheet key={brought.handed} brought={brought.days} onClose={() => back(app)} />}
    </main>
  );
}

/** To the rolling take, if there is one, and otherwise to the list of days. */
function back(app: AppStore): void {
  const day = app.current()?.day.peek();
  location.replace(day && openTakes(day).length > 0 ? hrefOf({ at: 'day', day: day.id, tab: 'now' }) : '#/');
}

/** The day files among what arrived. Recordings go to the card check of the newest day. */
async function takeUp(app: AppStore): Promise<DayImport | null> {
  const arrival = await takeUpArrival(app);
  if (arrival.kind === 'day-files') return arrival.days;
  if (arrival.kind === 'recordings') openNewest(app, 'card');
  else {
    if (arrival.problem) complain(arrival.problem);
    back(app);
  }
  return null;
}

/** The newest real day, or the sample day if there is no other. */
function openNewest(app: AppStore, tab: DayPage, wish?: Wish): void {
  const days = app.days.peek();
  const newest = days.find(({ sample }) => !sample) ?? days[0];
  if (!newest) {
    tell('No days yet: start one here');
    location.replace('#/');
    return;
  }
  if (wish === 'inputs') opensWith.value = 'inputs';
  location.replace(hrefOf({ at: 'day', day: newest.id, tab }));
}
