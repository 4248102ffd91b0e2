import { useState } from 'preact/hooks';
import { freshCells } from '../../app/commands/upkeep.ts';
import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import type { CellsDue } from '../../upkeep/due/batteries.ts';
import { cellsRound } from '../../upkeep/due/cells-round.ts';
import type { Device } from '../../upkeep/due/day-devices.ts';
import type { UpkeepNow } from '../../upkeep/due/day-due.ts';
import { useDatabase, useRun } from '../frame/context.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Section } from '../kit/section.tsx';
import { countOf } from '../words/chain.ts';
import { CellsChecklist } from './cells-checklist.tsx';
import { cellsWords } from './cells-words.ts';
import { DeviceRow } from './device-row.tsx';
import { TimeBarDrawing, TimeLegend } from './time-bar.tsx';
import { batteryBar, type TimeBar } from './time-bars.ts';
import { scaleOf, type TimeScale } from './time-scale.ts';
import { shortWords } from './words.ts';
import { wornWords } from './worn-words.ts';

interface CellsProps {
  readonly day: Day;
  readonly upkeep: UpkeepNow;
  readonly now: Moment;
  readonly onDevice: (id: string) => void;
}

/** Every device with cells: how long they last, and one tap for fresh ones. */
export function CellsSection({ day, upkeep, now, onDevice }: CellsProps) {
  const run = useRun();
  const own = useDatabase();
  const [checking, setChecking] = useState(false);
  const devices = upkeep.devices.filter(({ hasCells }) => hasCells);
  const unsaid = upkeep.withoutCells.length;
  const under =
    devices.length === 0
      ? 'no device with batteries yet'
      : unsaid > 0
        ? `${countOf(unsaid, 'device')} of ${devices.length}: not marked fresh`
        : countOf(devices.length, 'device');
  const scale = scaleOf(day, upkeep, now.atMs);
  const bars = new Map<string, TimeBar>(
    upkeep.cells.due.map((due: CellsDue) => [due.device, batteryBar(scale, due)]),
  );
  const all = (which: readonly Device[], words: string): boolean =>
    run(freshCells(which.map(({ id }) => id)), words);
  return (
    <Section name="Batteries" under={under}>
      {devices.length > 0 && (
        <div class="section buttons">
          {cellsRound(day, upkeep, now.atMs).length > 0 && (
            <Button onClick={() => setChecking(true)}>Checklist</Button>
          )}
          <Button onClick={() => all(devices, `Fresh batteries in all ${devices.length}`)}>
            Fresh batteries in all {devices.length}
          </Button>
          {unsaid > 0 && unsaid < devices.length && (
            <Button onClick={() => all(upkeep.withoutCells, `Fresh batteries in ${unsaid}`)}>
              Fresh in the other {unsaid === 1 ? 'one' : unsaid}
            </Button>
          )}
        </div>
      )}
      {devices.length > 0 && bars.size === 0 && (
        <p class="section soft">
          To see how long batteries last: tap Fresh when they go in, and tap a name to enter its battery life.
        </p>
      )}
      {bars.size > 0 && <TimeLegend scale={scale} zone={now.zone} bars={[...bars.values()]} end="flat" />}
      {bars.size > 0 && scale.marks.length === 0 && (
        <p class="section soft">Enter meal and wrap under Hours of the day to see what lasts until then.</p>
      )}
      <ul class="device-rows">
        {devices.map((device) => (
          <DeviceRow
            key={device.id}
            name={wornWords(day, device.id)}
            under={cellsWords(day, upkeep, device, now, own)}
            {...drawn(scale, bars.get(device.id))}
            onAbout={() => onDevice(device.id)}
            action={{
              word: 'Fresh',
              label: `Fresh batteries in ${device.name}`,
              onTap: () => all([device], `Fresh batteries in ${device.name}`),
            }}
          />
        ))}
      </ul>
      {checking && <CellsChecklist day={day} upkeep={upkeep} now={now} onClose={() => setChecking(false)} />}
      <Cautions of={['cells', 'lithium', 'air-travel']} />
    </Section>
  );
}

const drawn = (scale: TimeScale, bar: TimeBar | undefined) =>
  bar && {
    warn: bar.short && shortWords(bar.short, 'flat'),
    drawing: <TimeBarDrawing scale={scale} bar={bar} />,
  };
