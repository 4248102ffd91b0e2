import { Fragment } from 'preact';
import type { Moment } from '../../app/day-store.ts';
import type { Day, PartId } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import { formatOf, formatOfAFile } from '../../upkeep/due/day-cards.ts';
import { type CardState, hoursLeftIn, shiftOf, type UpkeepNow } from '../../upkeep/due/day-due.ts';
import { bytesPerSecond, minutesToFileLimit } from '../../upkeep/due/media.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { Section } from '../kit/section.tsx';
import { countOf } from '../words/chain.ts';
import { sentenceFor } from '../words/problems.ts';
import { bitDepthWords, sampleRateWords } from '../words/recording.ts';
import { CardBar, CardLegend } from './card-bar.tsx';
import { type CardFill, cardFill } from './card-fill.ts';
import { cardBar } from './time-bars.ts';
import { scaleOf, type TimeScale } from './time-scale.ts';
import { clockOf, figureWords, gigabytes, hoursWords, shortWords } from './words.ts';

interface MediaProps {
  readonly day: Day;
  readonly upkeep: UpkeepNow;
  readonly now: Moment;
  readonly onCard: (id: string | undefined) => void;
}

/** Cards with the space left at the day's pace, and when a file reaches 4 GiB. */
export function MediaSection({ day, upkeep, now, onCard }: MediaProps) {
  const recorders = recordersOf(day);
  const isSeveral = recorders.length > 1;
  const scale = scaleOf(day, upkeep, now.atMs);
  const { wrapAtMs } = shiftOf(day);
  const fills = new Map(
    upkeep.cards.flatMap(({ card, left: found }) =>
      found.ok ? [[card.id, cardFill(card, found.value, now.atMs, wrapAtMs)] as const] : [],
    ),
  );
  return (
    <Section name="Media" under={leftWords(day, upkeep)}>
      {upkeep.cards.length === 0 && (
        <p class="section soft">
          Add a card with its size to see how full it is and whether it lasts to wrap.
        </p>
      )}
      {fills.size > 0 && <CardLegend fills={[...fills.values()]} />}
      {recorders.map(({ id, name }) => (
        <Fragment key={id}>
          {isSeveral && <p class="section-title soft">{name}</p>}
          <ul class="rows">
            {upkeep.cards
              .filter(({ card }) => card.recorder === id)
              .map((state) => (
                <CardRow
                  key={state.card.id}
                  state={state}
                  under={cardWords(state, scale, now)}
                  fill={fills.get(state.card.id)}
                  onTap={() => onCard(state.card.id)}
                />
              ))}
          </ul>
          {isSeveral && <Written day={day} recorder={id} />}
        </Fragment>
      ))}
      <Button look="bare" class="prep-more" onClick={() => onCard(undefined)}>
        Add a card
      </Button>
      {!isSeveral && <Written day={day} recorder={recorders[0]!.id} />}
      <p class="section soft">GB is 10⁹ bytes, as on the card; GiB is 2³⁰, 7.4 % more.</p>
      <Cautions of={['media']} />
    </Section>
  );
}

/** `13 h of recording left, 12 tracks`; of each recorder where there are several. */
function leftWords(day: Day, upkeep: UpkeepNow): string {
  const recorders = recordersOf(day);
  const left = recorders.flatMap(({ id, name }) => {
    const hours = hoursLeftIn(upkeep, id);
    return hours === null ? [] : [{ name, hours: hoursWords(hours) }];
  });
  if (left.length === 0) return 'no card in yet';
  return recorders.length === 1
    ? `${left[0]!.hours} of recording left, ${formatOf(day).tracks} tracks`
    : `of recording left: ${left.map(({ name, hours }) => `${name} ${hours}`).join(', ')}`;
}

/** What a recorder writes in an hour, and how long a file of it can get. */
function Written({ day, recorder }: { day: Day; recorder: PartId }) {
  const format = formatOf(day, null, recorder);
  const rate = bytesPerSecond(format);
  const limit = minutesToFileLimit(formatOfAFile(day, null, recorder));
  return (
    <dl class="section figures">
      <dt>
        {format.tracks} tracks, {sampleRateWords(format.sampleRate)},{' '}
        {bitDepthWords(settingsNow(day, recorder).bitDepth)}
      </dt>
      <dd>
        {rate.ok ? `${figureWords((rate.value * 3600) / 1e9, 2)} GB an hour` : sentenceFor(rate.problem)}
      </dd>
      <dt>A file reaches 4 GiB</dt>
      <dd>{limit.ok ? `after ${hoursWords(limit.value / 60)}, then the recorder starts another` : ''}</dd>
    </dl>
  );
}

interface CardRowProps {
  readonly state: CardState;
  readonly under: string;
  readonly fill: CardFill | undefined;
  readonly onTap: () => void;
}

const CardRow = ({ state, under, fill, onTap }: CardRowProps) => (
  <li>
    <Row title={state.card.card} under={under} word={copiesWords(state)} onTap={onTap} />
    {fill && (
      <div class="card-bar">
        <CardBar card={state.card.id} fill={fill} />
      </div>
    )}
  </li>
);

function cardWords({ card, left }: CardState, scale: TimeScale, now: Moment): string {
  if (!left.ok) return sentenceFor(left.problem);
  const { hoursLeft, fullAtMs, lastsToWrap } = left.value;
  const short = card.out ? undefined : cardBar(scale, left.value)?.short;
  const clock = (ms: number): string => clockOf(ms, now.zone, now.atMs);
  return [
    card.out
      ? `came out ${clock(card.outAtMs ?? now.atMs)}`
      : `${hoursWords(hoursLeft)} left of ${gigabytes(card.capacityBytes)}`,
    `${hoursWords(card.recordedMs / 3_600_000)} on it today`,
    card.out || fullAtMs === undefined ? '' : `full about ${clock(fullAtMs)} at this pace`,
    lastsToWrap === true && !card.out ? 'lasts to wrap' : '',
    short ? shortWords(short, 'full') : '',
  ]
    .filter((words) => words !== '')
    .join(' · ');
}

function copiesWords({ card }: CardState) {
  if (card.copies >= 2) return countOf(card.copies, 'copy', 'copies');
  return (
    <>
      <strong>{card.out ? 'do not erase' : ''}</strong>
      {card.copies === 0 ? 'no copy' : '1 copy'}
    </>
  );
}
