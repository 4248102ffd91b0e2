import { useState } from 'preact/hooks';
import type { Day } from '../../day/model.ts';
import type { Matter } from '../../report/matter.ts';
import { matterText } from '../../report/printed/matter-words.ts';
import { ConflictSheet, DaySheet, TrackSheet, VoiceSheet } from '../frame/page/sheets.ts';
import { goTo } from '../frame/route.ts';
import { TakeSheet } from '../frame/sheets/take-sheet.tsx';
import { Row } from '../kit/row.tsx';
import { countOf } from '../words/chain.ts';
import { type Place, placeOf } from './matter-place.ts';

type OpenPlace = Exclude<Place, { tab: unknown }>;

/** Open matters before the report goes out, each with a link to its place. Sending is allowed. */
export function Unsettled({ day, matters }: { day: Day; matters: readonly Matter[] }) {
  const [open, setOpen] = useState<OpenPlace | null>(null);
  const show = (place: Place): void => {
    if ('tab' in place) goTo({ at: 'day', day: day.id, tab: place.tab });
    else setOpen(place);
  };
  return (
    <section aria-labelledby="unsettled-head">
      <h2 id="unsettled-head" class="section-title">
        {matters.length === 0 ? 'Nothing left to settle' : `${countOf(matters.length, 'matter')} not settled`}
      </h2>
      {matters.length > 0 && (
        <p class="soft wrap-note">You can send it anyway; the report says what is open. Tap to settle.</p>
      )}
      <ul class="rows">
        {matters.map((matter) => (
          <li key={JSON.stringify(matter)}>
            <Row mark="clash" title={matterText(matter)} onTap={() => show(placeOf(matter))} />
          </li>
        ))}
      </ul>
      {open && <PlaceSheet day={day} place={open} onClose={() => setOpen(null)} />}
    </section>
  );
}

interface PlaceProps {
  readonly day: Day;
  readonly place: OpenPlace;
  readonly onClose: () => void;
}

function PlaceSheet({ day, place, onClose }: PlaceProps) {
  switch (place.sheet) {
    case 'take': {
      const item = day.takeItems.get(place.take);
      return item ? <TakeSheet item={item} onClose={onClose} /> : null;
    }
    case 'track':
      return <TrackSheet track={place.track} from={place.from} onClose={onClose} />;
    case 'voice':
      return <VoiceSheet voice={place.voice} from={place.from} onClose={onClose} />;
    case 'conflicts':
      return <ConflictSheet onClose={onClose} />;
    case 'day':
      return <DaySheet onClose={onClose} />;
  }
}
