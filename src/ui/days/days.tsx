import { useEffect, useState } from 'preact/hooks';
import { waitingNames } from '../../app/import/shared-files.ts';
import type { DayOutline } from '../../app/ports.ts';
import { useApp } from '../frame/context.ts';
import { Looks } from '../frame/look-choice.tsx';
import { complain, tell } from '../frame/messages.ts';
import { NotKeptBanner } from '../frame/page/not-kept.tsx';
import { Unsaved } from '../frame/page/unsaved.tsx';
import { goTo, opensWith } from '../frame/route.ts';
import { isTabOnIphone } from '../frame/sending/device.ts';
import { UpdateOffer } from '../frame/update-offer.tsx';
import { version } from '../frame/version.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { countOf, listOf } from '../words/chain.ts';
import { copyWords, titleOf } from '../words/day-outline.ts';
import { DayActions } from './day-actions.tsx';
import { ImportSheet } from './import-sheet.tsx';
import { LicenceSheet } from './licences-sheet.tsx';
import { NewDay } from './new-day.tsx';
import { openSampleDay } from './sample-day.ts';
import './days.css';

type Open = { readonly day: DayOutline } | 'new' | 'import-day' | 'licences' | null;

export function Days() {
  const app = useApp();
  const [open, setOpen] = useState<Open>(() => (opensWith.peek() === 'new-day' ? 'new' : null));
  const days = app.days.value;
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
      tell('Practice day: try anything');
      goTo({ at: 'day', day: result.value.day, tab: 'now' });
    }
  };
  return (
    <div class="page days">
      <header class="section days-head">
        <div>
          <h1>Rollbook</h1>
          <p class="soft">Who is on which track, every take, with no signal.</p>
        </div>
        <a class="as-button" href="#/help">
          Help
        </a>
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
        {days.length === 0 && <First />}
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
                under={[day.date, countOf(day.takes, 'take')].filter(Boolean).join(' · ')}
                word={copyWords(day)}
                onTap={() => goTo({ at: 'day', day: day.id, tab: 'now' })}
              />
              <Button look="bare" label={`More about ${titleOf(day)}`} onClick={() => setOpen({ day })}>
                more
              </Button>
            </li>
          ))}
        </ul>
        <div class="section">
          <Looks />
          <p class="soft">{OFFLINE_WORDS[version.value.offline]}</p>
          <p class="soft">
            Days hold people's names. They stay on this phone until you send them; nothing is tracked. Erasing
            a day removes it from this phone completely.
          </p>
          <Button look="plain" class="days-licences" onClick={() => setOpen('licences')}>
            Licences
          </Button>
        </div>
      </main>
      <div class="foot days-foot">
        <Button onClick={() => setOpen('import-day')}>Import day file</Button>
        <Button onClick={() => void sample()}>Sample day</Button>
        <Button look="solid" class="days-new" onClick={() => setOpen('new')}>
          New day
        </Button>
      </div>
      {open === 'new' && <NewDay onClose={close} />}
      {open === 'licences' && <LicenceSheet onClose={close} />}
      {open === 'import-day' && <ImportSheet onClose={close} />}
      {open && typeof open === 'object' && (
        <DayActions day={days.find(({ id }) => id === open.day.id) ?? open.day} onClose={close} />
      )}
    </div>
  );
}

const OFFLINE_WORDS = {
  preparing: 'Getting ready to work with no signal.',
  ready: 'Ready to work with no signal. Everything stays on this phone until you send it.',
  partly:
    'Some of the app is missing from this phone: with no signal, some screens and files do not open. It is fetched again when there is signal.',
  failed: 'Not ready to start with no signal yet; it is tried again when there is one.',
  unsupported: 'This browser cannot start the app with no signal.',
} as const;

function First() {
  return (
    <div class="section empty">
      <p>
        Before the day, set up the rig and the cast. On the day, two taps record what changed. Every take
        knows who was on which track, and so does the report.
      </p>
      <p class="soft">Start a new day, or try the sample day: it never mixes with real ones.</p>
    </div>
  );
}
