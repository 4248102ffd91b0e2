import { useState } from 'preact/hooks';
import { useApp } from '../frame/context.ts';
import { Looks } from '../frame/look-choice.tsx';
import { UpdateOffer } from '../frame/update-offer.tsx';
import { version } from '../frame/version.ts';
import { Button } from '../kit/button.tsx';
import { PROMISED_WORDS } from '../words/day-outline.ts';
import { HolderFields } from './holder-fields.tsx';
import { LicenceSheet } from './licences-sheet.tsx';
import { OFFLINE_WORDS } from './offline-words.ts';
import './days.css';

/** What belongs to this phone and to no day: how the app looks, which hand holds it, where the data lives. */
export function Settings() {
  const { promised } = useApp().safekeeping;
  const [isLicences, setLicences] = useState(false);
  return (
    <div class="page settings">
      <header class="section days-head">
        <h1>Settings</h1>
        <Button onClick={() => history.back()}>Back</Button>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: little in it takes the focus, and keys must be able to scroll it (WCAG 2.1.1). */}
      <main class="body" tabIndex={0}>
        <UpdateOffer />
        <HolderFields />
        <div class="section">
          <Looks />
        </div>
        <section class="section settings-data" aria-labelledby="settings-data">
          <h2 id="settings-data">Where the data lives</h2>
          <p>In this browser, on this phone, and nowhere else until you send it. Nothing is tracked.</p>
          <p>
            Days hold people's names. Erasing a day removes it from this phone completely; a copy that was
            sent stays where it went.
          </p>
          <p>
            Losing the phone, or clearing this site's data, takes everything. Keep a copy of each day off the
            phone.
          </p>
          <p class="soft">{PROMISED_WORDS[promised.value]}</p>
          <p class="soft">{OFFLINE_WORDS[version.value.offline]}</p>
          <Button look="plain" onClick={() => setLicences(true)}>
            Licences
          </Button>
        </section>
      </main>
      <footer class="foot settings-foot">
        <a class="button as-button" href="#/">
          All days
        </a>
      </footer>
      {isLicences && <LicenceSheet onClose={() => setLicences(false)} />}
    </div>
  );
}
