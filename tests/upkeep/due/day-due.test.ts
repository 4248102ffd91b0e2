import { describe, expect, test } from 'vitest';
import type { Day } from '../../../src/day/model.ts';
import { dayTotals } from '../../../src/day/wrap/day-totals.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { parseTimecode } from '../../../src/time/timecode.ts';
import { worstPair } from '../../../src/upkeep/due/day-apart.ts';
import { cardsOf, formatOf, formatOfAFile, recordedOnMs } from '../../../src/upkeep/due/day-cards.ts';
import { devicesOf } from '../../../src/upkeep/due/day-devices.ts';
import { dueCount, swapsToWrap, upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { dueGroups } from '../../../src/upkeep/due/due-list.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { numbersIn, unwrap } from '../unwrap.ts';

const HOUR = 3_600_000;
const PACKS = ['A1', 'A2', 'A3'];

function rigged(...more: Draft[]) {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...more);
  return phone;
}

const fresh = (devices: string[], hours: number): Draft => ({
  kind: 'cells-changed',
  devices,
  atMs: MORNING + hours * HOUR,
});
const runs = (devices: string[], runtimeHours: number): Draft => ({
  kind: 'devices-described',
  devices,
  fields: { runtimeHours, runtimeBasis: 'measured' },
});
const rolling = (atMs: number): Draft => take('24', 2, 1, { length: null, rolledAt: atMs });

describe('cells of the day', () => {
  // Runtime 5 h, factor 0.8, fresh at 07:00: due at 11:00 (common practice, no source).
  const phone = rigged(runs(PACKS, 5), fresh(['A1', 'A2'], 0));

  test('are due with the usual margin, packs in the order of the rig', () => {
    const { due } = upkeepAt(phone.day(), MORNING + HOUR);
    expect(due.items.map(({ name, dueAtMs, action }) => [name, dueAtMs, action])).toEqual([
      ['A1', MORNING + 4 * HOUR, 'later'],
      ['A2', MORNING + 4 * HOUR, 'later'],
    ]);
  });

  test('of packs nobody spoke of are listed as unsaid, not as due', () => {
    expect(upkeepAt(phone.day(), MORNING).withoutCells.map(({ id }) => id)).toEqual(['A3']);
  });

  test('without a runtime are unknown with the reason', () => {
    const other = rigged(fresh(['A3'], 0));
    expect(upkeepAt(other.day(), MORNING).cells.unknown).toEqual([
      { device: 'A3', problem: { code: 'no-runtime', device: 'A3' } },
    ]);
  });

  test('a runtime said with the cells goes before the one of the device', () => {
    const other = rigged(runs(['A1'], 5), {
      kind: 'cells-changed',
      devices: ['A1'],
      atMs: MORNING,
      runtimeHours: 10,
    });
    expect(upkeepAt(other.day(), MORNING).cells.due[0]?.dueAtMs).toBe(MORNING + 8 * HOUR);
  });

  test('are never to be swapped during an open take', () => {
    const other = rigged(runs(PACKS, 5), fresh(PACKS, 0));
    const at = MORNING + 6 * HOUR;
    expect(upkeepAt(other.day(), at).due.items.map(({ action }) => action)).toEqual(['now', 'now', 'now']);
    other.say(rolling(at - 60_000));
    const open = upkeepAt(other.day(), at);
    expect(open.takeOpen).toBe(true);
    expect(open.due.items.map(({ action }) => action)).toEqual(['at-cut', 'at-cut', 'at-cut']);
    expect(dueCount(open)).toBe(3);
    // Logged by hand behind it, another take does not end it.
    other.say(take('23', 3, 1));
    expect(upkeepAt(other.day(), at).takeOpen).toBe(true);
  });

  test('are held against the meal break and wrap once those are said', () => {
    const other = rigged(runs(['A1'], 5), fresh(['A1'], 0), {
      kind: 'shift-planned',
      shift: { mealAtMs: MORNING + 6 * HOUR, wrapAtMs: MORNING + 12 * HOUR },
    });
    const [item] = upkeepAt(other.day(), MORNING + HOUR).due.items;
    expect(item?.reasons.map(({ code }) => code)).toEqual([
      'cells-margin',
      'cells-not-to-meal',
      'cells-not-to-wrap',
    ]);
    // Due 11:00, 15:00, 19:00; the meal at 13:00 is the last pause before the second.
    const device = devicesOf(other.day()).find(({ id }) => id === 'A1')!;
    expect(swapsToWrap(other.day(), device)).toEqual([4, 6, 10].map((hours) => MORNING + hours * HOUR));
    expect(swapsToWrap(rigged(fresh(['A1'], 0)).day(), device)).toEqual([]);
  });

  test('a pack taken out of the rig is followed no longer', () => {
    const other = rigged(runs(PACKS, 5), fresh(PACKS, 0));
    other.say({ kind: 'part-described', part: 'A2', fields: { struck: true } });
    expect(upkeepAt(other.day(), MORNING).due.items.map(({ name }) => name)).toEqual(['A1', 'A3']);
  });
});

test('packs fresh together with one runtime are one line of the due list', () => {
  const phone = rigged(runs(['A1', 'A2'], 5), runs(['A3'], 7), fresh(PACKS, 0));
  const { items } = upkeepAt(phone.day(), MORNING).due;
  expect(dueGroups(items).map(({ names }) => names)).toEqual([['A1', 'A2'], ['A3']]);
  expect(dueGroups([])).toEqual([]);
});

describe('timecode of the day', () => {
  const slate = (id: string, ppm: number | null): Draft => ({
    kind: 'devices-described',
    devices: [id],
    fields: { name: id, ppm, hasTimecode: true, hasCells: false },
  });
  const jam = (devices: string[], hours: number, from = 'recorder'): Draft => ({
    kind: 'devices-jammed',
    devices,
    from,
    atMs: MORNING + hours * HOUR,
  });

  // 1 ppm for an hour at 25 is 0.09 frames.
  test('drifts at the rate of the day, and is due again before one frame', () => {
    const phone = rigged(slate('s1', 1), jam(['s1'], 0));
    const [one] = upkeepAt(phone.day(), MORNING + HOUR).jams.due;
    expect(one?.driftFrames).toBeCloseTo(0.09, 10);
    expect(one?.dueAtMs).toBe(MORNING + Math.round((40 / 1) * 1e6));
    phone.say({ kind: 'day-described', fields: { timecodeRate: '30' } });
    expect(upkeepAt(phone.day(), MORNING + HOUR).jams.due[0]?.driftFrames).toBeCloseTo(0.108, 10);
  });

  test('the tolerance of the recorder adds to that of what was jammed from it', () => {
    const phone = rigged(
      slate('s1', 1),
      { kind: 'devices-described', devices: ['recorder'], fields: { ppm: 1 } },
      jam(['s1'], 0),
    );
    expect(upkeepAt(phone.day(), MORNING + HOUR).jams.due[0]?.driftFrames).toBeCloseTo(0.18, 10);
  });

  test('without a tolerance the drift is not guessed, once for each device', () => {
    const phone = rigged(slate('s1', null), jam(['s1'], 0), jam(['s1'], 1));
    expect(upkeepAt(phone.day(), MORNING + 2 * HOUR).jams).toEqual({
      due: [],
      unknown: [{ device: 's1', problem: { code: 'no-tolerance', device: 's1' } }],
    });
  });

  describe('jammed from a box that drifted itself', () => {
    // The box: 3 ppm for 3 h is 0.81 frames at 25. From 10:00 on 1 ppm: 0.09 an hour, and the last 0.19 take 2.11 h.
    const chain = (...more: Draft[]) =>
      rigged(slate('box', 3), slate('s1', 1), jam(['box'], 0), jam(['s1'], 3, 'box'), ...more).day();
    const found = (day: Day) =>
      upkeepAt(day, MORNING + 4 * HOUR).jams.due.find(({ device }) => device === 's1');
    const unknown = (day: Day) =>
      upkeepAt(day, MORNING + 4 * HOUR).jams.unknown.filter(({ device }) => device === 's1');

    test.each<[string, Draft[]]>([
      ['is there', []],
      ['was struck since', [{ kind: 'devices-described', devices: ['box'], fields: { struck: true } }]],
    ])('the drift is handed down when the box %s', (_, more) => {
      expect(found(chain(...more))?.driftFrames).toBeCloseTo(0.9, 10);
      expect(found(chain(...more))?.dueAtMs).toBe(MORNING + 3 * HOUR + 7_600_000);
    });

    test('the drift is not known where that of the box is not', () => {
      const day = chain(slate('box', null));
      expect(found(day)).toBeUndefined();
      expect(unknown(day)).toEqual([
        { device: 's1', problem: { code: 'source-without-tolerance', device: 'box' } },
      ]);
      expect(
        upkeepAt(day, MORNING + 4 * HOUR)
          .due.unknown.map(({ name }) => name)
          .sort(),
      ).toEqual(['box', 's1']);
    });

    test('a box nobody jammed counts with its own clock, or is not known', () => {
      const never = (ppm: number | null) =>
        rigged(slate('box', ppm), slate('s1', 1), jam(['s1'], 3, 'box')).day();
      expect(found(never(3))?.driftFrames).toBeCloseTo(0.36, 10);
      expect(found(never(null))).toBeUndefined();
      expect(unknown(never(null))).toHaveLength(1);
    });

    test('two jammed from it at different times are apart by its own clock too', () => {
      const two = (ppm: number | null) =>
        rigged(
          slate('box', ppm),
          slate('s1', 1),
          slate('s2', 1),
          jam(['s1'], 0, 'box'),
          jam(['s2'], 2, 'box'),
        ).day();
      // s1 4 h and s2 2 h at 1 ppm, and the box 2 h at 3 ppm: 12 × 0.09.
      expect(worstPair(two(3), MORNING + 4 * HOUR)?.frames).toBeCloseTo(1.08, 10);
      expect(worstPair(two(null), MORNING + 4 * HOUR)).toBeUndefined();
    });
  });

  test('a device with timecode that was never jammed is told, and the recorder is not', () => {
    const phone = rigged(slate('s1', 1), slate('s2', 1), jam(['s1'], 0));
    expect(upkeepAt(phone.day(), MORNING + HOUR).withoutJam.map(({ id }) => id)).toEqual(['s2']);
  });

  // 5 and 10 ppm, both jammed an hour ago from one source, are 1.35 frames apart at 25.
  test('the two that may differ most are named', () => {
    const phone = rigged(slate('s1', 5), slate('s2', 10), slate('s3', 1), jam(['s1', 's2', 's3'], 0));
    const apart = worstPair(phone.day(), MORNING + HOUR);
    expect(apart?.devices).toEqual(['s1', 's2']);
    expect(apart?.frames).toBeCloseTo(1.35, 10);
    expect(worstPair(rigged(slate('s1', 5), jam(['s1'], 0)).day(), MORNING)).toBeUndefined();
  });
});

describe('media of the day', () => {
  const card = (id: string, fields: object): Draft => ({
    kind: 'card-described',
    card: id,
    fields: { name: id, bytes: 64e9, usedBytes: 0, ...fields },
  });
  const rolled = (hours: number): Draft =>
    take('24', 2, hours + 1, {
      rolledAt: MORNING + hours * HOUR,
      length: { frames: 25 * 3600, rate: '25' },
    });

  test('a card that was in all day holds the time the day recorded', () => {
    const phone = rigged(card('k', {}), rolled(0), rolled(2));
    const [one] = cardsOf(phone.day(), MORNING + 4 * HOUR);
    expect(one?.recordedMs).toBe(2 * HOUR);
    expect(one?.recordedMs).toBe(dayTotals(phone.day()).recordedMs);
  });

  test('a card counts only what rolled while it was in', () => {
    const phone = rigged(rolled(0), rolled(2), rolled(4));
    const day = phone.day();
    expect(recordedOnMs(day, MORNING + HOUR, null, MORNING + 9 * HOUR)).toBe(2 * HOUR);
    expect(recordedOnMs(day, MORNING + HOUR, MORNING + 3 * HOUR, MORNING + 9 * HOUR)).toBe(HOUR);
    expect(recordedOnMs(day, null, MORNING, MORNING + 9 * HOUR)).toBe(0);
  });

  test('the running take counts up to now', () => {
    const phone = rigged(card('k', {}), rolling(MORNING + HOUR));
    expect(cardsOf(phone.day(), MORNING + 1.5 * HOUR)[0]?.recordedMs).toBe(0.5 * HOUR);
  });

  // 8 tracks, 24/48 in 64 GB is 15.43 h without headers; 1 % less with them.
  test('hours left follow from the tracks, the rate and the depth of the day', () => {
    const phone = rigged(card('k', { tracks: 8 }));
    const [state] = upkeepAt(phone.day(), MORNING + HOUR).cards;
    expect(unwrap(state!.left).hoursLeft).toBeCloseTo(15.43 / 1.01, 2);
    expect(formatOf(phone.day())).toEqual({ tracks: 5, sampleRate: 48_000, bits: 24 });
    phone.say({ kind: 'day-described', fields: { bitDepth: '32f', sampleRate: 96_000, fileLayout: 'mono' } });
    expect(formatOfAFile(phone.day())).toEqual({ tracks: 1, sampleRate: 96_000, bits: 32 });
  });

  describe('a take of the morning, typed in the afternoon', () => {
    // The speaker is two hours east: MORNING is 09:00. Length an hour; the card of the morning came out at noon.
    const typed = (start: string, more: object = {}): Draft => {
      const frames = unwrap(parseTimecode(start, '25'));
      return take('24', 2, 9, {
        start: { frames, rate: '25' },
        length: { frames: 25 * 3600, rate: '25' },
        ...more,
      });
    };
    const cards = [
      card('am', { inAtMs: MORNING - HOUR, outAtMs: MORNING + 3 * HOUR }),
      card('pm', { inAtMs: MORNING + 3 * HOUR }),
    ];
    const onCards = (...drafts: Draft[]) => {
      const phone = rigged(...cards);
      // Said at 14:00.
      phone.facts.push(...speaker('phoneb', MORNING + 5 * HOUR).say(...drafts));
      return cardsOf(phone.day(), MORNING + 6 * HOUR).map(({ card: name, recordedMs }) => [
        name,
        recordedMs / HOUR,
      ]);
    };

    test('is on the card of the morning, by the followed clock', () => {
      const clock: Draft = {
        kind: 'clock-followed',
        frames: unwrap(parseTimecode('01:00:00:00', '25')),
        rate: '25',
        atMs: MORNING,
      };
      expect(onCards(clock, typed('01:40:00:00'))).toEqual([
        ['am', 1],
        ['pm', 0],
      ]);
      expect(onCards(clock, typed('04:30:00:00'))).toEqual([
        ['am', 0],
        ['pm', 1],
      ]);
    });

    test('is on the card of the morning by time of day, where no clock is followed', () => {
      expect(onCards(typed('09:40:00:00'))).toEqual([
        ['am', 1],
        ['pm', 0],
      ]);
    });

    test('counts when it was logged where its start tells no time of this day', () => {
      expect(onCards(typed('01:00:00:00'))[1]).toEqual(['pm', 1]);
      expect(onCards(typed('09:40:00:00', { start: null }))[1]).toEqual(['pm', 1]);
    });
  });

  test('another bit depth at noon leaves the size of the morning as it was', () => {
    const phone = rigged(card('k', { tracks: 8 }), rolled(0));
    const left = () => unwrap(upkeepAt(phone.day(), MORNING + 4 * HOUR).cards[0]!.left).bytesLeft;
    const [before, total] = [left(), dayTotals(phone.day()).bytes];
    // An hour of 8 tracks of 24 bit at 48 kHz, with 1 % for headers.
    expect(before).toBe(64e9 - 1.01 * 8 * 3 * 48_000 * 3600);
    const noon = speaker('phoneb', MORNING + 3 * HOUR);
    const [said] = noon.say({ kind: 'day-described', fields: { bitDepth: '32f' } });
    phone.facts.push(said!);
    expect(left()).toBe(before);
    expect(dayTotals(phone.day()).bytes).toBe(total);
    phone.facts.push(...noon.say(rolled(3.5)));
    expect(left()).toBe(before - 1.01 * 8 * 4 * 48_000 * 3600);
    // Taken back, it was never said.
    phone.facts.push(...noon.say({ kind: 'fact-retracted', targets: [said!.id], by: 'hand' }));
    expect(left()).toBe(before - 1.01 * 8 * 3 * 48_000 * 3600);
  });

  test('a card that came out is due for nothing', () => {
    const phone = rigged(card('k', { usedBytes: 64e9 }));
    expect(upkeepAt(phone.day(), MORNING + HOUR).due.items).toHaveLength(1);
    phone.say({ kind: 'card-described', card: 'k', fields: { outAtMs: MORNING } });
    expect(upkeepAt(phone.day(), MORNING + HOUR).due.items).toEqual([]);
  });
});

test('no number of an odd day is NaN or without end', () => {
  const phone = rigged(
    runs(PACKS, 0.05),
    fresh(['A1'], 900_000),
    fresh(['A2'], -400_000),
    { kind: 'devices-described', devices: ['s'], fields: { name: 'S', ppm: 0, hasTimecode: true } },
    { kind: 'devices-jammed', devices: ['s'], from: 's' },
    { kind: 'devices-jammed', devices: ['s'], from: 'recorder', atMs: MORNING + 900 * HOUR },
    { kind: 'card-described', card: 'k', fields: { bytes: 1, usedBytes: 1e15, tracks: 512 } },
    { kind: 'card-described', card: 'empty', fields: {} },
    { kind: 'shift-planned', shift: { callAtMs: 0, mealAtMs: 0, wrapAtMs: 253_402_300_799_999 } },
  );
  const upkeep = upkeepAt(phone.day(), MORNING);
  expect(numbersIn(upkeep).filter((value) => !Number.isFinite(value))).toEqual([]);
  expect(numbersIn(upkeepAt(speaker().day(), MORNING)).every(Number.isFinite)).toBe(true);
});
