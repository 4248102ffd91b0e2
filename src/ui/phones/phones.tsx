import { useState } from 'preact/hooks';
import { phonesOfDay } from '../../day/phones/phones-of-day.ts';
import { useApp, useDatabase, useDay, useOutline } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { DayFileButton } from '../frame/sending/day-file-button.tsx';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { GetSheet } from './get-sheet.tsx';
import { GiveSheet } from './give-sheet.tsx';
import { LiveSection } from './live-section.tsx';
import { SealedFileSheet } from './sealed-file-sheet.tsx';
import { statusOfPhone, titleOfPhone } from './words.ts';
import './phones.css';

/** The phones of the day: whose they are, when each was last heard, and what each had not seen by then. */
export function Phones() {
  const day = useDay().day.value;
  const own = useDatabase();
  const isNamed = Boolean(useApp().parts.holder?.read()?.name);
  const [open, setOpen] = useState<'give' | 'get' | 'sealed' | null>(null);
  const phones = phonesOfDay(day, own);
  const outline = useOutline();
  const close = (): void => setOpen(null);
  return (
    <Page
      tab="phones"
      forReaders
      foot={
        <div class="phones-foot">
          <Button onClick={() => setOpen('give')}>Give to another phone</Button>
          <Button onClick={() => setOpen('get')}>Get from another phone</Button>
        </div>
      }
    >
      <h1 class="section-title">Phones</h1>
      <ul class="rows">
        {phones.map((phone) => (
          <li key={phone.database}>
            <Row title={titleOfPhone(phone, own)} under={statusOfPhone(day, phone, own)} />
          </li>
        ))}
      </ul>
      <div class="section">
        <DayFileButton day={outline} quiet />
      </div>
      <LiveSection onLetIn={() => setOpen('give')} onSealed={() => setOpen('sealed')} />
      <p class="section soft">
        By camera and screen, with no network: one phone shows codes, the other reads them.
      </p>
      {!isNamed && (
        <p class="section">
          <a href="#/settings">Say who holds this phone</a>: its name then stands beside what you enter.
        </p>
      )}
      {open === 'give' && <GiveSheet onClose={close} />}
      {open === 'sealed' && <SealedFileSheet onClose={close} />}
      {open === 'get' && <GetSheet day={day.id} onClose={close} />}
    </Page>
  );
}
