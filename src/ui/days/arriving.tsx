import { useEffect, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import { openTakes } from '../../day/takes.ts';
import { useApp } from '../context.ts';
import { type DayPage, hrefOf, opensWith, type Wish } from '../route.ts';
import { complain, tell } from '../saying.ts';
import { arrivedFiles, discardShared, readDayFiles, recordingsArrived, timesHanded } from './arrivals.ts';
import type { Brought } from './choose-file.tsx';
import { TakeInSheet } from './take-in.tsx';

/** Leads on from a shortcut of the home screen, or to the door with what the system or another app handed over. */
export function Arriving({ wish }: { wish: Wish }) {
  const app = useApp();
  const handed = timesHanded.value;
  const [brought, setBrought] = useState<(Brought & { readonly handed: number }) | null>(null);
  useEffect(() => {
    if (wish === 'shared') void takeUp(app).then((came) => setBrought(came && { ...came, handed }));
    else if (wish === 'turned-away' || wish === 'not-shared') {
      complain({ code: wish });
      back(app);
    } else openNewest(app, wish === 'report' ? 'wrap' : 'now', wish);
  }, [app, wish, handed]);
  return (
    <main class="page" aria-busy={brought === null}>
      {brought && (
        <TakeInSheet
          key={brought.handed}
          brought={brought}
          onClose={() => back(app)}
          onDone={() => void (brought.how === 'shared' && discardShared())}
        />
      )}
    </main>
  );
}

/** To a take that is rolling, if there is one, and otherwise to the list of days. */
function back(app: AppStore): void {
  const day = app.current()?.day.peek();
  location.replace(day && openTakes(day).length > 0 ? hrefOf({ at: 'day', day: day.id, tab: 'now' }) : '#/');
}

/** The day files among what arrived. Recordings go to the card check of the newest day, where nothing is said by itself. */
async function takeUp(app: AppStore): Promise<Brought | null> {
  const { how, recordings, others } = await arrivedFiles();
  if (recordings.length > 0) {
    recordingsArrived.value = recordings;
    if (others.length === 0) {
      // Without a day they wait until there is one.
      if (how === 'shared' && app.days.peek().length > 0) await discardShared();
      openNewest(app, 'card');
      return null;
    }
  }
  const reads = await readDayFiles(others);
  if ('code' in reads) complain(reads);
  else if (reads.some(({ file }) => file)) return { reads, how };
  else if (reads[0]?.damage) complain(reads[0].damage.problem);
  // Nothing of it can ever be taken in, so it does not wait.
  if (how === 'shared') await discardShared();
  back(app);
  return null;
}

/** The newest real day, or the sample day where there is no other. */
function openNewest(app: AppStore, tab: DayPage, wish?: Wish): void {
  const days = app.days.peek();
  const newest = days.find(({ sample }) => !sample) ?? days[0];
  if (!newest) {
    tell('No day yet: start one here');
    location.replace('#/');
    return;
  }
  if (wish === 'inputs') opensWith.value = 'inputs';
  location.replace(hrefOf({ at: 'day', day: newest.id, tab }));
}
