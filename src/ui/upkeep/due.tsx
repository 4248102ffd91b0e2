import { freshCells, jamDevices } from '../../app/commands/upkeep.ts';
import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { recorderOfCard } from '../../day/wrap/armed-tracks.ts';
import type { UpkeepNow } from '../../upkeep/due/day-due.ts';
import type { DueItem } from '../../upkeep/due/due-list.ts';
import { type DueGroup, dueGroups } from '../../upkeep/due/due-list.ts';
import { useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { Mark, type MarkState } from '../kit/mark.tsx';
import { countOf, listOf } from '../words/chain.ts';
import { deviceName } from '../words/prep-facts.ts';
import { recorderName } from '../words/recorder-names.ts';
import { TimeBarDrawing, TimeLegend } from './time-bar.tsx';
import { barOf, type TimeBar } from './time-bars.ts';
import { scaleOf, type TimeScale } from './time-scale.ts';
import { actionWords, reasonWords } from './words.ts';
import { wornWords } from './worn-words.ts';

interface DueProps {
  readonly day: Day;
  readonly upkeep: UpkeepNow;
  readonly now: Moment;
}

const KIND_WORD = { cells: 'battery', jam: 'timecode', card: 'media' } as const;

/** `battery`; of a card the recorder that it is in, where there are several. */
function kindWords(day: Day, { kind, name }: DueItem): string {
  const card = kind === 'card' && recordersOf(day).length > 1 ? day.upkeep.cards.get(name) : undefined;
  return card ? `media in ${recorderName(day, recorderOfCard(day, card))}` : KIND_WORD[kind];
}

/** What is due and when, soonest first; one tap marks it done. */
export function Due({ day, upkeep, now }: DueProps) {
  const groups = dueGroups(upkeep.due.items);
  if (groups.length === 0)
    return (
      <p class="section soft">
        Nothing to track yet. Mark fresh batteries, jams and the card that is in, and what is due shows here.
      </p>
    );
  const scale = scaleOf(day, upkeep, now.atMs);
  const rows = groups.map((group) => ({ group, bar: barOf(scale, upkeep, group.item) }));
  const bars = rows.flatMap(({ bar }) => bar ?? []);
  return (
    <>
      {bars.length > 0 && <TimeLegend scale={scale} zone={now.zone} bars={bars} end="flat or full" />}
      <ul class="due" aria-label="What is due">
        {rows.map(({ group, bar }) => (
          <li key={`${group.item.kind}${group.names[0]}`} data-action={group.item.action}>
            <DueRow day={day} group={group} now={now} scale={scale} bar={bar} />
          </li>
        ))}
      </ul>
    </>
  );
}

function markOf({ action }: DueItem): MarkState {
  return action === 'now' ? 'clash' : action === 'at-cut' ? 'reserved' : 'idle';
}

interface DueRowProps {
  readonly day: Day;
  readonly group: DueGroup;
  readonly now: Moment;
  readonly scale: TimeScale;
  readonly bar: TimeBar | undefined;
}

function DueRow({ day, group, now, scale, bar }: DueRowProps) {
  const run = useRun();
  const { names, item } = group;
  const nameOf = (id: string): string => deviceName(day, id);
  const cards = day.upkeep.cards;
  const title = item.kind === 'card' ? cards.get(item.name)?.name || 'A card' : namesWords(names.map(nameOf));
  const shown = names.length === 1 && item.kind === 'cells' ? wornWords(day, item.name) : title;
  const saying = { zone: now.zone, nowMs: now.atMs, nameOf };
  return (
    <div class="due-row">
      <Mark state={markOf(item)} />
      <div class="row-text">
        <strong>
          {shown} <span class="due-kind">{kindWords(day, item)}</span>
        </strong>
        <span class="soft">{item.reasons.map((reason) => reasonWords(reason, saying)).join(' · ')}</span>
      </div>
      <strong class={item.action === 'later' ? 'due-when' : 'due-when warn'}>
        {actionWords(item, now.zone, now.atMs)}
      </strong>
      {item.kind === 'cells' && (
        <Button
          label={`Fresh batteries in ${title}`}
          onClick={() => run(freshCells(names), `Fresh batteries in ${title}`)}
        >
          Fresh
        </Button>
      )}
      {item.kind === 'jam' && (
        <Button
          label={`Jam ${title} again`}
          onClick={() => run(jamDevices(names, sourceOf(item)), `${title} jammed again`)}
        >
          Jam
        </Button>
      )}
      {item.kind === 'card' && <span class="due-none" />}
      {bar && <TimeBarDrawing scale={scale} bar={bar} />}
    </div>
  );
}

const sourceOf = ({ reasons }: DueItem): string | undefined =>
  reasons.flatMap((reason) => (reason.code === 'drift' ? [reason.from] : []))[0];

const MOST_NAMES = 6;

const namesWords = (names: readonly string[]): string =>
  names.length > MOST_NAMES
    ? `${names.slice(0, MOST_NAMES - 1).join(', ')} and ${countOf(names.length - MOST_NAMES + 1, 'more', 'more')}`
    : listOf(names);
