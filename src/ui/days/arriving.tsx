import '../words/later-problems.ts';
import { useEffect, useState } from 'preact/hooks';
import type { AppStore } from '../../app/app-store.ts';
import type { FileRead } from '../../app/regain.ts';
import { useApp } from '../context.ts';
import { type DayPage, hrefOf, opensWith, type Wish } from '../route.ts';
import { complain, tell } from '../saying.ts';
import { arrivedFiles, isRecording, readDayFiles, recordingsArrived, timesHanded } from './arrivals.ts';
import { TakeInSheet } from './take-in.tsx';

/** Leads on from a shortcut of the home screen, or takes up the files that the system or another app handed over. */
export function Arriving({ wish }: { wish: Wish }) {
  const app = useApp();
  const handed = timesHanded.value;
  const [taken, setTaken] = useState<{ readonly reads: readonly FileRead[]; readonly handed: number } | null>(
    null,
  );
  useEffect(() => {
    if (wish === 'shared') void takeUp(app).then((reads) => setTaken(reads && { reads, handed }));
    else openNewest(app, wish === 'report' ? 'wrap' : 'now', wish);
  }, [app, wish, handed]);
  return (
    <main class="page" aria-busy={taken === null}>
      {taken && <TakeInSheet key={taken.handed} reads={taken.reads} onClose={toDays} />}
    </main>
  );
}

const toDays = (): void => location.replace('#/');

/** The day files among what arrived; recordings go to the card check of the newest day, and nothing goes to the list. */
async function takeUp(app: AppStore): Promise<readonly FileRead[] | null> {
  const files = await arrivedFiles();
  const areRecordings = await Promise.all(files.map(isRecording));
  const recordings = files.filter((_, at) => areRecordings[at]);
  if (recordings.length > 0) {
    recordingsArrived.value = recordings;
    openNewest(app, 'card');
    return null;
  }
  const reads = await readDayFiles(files);
  if ('code' in reads) complain(reads);
  else if (reads.length > 0) return reads;
  toDays();
  return null;
}

/** The newest real day, or the sample day where there is no other. */
function openNewest(app: AppStore, tab: DayPage, wish?: Wish): void {
  const days = app.days.peek();
  const newest = days.find(({ sample }) => !sample) ?? days[0];
  if (!newest) {
    tell('No day yet: start one here');
    toDays();
    return;
  }
  if (wish === 'inputs') opensWith.value = 'inputs';
  location.replace(hrefOf({ at: 'day', day: newest.id, tab }));
}
