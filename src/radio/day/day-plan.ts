import { answersNow } from '../../day/answers/answers.ts';
import { tunedTo, wornBy } from '../../day/chain/links.ts';
import type { Day, PartId, VoiceId } from '../../day/model.ts';
import { checkKhz } from '../../facts/kinds/frequency.ts';
import { TV_RASTERS, type TvRaster } from '../../facts/kinds/radio-planned.ts';
import { isOneOf } from '../../shared/open-word.ts';
import type { Problem, Result } from '../../shared/result.ts';
import { type Carrier, type Guards, type OccupiedBlock, SUGGESTED_GUARDS } from '../carrier.ts';
import { occupiedProblem, type RadioProblem } from '../check-input.ts';
import { analyse } from '../intermodulation/analyse.ts';
import type { Analysis } from '../intermodulation/analysis.ts';
import { recheck } from '../intermodulation/recheck.ts';
import { spacingOfGroup } from './day-ranges.ts';

/** A transmitter, or something else that radiates, from the day. */
export interface PlanCarrier {
  readonly id: string;
  readonly name: string;
  readonly type: 'pack' | 'other';
  readonly khz: number | null;
  readonly spacingKhz: number | undefined;
  readonly on: boolean;
  /** Receiver channels tuned to a pack. */
  readonly channels: readonly PartId[];
  /** Who wears a pack now. */
  readonly voice: VoiceId | null;
  /** Something of ours listens on it. */
  readonly heard: boolean;
  /** Why it is excluded although it has a frequency. */
  readonly problem: Problem | undefined;
}

/** The frequency plan of the day as it stands. */
export interface DayPlan {
  readonly all: readonly PlanCarrier[];
  /** The carriers that are analysed. */
  readonly carriers: readonly Carrier[];
  readonly guards: Guards;
  /** The local TV raster, if entered. */
  readonly raster: TvRaster | undefined;
  readonly occupied: readonly OccupiedBlock[];
}

/** The guards as set, or else as suggested. */
export function guardsOf({ upkeep: { guards } }: Day): Guards {
  return {
    carrierKhz: guards.carrierKhz ?? SUGGESTED_GUARDS.carrierKhz,
    twoToneThirdKhz: guards.twoToneThirdKhz ?? SUGGESTED_GUARDS.twoToneThirdKhz,
    threeToneThirdKhz: guards.threeToneThirdKhz ?? SUGGESTED_GUARDS.threeToneThirdKhz,
    twoToneFifthKhz: guards.twoToneFifthKhz ?? SUGGESTED_GUARDS.twoToneFifthKhz,
    tvEdgeKhz: guards.tvEdgeKhz ?? SUGGESTED_GUARDS.tvEdgeKhz,
  };
}

/**
 * The day's carriers now. A pack that is on transmits; it is received if a receiver channel is tuned to it. A
 * pack that is off but worn is still received, because its channel stays open. Everything else described
 * transmits, and is received if marked so.
 */
export function dayPlan(day: Day): DayPlan {
  const all = [...packsOf(day), ...othersOf(day)];
  return {
    all,
    carriers: all.filter(({ khz, problem }) => khz !== null && !problem).map(asCarrier),
    guards: guardsOf(day),
    raster: rasterOf(day),
    occupied: occupiedOf(day),
  };
}

/** The channels of an unknown raster cannot be listed. */
function rasterOf({ upkeep: { guards } }: Day): TvRaster | undefined {
  const { tvRaster } = guards;
  return tvRaster !== undefined && isOneOf(TV_RASTERS, tvRaster) ? tvRaster : undefined;
}

function packsOf(day: Day): PlanCarrier[] {
  const { links } = answersNow(day);
  const channelsOf = new Map<PartId, PartId[]>();
  for (const { id } of day.rig.channels) {
    const transmitter = tunedTo(links, id)?.value;
    if (transmitter) channelsOf.set(transmitter, [...(channelsOf.get(transmitter) ?? []), id]);
  }
  return day.rig.transmitters.map(({ id, name, khz = null }) => ({
    id,
    name,
    type: 'pack',
    khz,
    spacingKhz: spacingOfGroup(day, name),
    on: day.upkeep.on.get(id) ?? true,
    channels: channelsOf.get(id) ?? [],
    voice: wornBy(links, id)?.value ?? null,
    heard: channelsOf.has(id),
    problem: problemOf(khz),
  }));
}

const OTHER = 'other:';

/** The id of a carrier that is not a pack, kept apart from transmitter ids. */
export const otherId = (carrier: string): string => `${OTHER}${carrier}`;

function othersOf(day: Day): PlanCarrier[] {
  return [...day.upkeep.carriers]
    .filter(([, { struck }]) => !struck)
    .map(([id, { name, khz = null, spacingKhz, heard }]) => ({
      id: otherId(id),
      name: name || id,
      type: 'other',
      khz,
      spacingKhz: spacingKhz ?? undefined,
      on: true,
      channels: [],
      voice: null,
      heard: heard ?? false,
      problem: problemOf(khz),
    }));
}

function problemOf(khz: number | null): Problem | undefined {
  const checked = khz === null ? undefined : checkKhz(khz);
  return checked && !checked.ok ? checked.problem : undefined;
}

const asCarrier = ({ id, name, khz, spacingKhz, on, heard, voice }: PlanCarrier): Carrier => ({
  id,
  name,
  khz: khz!,
  ...(spacingKhz !== undefined && { spacingKhz }),
  transmitting: on,
  victim: heard && (on || voice !== null),
});

/** Ranges used by others, including unknown uses; invalid ones must not stop the plan. */
const occupiedOf = (day: Day): OccupiedBlock[] =>
  [...day.upkeep.bands].flatMap(([id, { use, struck, name, fromKhz, toKhz }]) =>
    use !== undefined && use !== 'tunable' && !struck && fromKhz && toKhz
      ? [{ name: name || id, fromKhz, toKhz }].filter((block) => !occupiedProblem([block]))
      : [],
  );

/** A plan and its analysis; if only one carrier changes, the next one builds on it. */
export interface Checked {
  readonly plan: DayPlan;
  readonly result: Result<Analysis, RadioProblem>;
}

/** Checks the plan of a day, building on the last check if possible. The result is the same without it. */
export function checkPlan(plan: DayPlan, last?: Checked): Checked {
  const options = { occupied: plan.occupied };
  const before = last?.result.ok ? last.result.value : undefined;
  const sameGround =
    before !== undefined &&
    same(before.guards, plan.guards) &&
    same(before.options.occupied, plan.occupied) &&
    before.carriers.length === plan.carriers.length;
  if (!sameGround) return { plan, result: analyse(plan.carriers, plan.guards, options) };
  const changed = plan.carriers.filter((carrier, at) => !same(carrier, before.carriers[at]));
  const [one] = changed;
  if (!one) return { plan, result: { ok: true, value: before } };
  const inPlace = before.carriers.findIndex(({ id }) => id === one.id) === plan.carriers.indexOf(one);
  const result =
    changed.length === 1 && inPlace ? recheck(before, one) : analyse(plan.carriers, plan.guards, options);
  return { plan, result };
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);
