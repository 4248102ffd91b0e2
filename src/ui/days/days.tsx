import { useEffect, useState } from 'preact/hooks';
import { waitingNames } from '../../app/import/shared-files.ts';
import type { DayOutline } from '../../app/ports.ts';
import { useApp } from '../frame/context.ts';
import { complain, tell } from '../frame/messages.ts';
import { NotKeptBanner } from '../frame/page/not-kept.tsx';
import { Unsaved } from '../frame/page/unsaved.tsx';
import { goTo, opensWith } from '../frame/route.ts';
import { isTabOnIphone } from '../frame/sending/device.ts';
import { UpdateOffer } from '../frame/update-offer.tsx';
import { version } from '../frame/version.ts';
import { Button } from '../kit/button.tsx';
import { MessagePlace } from '../kit/live.tsx';
import { Row } from '../kit/row.tsx';
import { countOf, listOf } from '../words/chain.ts';
import { copyWords, titleOf } from '../words/day-outline.ts';
import { DayActions } from './day-actions.tsx';
import { FirstPicture } from './first-picture.tsx';
import { ImportSheet } from './import-sheet.tsx';
import { NewDay } from './new-day.tsx';
import { OFFLINE_WORDS } from './offline-words.ts';
import { openSampleDay } from './sample-day.ts';
import './days.css';

type Open = { readonly day: DayOutline } | 'new' | 'import-day' | null;

export function Days() {
  const app = useApp();
  const [open, setOpen] = useState<Open>(() => (opensWith.peek() === 'new-day' ? 'new' : null));
  const days = app.days.value;
  const isEmpty = days.length === 0;
  const close = (): void => setOpen(null);
  // Includes changes made since the list was last shown; other windows may start or erase days.
  useEffect(() => {
    const refresh = (): void => void app.refreshDays().catch(() => {});
    refresh();
    return app.parts.neighbours.listen(refresh);
  }, [app]);
  const [waiting, setWaiting] = useState<readonly string[]>([]);
  useEffect(() => {
    opensWith.value = null;
    waitingNames().then(setWaiting, () => {});
  }, []);
  const sample = async (): Promise<void> => {
    const result = await openSampleDay(app);
    if (!result.ok) complain(result.problem);
    else {
      tell('Practice day: it never mixes with real days');
      goTo({ at: 'day', day: result.value.day, tab: 'now' });
    }
  };
  return (
    <div class="page days">
      <header class="section days-head">
        <h1>Rollbook</h1>
      </header>
      <main class="body">
        {isTabOnIphone() && (
          <p class="banner">
            Add this page to the home screen first: on this phone, days made in a browser tab do not carry
            over to the icon.
          </p>
        )}
        <NotKeptBanner />
        <Unsaved onRestored={(day) => goTo({ at: 'day', day, tab: 'now' })} />
        <UpdateOffer />
        {isEmpty && <First />}
        <ul class="rows">
          {waiting.length > 0 && (
            <li>
              <Row
                title={waiting.length === 1 ? 'A file was shared' : `${waiting.length} files were shared`}
                under={listOf(waiting)}
                word="view"
                onTap={() => location.replace('#/shared')}
              />
            </li>
          )}
          {days.map((day) => (
            <li key={day.id} class="day-row">
              <Row
                title={titleOf(day)}
                under={[day.date, countOf(day.takes, 'take'), copyWords(day)].filter(Boolean).join(' · ')}
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'now' })}
              />
              <Button look="bare" label={`More about ${titleOf(day)}`} onClick={() => setOpen({ day })}>
                more
              </Button>
            </li>
          ))}
        </ul>
        <p class="section soft days-offline">{OFFLINE_WORDS[version.value.offline]}</p>
      </main>
      <footer class="foot">
        <MessagePlace />
        <div class="days-foot" data-empty={isEmpty}>
          <Button look={isEmpty ? 'solid' : 'outline'} onClick={() => void sample()}>
            Sample day
          </Button>
          <Button look={isEmpty ? 'outline' : 'solid'} onClick={() => setOpen('new')}>
            New day
          </Button>
          <nav class="days-links" aria-label="Also">
            <Button look="bare" onClick={() => setOpen('import-day')}>
              Import day file
            </Button>
            <a href="#/settings">Settings</a>
            <a href="#/help">Help</a>
          </nav>
        </div>
      </footer>
      {open === 'new' && <NewDay onClose={close} />}
      {open === 'import-day' && <ImportSheet onClose={close} />}
      {open && typeof open === 'object' && (
        <DayActions day={days.find(({ id }) => id === open.day.id) ?? open.day} onClose={close} />
      )}
    </div>
  );
}

/** An empty phone shows what the app does. */
function First() {
  return (
    <div class="section first">
      <FirstPicture />
      <p>Log a change in two taps: every take, and the report, then show who was on which track.</p>
    </div>
  );
}
