import type { Day, PartId } from '../../day/model.ts';
import { rateNow, settingsNow } from '../../day/settings/settings.ts';
import { takenAtMs } from '../../day/taken-at.ts';
import { openTakes, takesInOrder } from '../../day/takes.ts';
import type { Problem, Result } from '../../shared/result.ts';
import { type Cells, type CellsPlan, planCells, type Shift, swapTimes } from './batteries.ts';
import { type CardLeft, cardLeft } from './card-left.ts';
import { cardsOf, type DayCard } from './day-cards.ts';
import { clockPpm, type Device, devicesOf, headPpm, RECORDER } from './day-devices.ts';
import { heardPpm, jamOf } from './day-jams.ts';
import { type DueList, dueList } from './due-list.ts';
import { type Jam, type JamPlan, planJams } from './jams.ts';

export interface CardState {
  readonly card: DayCard;
  readonly left: Result<CardLeft>;
}

/** Everything to watch besides the takes, at one moment. Devices and cards are given by id. */
export interface UpkeepNow {
  readonly devices: readonly Device[];
  readonly takeOpen: boolean;
  readonly cells: CellsPlan;
  /** Devices whose cells nobody has logged as fresh yet. */
  readonly withoutCells: readonly Device[];
  readonly jams: JamPlan;
  /** Devices with timecode that have not been jammed yet; the first recorder is the head of the chain. */
  readonly withoutJam: readonly Device[];
  readonly cards: readonly CardState[];
  readonly due: DueList;
}

/**
 * Cells, jams and cards of the day at `nowMs`, and what is due first. While a take is open nothing says
 * `now`. Example: a pack with fresh cells at 07:00 that last 5 h is due at 11:00 with the usual margin.
 */
export function upkeepAt(day: Day, nowMs: number): UpkeepNow {
  const devices = devicesOf(day);
  const takeOpen = openTakes(day).length > 0;
  const cells = cellsPlan(day, devices, { ...shiftOf(day), nowMs, takeOpen });
  const jams = jamPlan(day, devices, nowMs, takeOpen);
  const cards = cardsOf(day, nowMs).map((card) => ({ card, left: leftOn(day, card, nowMs, takeOpen) }));
  const filling = cards.flatMap(({ card, left }) => (left.ok && !card.out ? [left.value] : []));
  return {
    devices,
    takeOpen,
    cells,
    withoutCells: devices.filter(({ id, hasCells }) => hasCells && !day.upkeep.cells.has(id)),
    jams,
    withoutJam: devices.filter(
      ({ id, hasTimecode }) =>
        hasTimecode && id !== RECORDER && !day.upkeep.jams.some((jam) => jam.device === id),
    ),
    cards,
    due: inReadingOrder(dueList({ nowMs, cells, jams, cards: filling }), devices),
  };
}

export const dueCount = ({ due }: UpkeepNow): number =>
  due.items.filter(({ action }) => action !== 'later').length;

/** How long the cards in a recorder last, by the one that is full first; null if none is in or that is not known. */
export function hoursLeftIn({ cards }: UpkeepNow, recorder: PartId): number | null {
  const hours = cards.flatMap(({ card, left }) =>
    card.recorder === recorder && !card.out && left.ok ? [left.value.hoursLeft] : [],
  );
  return hours.length > 0 ? Math.min(...hours) : null;
}

/** The planned hours of the day. */
export function shiftOf(day: Day): Pick<Shift, 'mealAtMs' | 'wrapAtMs'> {
  const { mealAtMs, wrapAtMs } = day.upkeep.shift;
  return {
    ...(typeof mealAtMs === 'number' && { mealAtMs }),
    ...(typeof wrapAtMs === 'number' && { wrapAtMs }),
  };
}

/**
 * How many sets of cells a device needs until wrap, with swaps moved back to the meal break where possible;
 * none without a wrap.
 */
export function swapsToWrap(day: Day, device: Device): readonly number[] {
  const fresh = day.upkeep.cells.get(device.id);
  const runtimeHours = fresh?.runtimeHours ?? device.runtimeHours;
  const { mealAtMs, wrapAtMs } = shiftOf(day);
  if (!fresh || runtimeHours === undefined || wrapAtMs === undefined) return [];
  const pausesMs = mealAtMs === undefined ? [] : [mealAtMs];
  const swaps = swapTimes({ freshAtMs: fresh.atMs, runtimeHours, untilMs: wrapAtMs, pausesMs });
  return swaps.ok ? swaps.value : [];
}

function cellsPlan(day: Day, devices: readonly Device[], shift: Shift): CellsPlan {
  const cells = devices.flatMap((device): Cells[] => {
    const fresh = day.upkeep.cells.get(device.id);
    if (!device.hasCells || !fresh) return [];
    return [
      {
        device: device.id,
        freshAtMs: fresh.atMs,
        runtimeHours: fresh.runtimeHours ?? device.runtimeHours,
        basis: fresh.runtimeHours === undefined ? device.runtimeBasis : 'planned',
      },
    ];
  });
  const plan = planCells(cells, shift);
  return plan.ok ? plan.value : { due: [], unknown: [] };
}

/**
 * A source removed from the rig still passed its timecode on, so its jams and clock tolerance count. The
 * recorder is the reference; its own tolerance is added if entered.
 */
function jamPlan(day: Day, devices: readonly Device[], nowMs: number, takeOpen: boolean): JamPlan {
  const present = new Set(devices.map(({ id }) => id));
  const jams = day.upkeep.jams.map(
    (jam): Jam => ({ ...jamOf(jam), tolerancePpm: clockPpm(day, jam.device) ?? heardPpm(day, jam.device) }),
  );
  const rate = rateNow(day);
  if (!rate) {
    const jammed = [...new Set(jams.map(({ device }) => device))].filter((device) => present.has(device));
    const problem: Problem = { code: 'rate-unknown', timecodeRate: settingsNow(day).timecodeRate };
    return { due: [], unknown: jammed.map((device) => ({ device, problem })) };
  }
  const plan = planJams(jams, {
    nowMs,
    takeOpen,
    rate,
    headPpm: (device) => headPpm(day, device),
  });
  if (!plan.ok) return { due: [], unknown: [] };
  const isPresent = ({ device }: { readonly device: string }): boolean => present.has(device);
  return { due: plan.value.due.filter(isPresent), unknown: plan.value.unknown.filter(isPresent) };
}

function leftOn(day: Day, card: DayCard, nowMs: number, takeOpen: boolean): Result<CardLeft> {
  const { wrapAtMs } = shiftOf(day);
  const inSince = card.inAtMs === null ? callOf(day, nowMs) : Math.min(card.inAtMs, nowMs);
  return cardLeft(
    { ...card, card: card.id },
    { nowMs, takeOpen, callAtMs: inSince, ...(wrapAtMs !== undefined && { wrapAtMs }) },
  );
}

const LONGEST_DAY_MS = 48 * 3_600_000;

/** When recording could begin: the call, or else the first roll; never later than now. */
function callOf(day: Day, nowMs: number): number {
  const rolled = takesInOrder(day).map((take) => takenAtMs(day, take));
  const call = day.upkeep.shift.callAtMs ?? Math.min(nowMs, ...rolled);
  return Math.max(nowMs - LONGEST_DAY_MS, Math.min(call, nowMs));
}

/** Things due at the same moment are in rig order. */
function inReadingOrder(list: DueList, devices: readonly Device[]): DueList {
  const place = new Map(devices.map(({ id }, at) => [id, at]));
  const at = (name: string): number => place.get(name) ?? devices.length;
  const items = [...list.items].sort(
    (a, b) => (a.dueAtMs ?? Number.MAX_VALUE) - (b.dueAtMs ?? Number.MAX_VALUE) || at(a.name) - at(b.name),
  );
  return { ...list, items };
}
