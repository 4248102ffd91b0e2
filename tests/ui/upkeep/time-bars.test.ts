import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../src/facts/fact.ts';
import { barOf, batteryBar, cardBar, jamBar } from '../../../src/ui/upkeep/time-bars.ts';
import { scaleOf, shareOf, timeScale } from '../../../src/ui/upkeep/time-scale.ts';
import { shortWords } from '../../../src/ui/upkeep/words.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const HOUR = 3_600_000;
const at = (hours: number): number => MORNING + hours * HOUR;

const runs = (device: string, runtimeHours: number): Draft => ({
  kind: 'devices-described',
  devices: [device],
  fields: { runtimeHours, runtimeBasis: 'measured' },
});
const fresh: Draft = { kind: 'cells-changed', devices: ['A1', 'A2', 'A3'], atMs: MORNING };
const hours: Draft = {
  kind: 'shift-planned',
  shift: { callAtMs: MORNING, mealAtMs: at(5), wrapAtMs: at(10) },
};

describe('the scale of the bars', () => {
  test('runs from now to a little past wrap, with meal and wrap in their places', () => {
    const scale = timeScale(MORNING, { mealAtMs: at(5), wrapAtMs: at(10) }, [at(40)]);
    expect(scale.endMs).toBe(at(12));
    expect(scale.marks.map(({ name, share }) => [name, share])).toEqual([
      ['meal', 5 / 12],
      ['wrap', 10 / 12],
    ]);
  });

  test('leaves out a meal break that is over', () => {
    expect(timeScale(at(6), { mealAtMs: at(5), wrapAtMs: at(10) }, []).marks.map(({ name }) => name)).toEqual(
      ['wrap'],
    );
  });

  test('has its marks in order of time where the meal break is after wrap', () => {
    const { marks } = timeScale(MORNING, { mealAtMs: at(11), wrapAtMs: at(10) }, []);
    expect(marks.map(({ name }) => name)).toEqual(['wrap', 'meal']);
  });

  test('ends with what lasts longest where nobody said a wrap, and never beyond a day and its room', () => {
    expect(timeScale(MORNING, {}, [at(5), at(3)]).endMs).toBe(at(6));
    expect(timeScale(MORNING, {}, [at(300)]).endMs).toBe(at(28.8));
    expect(timeScale(MORNING, {}, []).endMs).toBeGreaterThan(MORNING);
  });

  test('puts what was before now at its start and what is later than its end at its end', () => {
    const scale = timeScale(MORNING, { wrapAtMs: at(10) }, []);
    expect([at(-1), MORNING, at(6), at(12), at(13)].map((ms) => shareOf(scale, ms))).toEqual([
      0, 0, 0.5, 1, 1,
    ]);
  });
});

describe('a bar', () => {
  const scale = timeScale(MORNING, { mealAtMs: at(5), wrapAtMs: at(10) }, []);
  const cells = (dueAtMs: number, emptyAtMs: number, more: object) =>
    batteryBar(scale, {
      device: 'A1',
      basis: 'measured',
      freshAtMs: MORNING,
      action: 'later',
      dueAtMs,
      emptyAtMs,
      ...more,
    });

  test('of cells is full until they are due and hollow until flat', () => {
    expect(cells(at(6), at(9), { toMeal: 'lasts', toWrap: 'runs-out' })).toEqual({
      dueShare: 0.5,
      endShare: 0.75,
      goesOn: false,
      short: { to: 'wrap', how: 'out' },
    });
  });

  test('names the nearest of two marks that cells fall short of', () => {
    expect(cells(at(3), at(4), { toMeal: 'runs-out', toWrap: 'runs-out' }).short?.to).toBe('meal');
  });

  test('names a mark they run flat before rather than one they reach on the reserve', () => {
    expect(cells(at(4), at(6), { toMeal: 'past-margin', toWrap: 'runs-out' }).short).toEqual({
      to: 'wrap',
      how: 'out',
    });
    expect(cells(at(4), at(11), { toMeal: 'past-margin', toWrap: 'past-margin' }).short).toEqual({
      to: 'meal',
      how: 'tight',
    });
  });

  test('goes on where it lasts beyond the scale', () => {
    expect(cells(at(12), at(15), { toMeal: 'lasts', toWrap: 'lasts' })).toEqual({
      dueShare: 1,
      endShare: 1,
      goesOn: true,
      short: undefined,
    });
  });

  test('of a card ends when it is full, and is none where no pace can tell', () => {
    const left = { card: 'c', bytesLeft: 1, hoursLeft: 1, pace: 0.1, action: 'later' } as const;
    expect(cardBar(scale, left)).toBeUndefined();
    expect(cardBar(scale, { ...left, dueAtMs: at(6), fullAtMs: at(9), lastsToWrap: false })).toEqual({
      dueShare: 0.5,
      endShare: 0.75,
      goesOn: false,
      short: { to: 'wrap', how: 'out' },
    });
    expect(
      cardBar(scale, { ...left, dueAtMs: at(9), fullAtMs: at(11), lastsToWrap: false })?.short?.how,
    ).toBe('tight');
  });

  test('of a jam ends when a frame may be lost, and is none where nothing drifts', () => {
    const jam = { device: 's', from: 'r', jammedAtMs: MORNING, driftFrames: 0, driftMs: 0 };
    expect(jamBar(scale, { ...jam, action: 'later' })).toBeUndefined();
    expect(jamBar(scale, { ...jam, dueAtMs: at(3), action: 'later' })).toMatchObject({
      dueShare: 0.25,
      endShare: 0.25,
    });
  });
});

describe('the bars of a day', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, hours, fresh, runs('A1', 4), runs('A2', 11), runs('A3', 20));
  phone.say({ kind: 'card-described', card: 'c1', fields: { name: 'Card A', bytes: 2e9 } });
  phone.say(take('24', 1, 1, { length: { frames: 25 * 3_600, rate: '25' } }));
  const day = phone.day();
  const upkeep = upkeepAt(day, at(1));
  const scale = scaleOf(day, upkeep, at(1));

  test('say of every pack and card what the words of the list say', () => {
    expect(upkeep.due.items).toHaveLength(4);
    for (const item of upkeep.due.items) {
      const codes = item.reasons.flatMap((reason) => {
        if (reason.code === 'card-not-to-wrap') return ['wrap out'];
        if (reason.code !== 'cells-not-to-meal' && reason.code !== 'cells-not-to-wrap') return [];
        return [
          `${reason.code === 'cells-not-to-meal' ? 'meal' : 'wrap'} ${reason.reach === 'runs-out' ? 'out' : 'tight'}`,
        ];
      });
      const { short } = barOf(scale, upkeep, item)!;
      expect(codes.length > 0, item.name).toBe(short !== undefined);
      if (short) expect(codes).toContain(`${short.to} ${short.how}`);
    }
  });

  test('end at the moment that the words name', () => {
    for (const { device, emptyAtMs, dueAtMs } of upkeep.cells.due) {
      const bar = barOf(scale, upkeep, { kind: 'cells', name: device })!;
      const spanMs = scale.endMs - at(1);
      if (!bar.goesOn) expect(at(1) + bar.endShare * spanMs, device).toBeCloseTo(emptyAtMs);
      if (bar.dueShare < 1) expect(at(1) + bar.dueShare * spanMs, device).toBeCloseTo(dueAtMs);
    }
  });

  test('who falls short is said in words as well', () => {
    const said = upkeep.cells.due.map(({ device }) => {
      const { short } = barOf(scale, upkeep, { kind: 'cells', name: device })!;
      return [device, short && shortWords(short, 'flat')];
    });
    expect(said).toEqual([
      ['A1', 'flat before meal'],
      ['A2', 'may not last to wrap'],
      ['A3', undefined],
    ]);
  });

  test('of something that nobody gave a runtime is none', () => {
    expect(barOf(scale, upkeep, { kind: 'cells', name: 'other' })).toBeUndefined();
    expect(barOf(scale, upkeep, { kind: 'jam', name: 'A1' })).toBeUndefined();
  });
});
