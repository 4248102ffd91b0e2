import { describe, expect, test } from 'vitest';
import type { Draft } from '../../src/facts/fact.ts';
import { planCells, type Shift, swapTimes } from '../../src/upkeep/due/batteries.ts';
import { type Card, type CardDay, cardLeft } from '../../src/upkeep/due/card-left.ts';
import { worstPair } from '../../src/upkeep/due/day-apart.ts';
import { cardsOf, recordedOnMs } from '../../src/upkeep/due/day-cards.ts';
import { upkeepAt } from '../../src/upkeep/due/day-due.ts';
import { LEAST_PPM } from '../../src/upkeep/due/drift.ts';
import { type DueItem, dueGroups, dueList } from '../../src/upkeep/due/due-list.ts';
import { type Jam, type JamCheck, planJams } from '../../src/upkeep/due/jams.ts';
import { dateUserBits } from '../../src/upkeep/due/user-bits.ts';
import { actionAt, byName } from '../../src/upkeep/due-action.ts';
import { firstBadQuantity } from '../../src/upkeep/quantity.ts';
import { loadPoint } from '../../src/upkeep/wiring/constant-power.ts';
import { RUN_DEFAULTS, streamsOf } from '../../src/upkeep/wiring/day-runs.ts';
import { cartRun, fuseLimit } from '../../src/upkeep/wiring/direct-current.ts';
import { DATA_LIMIT_METRES, networkLead, powerClassOf } from '../../src/upkeep/wiring/ethernet-power.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { codeOf, unwrap } from './unwrap.ts';

// Where a figure just is, or just is not, on one side of a limit; to the ms, the byte or the last digit of the figure.

const HOUR = 3_600_000;

describe('cells', () => {
  // 5 h at 0.8 from 0: due after 4 h, empty after 5.
  const at = (nowMs: number, more: Partial<Shift> = {}, runtimeHours = 5) =>
    unwrap(
      planCells([{ device: 'A1', freshAtMs: 0, runtimeHours, basis: 'measured' }], {
        nowMs,
        takeOpen: false,
        ...more,
      }),
    ).due[0]!;

  test('are due at the very ms, and not the one before', () => {
    expect([at(4 * HOUR - 1).action, at(4 * HOUR).action]).toEqual(['later', 'now']);
    expect(actionAt(10, 10, true)).toBe('at-cut');
  });

  test('reach the meal with margin up to when due, without it up to when empty, and no further', () => {
    const reach = (mealAtMs: number) => at(0, { mealAtMs }).toMeal;
    expect([4 * HOUR, 4 * HOUR + 1, 5 * HOUR, 5 * HOUR + 1].map(reach)).toEqual([
      'lasts',
      'past-margin',
      'past-margin',
      'runs-out',
    ]);
    expect([4 * HOUR, 5 * HOUR + 1].map((wrapAtMs) => at(0, { wrapAtMs }).toWrap)).toEqual([
      'lasts',
      'runs-out',
    ]);
  });

  test('are held against a meal that is to come, and not against one that begins now', () => {
    expect(at(HOUR, { mealAtMs: HOUR + 1 })).toHaveProperty('toMeal');
    expect(at(HOUR, { mealAtMs: HOUR })).not.toHaveProperty('toMeal');
  });

  // 0.7 h at 0.8 are 2,016,000 ms, and 2015999.9999999998 as the machine multiplies; 4.1 h are 14759999.999999998.
  test('are due and empty at the nearest ms, however the hours multiply', () => {
    expect(at(0, {}, 0.7).dueAtMs).toBe(2_016_000);
    expect(at(0, {}, 4.1).emptyAtMs).toBe(14_760_000);
    expect(unwrap(swapTimes({ freshAtMs: 0, runtimeHours: 0.7, untilMs: 2_016_000 }))).toEqual([2_016_000]);
  });

  test('are empty on the list at the very ms', () => {
    const reason = (nowMs: number) =>
      dueList({ nowMs, cells: { due: [at(nowMs)], unknown: [] }, jams: { due: [], unknown: [] }, cards: [] })
        .items[0]!.reasons[0]!.code;
    expect([reason(5 * HOUR - 1), reason(5 * HOUR)]).toEqual(['cells-margin', 'cells-empty']);
  });
});

describe('swaps', () => {
  const swaps = (pausesMs: readonly number[], untilMs = 9 * HOUR) =>
    unwrap(swapTimes({ freshAtMs: 0, runtimeHours: 5, untilMs, pausesMs }));

  test('take a pause that comes exactly when they are due, and none that comes a ms later', () => {
    const due = 4 * HOUR;
    expect(swaps([due])).toEqual([due, 2 * due]);
    // With an earlier one beside it: the cells would go out an hour too soon.
    expect(swaps([3 * HOUR, due])).toEqual([due, 2 * due]);
    expect(swaps([3 * HOUR, due + 1])[0]).toBe(3 * HOUR);
    expect(swaps([due - 1])[0]).toBe(due - 1);
    expect(swaps([due + 1])[0]).toBe(due);
  });

  test('take no pause in which the cells went in', () => {
    expect(swaps([0])).toEqual([4 * HOUR, 8 * HOUR]);
    expect(swaps([3 * HOUR])).toEqual([3 * HOUR, 7 * HOUR]);
  });

  test('take the last of several pauses', () => {
    expect(swaps([HOUR, 3 * HOUR, 2 * HOUR])[0]).toBe(3 * HOUR);
  });

  test('count one that is due exactly at the end, for up to two days', () => {
    expect(swaps([], 4 * HOUR)).toEqual([4 * HOUR]);
    expect(swaps([], 4 * HOUR - 1)).toEqual([]);
    expect(swaps([], 48 * HOUR)).toHaveLength(12);
    expect(codeOf(swapTimes({ freshAtMs: 0, runtimeHours: 5, untilMs: 48 * HOUR + 1 }))).toBe(
      'quantity-out-of-range',
    );
  });
});

describe('a card', () => {
  // One track at 48 kHz and 24 bits: 144 bytes a ms, 145.44 with headers.
  const card: Card = {
    card: 'CF 1',
    capacityBytes: 1e9,
    usedBytes: 0,
    format: { tracks: 1, sampleRate: 48_000, bits: 24 },
    recordedMs: 0,
  };
  const day: CardDay = { nowMs: 6 * HOUR, callAtMs: 0, takeOpen: false };
  const left = (more: Partial<Card>, dayMore: Partial<CardDay> = {}) =>
    unwrap(cardLeft({ ...card, ...more }, { ...day, ...dayMore }));
  const BYTES_AN_HOUR = 145.44 * HOUR;

  test('has whole bytes left, rounded down: a part of one holds nothing', () => {
    // 1000 - 145.44 = 854.56, and 1000 - 5 × 145.44 = 272.80
    expect(left({ capacityBytes: 1000, recordedMs: 1 }).bytesLeft).toBe(854);
    expect(left({ capacityBytes: 1000, recordedMs: 5 }).bytesLeft).toBe(272);
    expect(left({ capacityBytes: 1000, usedBytes: 1000 }).bytesLeft).toBe(0);
  });

  test('is changed once the reserve is all that is left, to the byte', () => {
    const reserveHours = 0.5;
    const bytes = BYTES_AN_HOUR / 2;
    expect(left({ capacityBytes: bytes }, { reserveHours })).toMatchObject({
      hoursLeft: 0.5,
      action: 'now',
      dueAtMs: day.nowMs,
      fullAtMs: day.nowMs + HOUR / 2,
    });
    const more = left({ capacityBytes: bytes + 1 }, { reserveHours });
    expect(more.action).toBe('later');
    expect(more).not.toHaveProperty('dueAtMs');
  });

  // 1000 bytes are 6.8756… ms of sound, 1090 are 7.4945… and 1100 7.5632…
  test('is full at the nearest ms', () => {
    const full = (capacityBytes: number) => left({ capacityBytes }).fullAtMs! - day.nowMs;
    expect([1000, 1090, 1100].map(full)).toEqual([7, 7, 8]);
    // Half of the day recorded: the 500 ms of sound above the reserve fill in 1000 ms.
    const atPace = left(
      { capacityBytes: Math.ceil(BYTES_AN_HOUR * 3.5 + 145.44 * 500.3), recordedMs: 3 * HOUR },
      { reserveHours: 0.5 },
    );
    expect(atPace.pace).toBe(0.5);
    expect(atPace.dueAtMs! - day.nowMs).toBe(1001);
    expect(atPace.fullAtMs! - day.nowMs).toBe(HOUR + 1001);
  });

  test('is foreseen from a second an hour on, and not for less', () => {
    const foreseen = (recordedMs: number) =>
      left({ capacityBytes: BYTES_AN_HOUR, recordedMs }, { reserveHours: 0 }).fullAtMs !== undefined;
    expect([6000, 5999].map(foreseen)).toEqual([true, false]);
  });

  test('is foreseen for a leap year, and no further', () => {
    // Recorded all the time: 366 days of sound are left.
    const foreseen = (bytes: number) =>
      left({ capacityBytes: BYTES_AN_HOUR * (366 * 24 + 6) + bytes, recordedMs: 6 * HOUR }).fullAtMs !==
      undefined;
    expect([-1, 0, 1].map(foreseen)).toEqual([true, true, false]);
  });

  test('has a pace of one at most, also where more was recorded than the day is long', () => {
    expect(left({ recordedMs: 7 * HOUR }).pace).toBe(1);
    expect(left({ recordedMs: 2 }, { callAtMs: day.nowMs }).pace).toBe(1);
    expect(left({ recordedMs: 0 }, { callAtMs: day.nowMs }).pace).toBe(0);
  });

  test('lasts to a wrap that it reaches to the ms, and says nothing of one that is now', () => {
    const room = { capacityBytes: BYTES_AN_HOUR * 2 };
    const lasts = (wrapAtMs: number) => left(room, { wrapAtMs, reserveHours: 0.5 }).lastsToWrap;
    expect(lasts(day.nowMs + 1.5 * HOUR)).toBe(true);
    expect(lasts(day.nowMs + 1.5 * HOUR + 1)).toBeUndefined();
    expect(lasts(day.nowMs)).toBeUndefined();
    expect(lasts(day.nowMs + 1)).toBe(true);
  });

  test('lasts to a wrap at the pace of the day, to the ms', () => {
    const half = { capacityBytes: BYTES_AN_HOUR * 5, recordedMs: 3 * HOUR };
    const { dueAtMs } = left(half, { reserveHours: 0.5 });
    expect(dueAtMs).toBe(day.nowMs + 3 * HOUR);
    const lasts = (wrapAtMs: number) => left(half, { wrapAtMs, reserveHours: 0.5 }).lastsToWrap;
    expect([lasts(dueAtMs!), lasts(dueAtMs! + 1)]).toEqual([true, false]);
  });
});

describe('a card of a day', () => {
  const rolled = (rolledAt: number): Draft =>
    take('24', 0, 1, { rolledAt, length: { frames: 25, rate: '25' } });

  test('holds a take that rolled as it went in, and not one that rolled as it came out', () => {
    const phone = speaker();
    phone.say(rolled(MORNING));
    const on = (inAtMs: number | null, outAtMs: number | null) =>
      recordedOnMs(phone.day(), inAtMs, outAtMs, MORNING + HOUR);
    expect([on(MORNING, null), on(MORNING + 1, null)]).toEqual([1000, 0]);
    expect([on(null, MORNING), on(null, MORNING + 1)]).toEqual([0, 1000]);
  });

  test('is out from the ms on at which it came out', () => {
    const phone = speaker();
    phone.say({ kind: 'card-described', card: 'k', fields: { bytes: 10, usedBytes: 20, outAtMs: MORNING } });
    const at = (nowMs: number) => cardsOf(phone.day(), nowMs)[0]!;
    expect([at(MORNING - 1).out, at(MORNING).out]).toEqual([false, true]);
    expect(at(MORNING).usedBytes).toBe(10);
  });

  test('has nothing of a take that rolls by a clock ahead of now', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1, { rolledAt: MORNING + 1000, length: null }));
    expect(recordedOnMs(phone.day(), null, null, MORNING)).toBe(0);
    expect(recordedOnMs(phone.day(), null, null, MORNING + 1001)).toBe(1);
  });

  test('has its pace from when it went in, never from later than now nor from two days ago', () => {
    const phone = speaker();
    const size = { bytes: 64e9, usedBytes: 0 };
    phone.say(
      { kind: 'card-described', card: 'early', fields: { ...size, inAtMs: MORNING } },
      { kind: 'card-described', card: 'ahead', fields: { ...size, inAtMs: MORNING + 9 * HOUR } },
      { kind: 'card-described', card: 'all day', fields: size },
      { kind: 'shift-planned', shift: { callAtMs: MORNING - 100 * HOUR } },
      take('24', 0, 1, { rolledAt: MORNING, length: { frames: 25 * 3600, rate: '25' } }),
    );
    const paces = upkeepAt(phone.day(), MORNING + 4 * HOUR).cards.map(({ left }) => unwrap(left).pace);
    expect(paces).toEqual([1 / 4, 0, 1 / 48]);
    phone.say({ kind: 'shift-planned', shift: { callAtMs: MORNING + 99 * HOUR } });
    expect(upkeepAt(phone.day(), MORNING + 4 * HOUR).cards.map(({ left }) => left.ok)).toEqual([
      true,
      true,
      true,
    ]);
  });
});

describe('lines of the due list', () => {
  const item = (more: Partial<DueItem>): DueItem => ({
    kind: 'cells',
    name: 'A1',
    dueAtMs: 60_000,
    action: 'later',
    reasons: [{ code: 'runtime-only-planned' }],
    ...more,
  });
  const grouped = (...more: Partial<DueItem>[]) => dueGroups(more.map(item)).map(({ names }) => names.length);

  test('are one within a minute of the clock, to its last ms', () => {
    expect(grouped({ dueAtMs: 60_000 }, { dueAtMs: 119_999 })).toEqual([2]);
    expect(grouped({ dueAtMs: 60_000 }, { dueAtMs: 120_000 })).toEqual([1, 1]);
    expect(grouped({ dueAtMs: 59_999 }, { dueAtMs: 60_000 })).toEqual([1, 1]);
  });

  test('are not one where kind, action or a reason differs, nor ever for cards', () => {
    expect(grouped({}, { kind: 'jam' })).toEqual([1, 1]);
    expect(grouped({}, { action: 'now' })).toEqual([1, 1]);
    expect(grouped({}, { reasons: [] })).toEqual([1, 1]);
    expect(grouped({ kind: 'card' }, { kind: 'card' })).toEqual([1, 1]);
  });

  test('are one of neighbours alone, and the order stays', () => {
    expect(grouped({}, {}, { action: 'now' }, {})).toEqual([2, 1, 1]);
    const noMoment: DueItem = { kind: 'jam', name: 'A1', action: 'later', reasons: [] };
    expect(dueGroups([noMoment, { ...noMoment, name: 'A2' }]).map(({ names }) => names)).toEqual([
      ['A1', 'A2'],
    ]);
    expect(grouped({ dueAtMs: 0 }, {})).toEqual([1, 1]);
  });
});

describe('jams', () => {
  const jam = (more: Partial<Jam> = {}): Jam => ({
    device: 's',
    from: 'recorder',
    atMs: 0,
    tolerancePpm: 5,
    ...more,
  });
  const plan = (jams: readonly Jam[], more: Partial<JamCheck> = {}) =>
    unwrap(planJams(jams, { nowMs: HOUR, takeOpen: false, rate: '25', ...more }));

  test('of this very ms count, and a ms later they are later than now', () => {
    expect(plan([jam({ atMs: HOUR })]).due).toHaveLength(1);
    expect(plan([jam({ atMs: HOUR + 1 })]).unknown[0]?.problem.code).toBe('jam-after-now');
  });

  test('said twice for one ms count as said last', () => {
    const twice = [jam({ from: 'box' }), jam({ from: 'slate' })];
    expect(plan(twice).due.map(({ from }) => from)).toEqual(['slate']);
  });

  test('from a device that was jammed at the same ms hand down nothing', () => {
    const at = (atMs: number) =>
      plan([jam({ device: 'box', atMs: 1000 }), jam({ from: 'box', atMs })], { nowMs: 1001 }).due.find(
        ({ device }) => device === 's',
      )!;
    expect(at(1000).driftMs).toBeCloseTo(5e-6, 12);
    expect(at(1001).driftMs).toBeCloseTo(5e-6, 12);
  });

  // A frame of 40 ms at 3 ppm: 13,333,333.33 ms. A hundredth of one at 0.6 ppm: 666,666.67.
  test('are due at the nearest ms, and at once where the source had drifted by all there is', () => {
    expect(plan([jam({ tolerancePpm: 3 })]).due[0]!.dueAtMs).toBe(13_333_333);
    expect(plan([jam({ tolerancePpm: 0.6 })], { limitFrames: 0.01 }).due[0]!.dueAtMs).toBe(666_667);
    const late = plan([jam({ device: 'box', tolerancePpm: 10_000 }), jam({ from: 'box', atMs: HOUR - 1 })]);
    expect(late.due.find(({ device }) => device === 's')!.dueAtMs).toBe(HOUR - 1);
  });

  test('drift from a millionth of a ppm on', () => {
    expect(plan([jam({ tolerancePpm: LEAST_PPM })]).due[0]).toHaveProperty('dueAtMs');
    expect(plan([jam({ tolerancePpm: LEAST_PPM / 2 })]).due[0]).not.toHaveProperty('dueAtMs');
  });

  // 36 ms an hour at 10,000 ppm: 4000 ms of it are the 40 ms of a frame.
  test('of a steady device are due at once where what it was jammed from had drifted by a frame', () => {
    const steady = (atMs: number) =>
      plan([
        jam({ device: 'box', tolerancePpm: 10_000 }),
        jam({ from: 'box', atMs, tolerancePpm: 0 }),
      ]).due.find(({ device }) => device === 's')!;
    expect(steady(4000).dueAtMs).toBe(4000);
    expect(steady(3999)).not.toHaveProperty('dueAtMs');
  });

  const devices = (...ids: string[]): Draft[] =>
    ids.map((id) => ({
      kind: 'devices-described',
      devices: [id],
      fields: { name: id, ppm: 5, hasTimecode: true },
    }));
  const jammed = (ids: string[], atMs: number): Draft => ({
    kind: 'devices-jammed',
    devices: ids,
    from: 'recorder',
    atMs,
  });

  test('of this very ms are in the worst pair, the later of two said for one device', () => {
    const phone = speaker();
    phone.say(...devices('a', 'b', 'c'), jammed(['a', 'b'], MORNING), jammed(['a', 'c'], MORNING + HOUR));
    expect(worstPair(phone.day(), MORNING + HOUR)?.devices).toEqual(['a', 'b']);
    expect(worstPair(phone.day(), MORNING + HOUR)?.frames).toBeCloseTo(0.45, 10);
    expect(worstPair(phone.day(), MORNING)?.frames).toBe(0);
  });

  test('said twice for one ms are compared as said last', () => {
    const phone = speaker();
    phone.say(...devices('a', 'b', 'c'), jammed(['a', 'b'], MORNING));
    phone.say({ kind: 'devices-jammed', devices: ['a'], from: 'c', atMs: MORNING });
    expect(worstPair(phone.day(), MORNING + HOUR)).toBeUndefined();
  });

  test('of three that may differ as much name the first two', () => {
    const phone = speaker();
    phone.say(...devices('a', 'b', 'c'), jammed(['a', 'b', 'c'], MORNING));
    expect(worstPair(phone.day(), MORNING + HOUR)?.devices).toEqual(['a', 'b']);
  });

  test('of one source are compared, and of another not', () => {
    const phone = speaker();
    phone.say(...devices('a', 'b', 'c'), jammed(['a', 'b'], MORNING));
    phone.say({ kind: 'devices-jammed', devices: ['c'], from: 'a', atMs: MORNING - 9 * HOUR });
    expect(worstPair(phone.day(), MORNING + HOUR)?.devices).toEqual(['a', 'b']);
  });
});

describe('power', () => {
  // 12 V through 0.6 ohms carry 12² / (4 · 0.6) = 60 W at 6 V and 10 A, and no more.
  test('reaches the most a lead can carry, at half its volts', () => {
    expect(unwrap(loadPoint(12, 0.6, 60))).toEqual({ loadVolts: 6, amps: 10, lossWatts: 60 });
    expect(codeOf(loadPoint(12, 0.6, 60.001))).toBe('load-beyond-lead');
  });

  // AWG 12, 10 m: 0.1042 ohms there and back. 6 A over 12 A · 0.1042 …: 12 V fall to 0 at 115.16 A.
  test('by constant current ends where the lead takes all the volts', () => {
    const lead = { volts: 0.1042 * 50, awg: 12, metres: 10 };
    expect(codeOf(cartRun({ ...lead, load: { amps: 50 } }))).toBe('current-beyond-lead');
    expect(codeOf(cartRun({ ...lead, load: { amps: 49.999 } }))).toBe('none');
  });

  test('drops three parts in a hundred without a word, and says so above', () => {
    // AWG 12, 10 m have 0.1042 ohms: 0.375 V, 3 % of 12.5 V, are dropped at 3.5988 A.
    const cautions = (amps: number) =>
      unwrap(cartRun({ volts: 12.5, awg: 12, metres: 10, load: { amps } })).cautions;
    expect(cautions(0.375 / 0.1042)).toEqual([]);
    expect(cautions(0.3751 / 0.1042)).toEqual(['drop-above-aim']);
  });

  test('is enough at the least volts of the device, to the digit', () => {
    const run = { volts: 13, awg: 12, metres: 3, load: { amps: 5 } };
    const { loadVolts } = unwrap(cartRun(run));
    const cautions = (deviceMinVolts: number) => unwrap(cartRun({ ...run, deviceMinVolts })).cautions;
    expect(cautions(loadVolts)).toEqual([]);
    expect(cautions(loadVolts + 1e-9)).toEqual(['below-device-minimum']);
  });

  test('stays within the low end of the cord ratings up to the very ampere', () => {
    const cautions = (amps: number) =>
      unwrap(cartRun({ volts: 24, awg: 18, metres: 1, load: { amps } })).cautions;
    expect(cautions(7)).toEqual([]);
    expect(cautions(7.001)).toEqual(['above-cord-rating']);
  });

  test('is limited by the wire where connector or device are no weaker', () => {
    expect(unwrap(fuseLimit({ awg: 18, connectorAmps: 7, deviceAmps: 7 })).limitedBy).toBe('wire');
    expect(unwrap(fuseLimit({ awg: 18, connectorAmps: 6, deviceAmps: 6 })).limitedBy).toBe('connector');
  });

  // TIA-568, ISO/IEC 11801: a channel of 100 m.
  test('on a network lead is in reach of data at 100 m, and not a step further', () => {
    const broken = (metres: number) =>
      unwrap(networkLead({ powerClass: 1, cable: 'awg-22', metres, connectorOhms: 0 })).broken;
    expect(broken(DATA_LIMIT_METRES)).toEqual([]);
    expect(broken(DATA_LIMIT_METRES + 0.001)).toEqual(['data-length']);
  });

  test('breaks every limit at 0 m that the connectors alone pass', () => {
    const { limits } = unwrap(
      networkLead({ powerClass: 4, cable: 'awg-23', metres: 1, connectorOhms: 20, deviceWatts: 25.5 }),
    );
    expect(limits.filter(({ metres }) => metres === 0).map(({ limit }) => limit)).toContain(
      'loop-resistance',
    );
    expect(limits.every(({ metres }) => metres >= 0)).toBe(true);
  });

  // IEEE 802.3 clause 145: classes 5 to 8 are fed by all four pairs.
  test('goes by two pairs up to class 4 and by four from class 5 on', () => {
    expect([4, 5].map((id) => unwrap(powerClassOf(id)).pairs)).toEqual([2, 4]);
  });
});

describe('sound on a network lead', () => {
  const run = { ...RUN_DEFAULTS, id: 'r', type: 'network' as const, name: 'box' };
  const sizes = (channels: number) =>
    streamsOf(speaker().day(), { ...run, channels }).map((one) => one.channels);

  test('goes in whole streams, with one for a rest and none for no rest', () => {
    expect([0, 7, 8, 9, 16].map(sizes)).toEqual([[], [7], [8], [8, 1], [8, 8]]);
  });
});

test('names are in plain order, and one is in no order with itself', () => {
  expect([byName('A1', 'A2'), byName('A2', 'A1'), byName('A1', 'A1')]).toEqual([-1, 1, 0]);
});

test('a quantity may be as little and as much as its ends, and no less or more', () => {
  const fine = (value: number) => firstBadQuantity([{ field: 'x', value, min: 1, max: 2 }]) === undefined;
  expect([0.999, 1, 2, 2.001].map(fine)).toEqual([false, true, true, false]);
});

describe('a date in user bits', () => {
  const isDate = (year: number, month: number, day: number) =>
    codeOf(dateUserBits({ year, month, day })) === 'none';

  test('may be the first and the last of a month and of the year', () => {
    expect([isDate(0, 1, 1), isDate(2026, 1, 31), isDate(2026, 12, 31), isDate(2026, 4, 30)]).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  test('may be no day past either', () => {
    const none = [
      [-1, 1, 1],
      [2026, 0, 1],
      [2026, 13, 1],
      [2026, 1, 0],
      [2026, 1, 32],
      [2026, 4, 31],
    ] as const;
    expect(none.map(([year, month, day]) => isDate(year, month, day))).toEqual(none.map(() => false));
  });

  // The Gregorian rule: every fourth year, but of the hundreds only every fourth.
  test('has a 29th of February in leap years alone', () => {
    expect([2024, 2026, 2000, 1900].map((year) => isDate(year, 2, 29))).toEqual([true, false, true, false]);
  });
});
