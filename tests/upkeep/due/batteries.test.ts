import { describe, expect, test } from 'vitest';
import { type Cells, planCells, type Shift, swapTimes } from '../../../src/upkeep/due/batteries.ts';
import { codeOf, unwrap } from '../unwrap.ts';

const at = (clock: string): number => Date.parse(`2031-05-06T${clock}:00Z`);
const clockOf = (ms: number): string => new Date(ms).toISOString().slice(11, 16);
const cells = (device: string, fresh: string, runtimeHours: number | undefined): Cells => ({
  device,
  freshAtMs: at(fresh),
  runtimeHours,
  basis: 'measured',
});
const shift = (now: string, more: Partial<Shift> = {}): Shift => ({
  nowMs: at(now),
  takeOpen: false,
  ...more,
});

describe('swap times', () => {
  // Margin 0.75 to 0.8: common practice, no source. The times are arithmetic.
  test('are 11:00, 15:00 and 19:00 for cells of 5 h at 0.8, fresh at 07:00', () => {
    const swaps = unwrap(swapTimes({ freshAtMs: at('07:00'), runtimeHours: 5, untilMs: at('19:00') }));
    expect(swaps.map(clockOf)).toEqual(['11:00', '15:00', '19:00']);
  });

  test('move back to the last pause before they are due', () => {
    const span = { freshAtMs: at('07:00'), runtimeHours: 5, untilMs: at('19:00') };
    const swaps = unwrap(swapTimes({ ...span, pausesMs: [at('09:00'), at('10:30'), at('13:00')] }));
    expect(swaps.map(clockOf)).toEqual(['10:30', '13:00', '17:00']);
  });

  test('are none when the first set lasts', () => {
    expect(unwrap(swapTimes({ freshAtMs: at('07:00'), runtimeHours: 20, untilMs: at('19:00') }))).toEqual([]);
  });

  test('refuse no runtime, an endless span and an end before the start', () => {
    const span = { freshAtMs: at('07:00'), runtimeHours: 5, untilMs: at('19:00') };
    expect(codeOf(swapTimes({ ...span, runtimeHours: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(swapTimes({ ...span, runtimeHours: Number.NaN }))).toBe('quantity-not-finite');
    expect(codeOf(swapTimes({ ...span, untilMs: Number.POSITIVE_INFINITY }))).toBe('quantity-not-finite');
    expect(codeOf(swapTimes({ ...span, untilMs: at('06:00') }))).toBe('quantity-out-of-range');
    expect(codeOf(swapTimes({ ...span, marginFactor: 0 }))).toBe('quantity-out-of-range');
  });
});

describe('the plan of cells', () => {
  test('sorts by when they are due, then by name', () => {
    const { due } = unwrap(
      planCells(
        [
          cells('TX3', '07:00', 6),
          cells('TX1', '08:00', 5),
          cells('TX2', '07:00', 6),
          cells('TX4', '07:00', 4),
        ],
        shift('08:00'),
      ),
    );
    expect(due.map(({ device, dueAtMs }) => `${device} ${clockOf(dueAtMs)}`)).toEqual([
      'TX4 10:12',
      'TX2 11:48',
      'TX3 11:48',
      'TX1 12:00',
    ]);
  });

  test('tells what lasts, what only lasts past its margin and what runs out', () => {
    const set = [cells('short', '07:00', 5), cells('close', '07:00', 7), cells('long', '07:00', 16)];
    const { due } = unwrap(planCells(set, shift('08:00', { mealAtMs: at('13:00'), wrapAtMs: at('19:00') })));
    expect(due.map(({ device, toMeal, toWrap }) => [device, toMeal, toWrap])).toEqual([
      ['short', 'runs-out', 'runs-out'],
      ['close', 'past-margin', 'runs-out'],
      ['long', 'lasts', 'lasts'],
    ]);
  });

  test('counts a meal break at the very moment they are due as reached, with margin', () => {
    const { due } = unwrap(planCells([cells('TX1', '07:00', 5)], shift('08:00', { mealAtMs: at('11:00') })));
    expect(due[0]!.toMeal).toBe('lasts');
  });

  test('says nothing of a meal break that is over or unknown', () => {
    const { due } = unwrap(planCells([cells('TX1', '07:00', 5)], shift('14:00', { mealAtMs: at('13:00') })));
    expect(due[0]).not.toHaveProperty('toMeal');
    expect(due[0]).not.toHaveProperty('toWrap');
  });

  test('never says now during an open take, and says it once the take is cut', () => {
    const set = [cells('TX1', '07:00', 5), cells('TX2', '10:00', 5)];
    const actions = (takeOpen: boolean) =>
      unwrap(planCells(set, shift('11:30', { takeOpen }))).due.map(({ action }) => action);
    expect(actions(true)).toEqual(['at-cut', 'later']);
    expect(actions(false)).toEqual(['now', 'later']);
  });

  test('sets a device without a usable runtime aside and plans the rest', () => {
    const set = [cells('TX1', '07:00', undefined), cells('TX2', '07:00', 0), cells('TX3', '07:00', 5)];
    const { due, unknown } = unwrap(planCells(set, shift('08:00')));
    expect(due.map(({ device }) => device)).toEqual(['TX3']);
    expect(unknown).toEqual([
      { device: 'TX1', problem: { code: 'no-runtime', device: 'TX1' } },
      {
        device: 'TX2',
        problem: { code: 'quantity-out-of-range', field: 'runtimeHours', value: 0, min: 0.05, max: 1000 },
      },
    ]);
  });

  test('does not change what it is given', () => {
    const set = Object.freeze([
      Object.freeze(cells('TX1', '09:00', 5)),
      Object.freeze(cells('TX2', '07:00', 5)),
    ]);
    expect(unwrap(planCells(set, Object.freeze(shift('08:00')))).due).toHaveLength(2);
  });
});
