import { phonesOfDay } from '../../day/phones/phones-of-day.ts';
import { useApp, useDatabase, useDay } from '../frame/context.ts';
import { Page } from '../frame/page/page.tsx';
import { Row } from '../kit/row.tsx';
import { statusOfPhone, titleOfPhone } from './words.ts';

/** The phones of the day: whose they are, when each was last heard, and what each had not seen by then. */
export function Phones() {
  const day = useDay().day.value;
  const own = useDatabase();
  const isNamed = Boolean(useApp().parts.holder?.read()?.name);
  const phones = phonesOfDay(day, own);
  return (
    <Page tab="phones">
      <h1 class="section-title">Phones</h1>
      <ul class="rows">
        {phones.map((phone) => (
          <li key={phone.database}>
            <Row title={titleOfPhone(phone, own)} under={statusOfPhone(day, phone, own)} />
          </li>
        ))}
      </ul>
      {!isNamed && (
        <p class="section">
          <a href="#/settings">Say who holds this phone</a>: its name then stands beside what you enter.
        </p>
      )}
    </Page>
  );
}
