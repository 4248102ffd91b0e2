import { jamDevices } from '../../app/commands/upkeep.ts';
import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import { rateNow, settingsNow } from '../../day/settings/settings.ts';
import { worstPair } from '../../upkeep/due/day-apart.ts';
import { type Device, RECORDER } from '../../upkeep/due/day-devices.ts';
import type { UpkeepNow } from '../../upkeep/due/day-due.ts';
import { type LastHeard, lastHeard } from '../../upkeep/due/day-jams.ts';
import { frameMs, labelsBehindClock } from '../../upkeep/due/drift.ts';
import { useRun } from '../frame/context.ts';
import { Cautions } from '../frame/prep/caution-notes.tsx';
import { Button } from '../kit/button.tsx';
import { Section } from '../kit/section.tsx';
import { countOf } from '../words/chain.ts';
import { deviceName } from '../words/prep-facts.ts';
import { sentenceFor } from '../words/problems.ts';
import { rateWords } from '../words/recording.ts';
import { driftWords, keptOffsetWords } from './compare-words.ts';
import { DeviceRow } from './device-row.tsx';
import { TimeBarDrawing, TimeLegend } from './time-bar.tsx';
import { jamBar, type TimeBar } from './time-bars.ts';
import { scaleOf, type TimeScale } from './time-scale.ts';
import { UserBits } from './user-bits-list.tsx';
import { clockOf, figureWords, framesWords } from './words.ts';

interface TimecodeProps {
  readonly day: Day;
  readonly upkeep: UpkeepNow;
  readonly now: Moment;
  readonly onDevice: (id: string) => void;
  readonly onCompare: () => void;
}

/** Which device was jammed when and from what, how far it may have drifted, and one tap for a jam. */
export function TimecodeSection({ day, upkeep, now, onDevice, onCompare }: TimecodeProps) {
  const run = useRun();
  const devices = upkeep.devices.filter(({ id, hasTimecode }) => hasTimecode && id !== RECORDER);
  const rate = rateNow(day);
  const rateWord = rateWords(settingsNow(day).timecodeRate);
  const apart = worstPair(day, now.atMs);
  const scale = scaleOf(day, upkeep, now.atMs);
  const bars = new Map(upkeep.jams.due.map((due) => [due.device, jamBar(scale, due)]));
  const shown = [...bars.values()].filter((bar) => bar !== undefined);
  const jam = (ids: readonly string[], words: string): boolean => run(jamDevices(ids), words);
  return (
    <Section
      name="Timecode"
      under={
        devices.length === 0
          ? `${rateWord}; no slate, box or camera added yet`
          : `${rateWord} · ${countOf(devices.length, 'device')}${upkeep.withoutJam.length > 0 ? `, ${upkeep.withoutJam.length} never jammed` : ''}`
      }
    >
      {devices.length > 0 && (
        <div class="section buttons">
          {devices.length > 1 && (
            <Button
              onClick={() =>
                jam(
                  devices.map(({ id }) => id),
                  `All ${devices.length} jammed`,
                )
              }
            >
              Jam all {devices.length} from {deviceName(day, RECORDER)}
            </Button>
          )}
          <Button onClick={onCompare}>Compare by ear</Button>
        </div>
      )}
      {shown.length > 0 && <TimeLegend scale={scale} zone={now.zone} bars={shown} end="off" />}
      <ul class="device-rows">
        {devices.map((device) => (
          <DeviceRow
            key={device.id}
            name={device.name}
            under={jamWords(day, upkeep, device, now)}
            drawing={drawn(scale, bars.get(device.id))}
            onAbout={() => onDevice(device.id)}
            action={{
              word: 'Jam',
              label: `Jam ${device.name}`,
              onTap: () => jam([device.id], `${device.name} jammed from ${deviceName(day, RECORDER)}`),
            }}
          />
        ))}
        <DeviceRow
          name={deviceName(day, RECORDER)}
          under={`${tolerance(upkeep.devices.find(({ id }) => id === RECORDER))}; everything is jammed from it`}
          onAbout={() => onDevice(RECORDER)}
        />
      </ul>
      <div class="section">
        <dl class="figures">
          {apart && (
            <>
              <dt>Furthest apart</dt>
              <dd>
                {apart.devices.map((id) => deviceName(day, id)).join(' and ')}: {framesWords(apart.frames)}
              </dd>
            </>
          )}
          {rate && (
            <>
              <dt>Timecode and the wall clock</dt>
              <dd>{behindWords(labelsBehindClock(rate).hourMs)}</dd>
            </>
          )}
        </dl>
        <UserBits date={day.header.date} />
      </div>
      <Cautions of={['drift']} />
    </Section>
  );
}

const drawn = (scale: TimeScale, bar: TimeBar | undefined) =>
  bar && <TimeBarDrawing scale={scale} bar={bar} />;

const tolerance = (device: Device | undefined): string =>
  device?.ppm === undefined ? 'tolerance not set' : `${figureWords(device.ppm, 3)} ppm`;

function jamWords(day: Day, upkeep: UpkeepNow, device: Device, now: Moment): string {
  const clock = (ms: number): string => clockOf(ms, now.zone, now.atMs);
  const rate = rateNow(day);
  const compared = rate && lastHeard(day, device.id, rate);
  if (rate && compared) return comparedWords(day, compared, frameMs(rate), device, clock);
  const due = upkeep.jams.due.find((one) => one.device === device.id);
  if (due) {
    const again = due.dueAtMs === undefined ? 'never due' : `due ${clock(due.dueAtMs)}`;
    const from = deviceName(day, due.from);
    return `${framesWords(due.driftFrames)} at worst, ${tolerance(device)} · jammed ${clock(due.jammedAtMs)} from ${from} · ${again}`;
  }
  const last = day.upkeep.jams.findLast((jam) => jam.device === device.id);
  if (!last) return `${tolerance(device)}; not jammed yet`;
  const why = upkeep.jams.unknown.find((one) => one.device === device.id);
  return `jammed ${clock(last.atMs)} from ${deviceName(day, last.from)} · ${why ? sentenceFor(why.problem) : tolerance(device)}`;
}

function comparedWords(
  day: Day,
  heard: LastHeard,
  aFrameMs: number,
  device: Device,
  clock: (ms: number) => string,
): string {
  const drift = driftWords(heard, clock) || tolerance(device);
  return `${keptOffsetWords(heard, aFrameMs)} · compared ${clock(heard.atMs)} with ${deviceName(day, heard.from)} · ${drift}`;
}

/** How far timecode falls behind the time of day at a rate. */
function behindWords(hourMs: number): string {
  if (Math.abs(hourMs) < 0.5) return 'run together';
  const seconds = figureWords(Math.abs(hourMs) / 1000, 4);
  return `${seconds} s ${hourMs > 0 ? 'behind' : 'ahead'} each hour`;
}
