import type { Day } from '../../day/model.ts';
import type { Matter } from '../../report/open-matters.ts';
import { matterText } from '../../report/words.ts';
import { Row } from '../parts/row.tsx';
import { goTo, type Tab } from '../route.ts';
import { countOf } from '../words/chain.ts';

/** Where each matter can be settled. */
const PLACE: Record<string, Tab> = {
  clash: 'now',
  'clash-on-input': 'now',
  'voice-unrecorded': 'now',
  'said-twice': 'now',
  'name-typed-over': 'now',
  'take-open': 'now',
};

/** What is not settled, before the report goes out; each line leads to its place. It may be sent all the same. */
export function Unsettled({ day, matters }: { day: Day; matters: readonly Matter[] }) {
  return (
    <section aria-labelledby="unsettled-head">
      <h2 id="unsettled-head" class="section-title">
        {matters.length === 0 ? 'Everything is settled' : `${countOf(matters.length, 'matter')} not settled`}
      </h2>
      <ul class="rows">
        {matters.map((matter) => (
          <li key={JSON.stringify(matter)}>
            <Row
              mark="clash"
              title={matterText(matter)}
              onTap={() => goTo({ at: 'day', day: day.id, tab: PLACE[matter.code] ?? 'line' })}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
