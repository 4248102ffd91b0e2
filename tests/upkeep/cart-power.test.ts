import { describe, expect, test } from 'vitest';
import { runtimeHours, wattHours } from '../../src/upkeep/wiring/battery-energy.ts';
import {
  type CartRun,
  CORD_AMPS,
  cartRun,
  fuseLimit,
  WIRES,
} from '../../src/upkeep/wiring/direct-current.ts';
import { codeOf, printed, unwrap } from './unwrap.ts';

describe('a DC lead on the cart', () => {
  const run: CartRun = { volts: 13, awg: 18, metres: 3, load: { amps: 5 } };

  // Ohms per km: public wire table.
  test('knows the wire table', () => {
    expect(WIRES).toEqual({ 10: 3.28, 12: 5.21, 14: 8.28, 16: 13.2, 18: 20.9, 20: 33.2, 22: 52.9 });
  });

  // Arithmetic: 2 × ohms × length × amps.
  test.each([
    [3, 18, '0.627'],
    [3, 16, '0.396'],
    [3, 14, '0.248'],
    [3, 12, '0.156'],
    [10, 18, '2.090'],
    [10, 14, '0.828'],
    [10, 12, '0.521'],
    [10, 10, '0.328'],
  ])('of %i m, AWG %i drops %s V at 5 A', (metres, awg, drop) => {
    expect(unwrap(cartRun({ ...run, metres, awg })).dropVolts.toFixed(3)).toBe(drop);
  });

  test('drops 4.8 % of 13 V over 3 m of AWG 18 and 16 % over 10 m', () => {
    expect(unwrap(cartRun(run)).dropPercent.toFixed(1)).toBe('4.8');
    expect(unwrap(cartRun({ ...run, metres: 10 })).dropPercent.toFixed(0)).toBe('16');
  });

  test('with a load of constant power sees 10.84 V from 12 V over 5 m of AWG 18 at 60 W', () => {
    const report = unwrap(
      cartRun({ volts: 12, awg: 18, metres: 5, load: { watts: 60 }, deviceMinVolts: 11 }),
    );
    expect(report.loadVolts.toFixed(2)).toBe('10.84');
    expect(report.cautions).toEqual(['drop-above-aim', 'below-device-minimum']);
  });

  // 3 % in all: common practice, no source.
  test('raises no caution when all is well', () => {
    expect(unwrap(cartRun({ ...run, awg: 12 })).cautions).toEqual([]);
  });

  test('cautions above the cord rating and where there is none', () => {
    expect(unwrap(cartRun({ ...run, load: { amps: 8 } })).cautions).toContain('above-cord-rating');
    expect(unwrap(cartRun({ ...run, awg: 22, load: { amps: 0.1 } })).cautions).toEqual(['no-cord-rating']);
  });

  test('is refused at 0 m, 10 km, zero volts, infinite load and an unknown gauge', () => {
    expect(codeOf(cartRun({ ...run, metres: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(cartRun({ ...run, metres: 10_000 }))).toBe('quantity-out-of-range');
    expect(codeOf(cartRun({ ...run, volts: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(cartRun({ ...run, load: { watts: Number.POSITIVE_INFINITY } }))).toBe(
      'quantity-not-finite',
    );
    expect(codeOf(cartRun({ ...run, awg: 13 }))).toBe('unknown-gauge');
    // 4.18 ohm: 13 V drive 3.11 A at most.
    expect(codeOf(cartRun({ ...run, metres: 100, load: { amps: 3.2 } }))).toBe('current-beyond-lead');
    expect(codeOf(cartRun({ ...run, metres: 100, load: { watts: 60 } }))).toBe('load-beyond-lead');
  });
});

describe('a fuse', () => {
  // Order of the flexible-cord ratings of NEC 400.5: from memory.
  test('goes by the low end of the cord ratings', () => {
    expect(CORD_AMPS).toEqual({ 12: [20, 25], 14: [15, 18], 16: [10, 13], 18: [7, 10] });
    expect(unwrap(fuseLimit({ awg: 18 }))).toEqual({ amps: 7, limitedBy: 'wire' });
  });

  test('stays under the weakest of wire, connector and device', () => {
    expect(unwrap(fuseLimit({ awg: 12, connectorAmps: 10 }))).toEqual({ amps: 10, limitedBy: 'connector' });
    expect(unwrap(fuseLimit({ awg: 18, connectorAmps: 10, deviceAmps: 5 }))).toEqual({
      amps: 5,
      limitedBy: 'device',
    });
  });

  test('is not named for a gauge without a rating, nor for a device of no amps', () => {
    expect(codeOf(fuseLimit({ awg: 22 }))).toBe('no-cord-rating');
    expect(codeOf(fuseLimit({ awg: 18, deviceAmps: 0 }))).toBe('quantity-out-of-range');
  });
});

describe('battery energy', () => {
  // Arithmetic; usable fractions are common practice, no source.
  test.each([
    [98, 35, 1, 1, '2.80'],
    [98, 35, 0.9, 0.9, '2.27'],
    [288, 60, 0.8, 0.9, '3.46'],
    [1280, 120, 0.8, 0.9, '7.68'],
  ])('of %i Wh runs %i W with %f and %f for %s h', (energy, watts, usable, converterEfficiency, hours) => {
    expect(printed(runtimeHours({ wattHours: energy, watts, usable, converterEfficiency }), 2)).toBe(hours);
  });

  // AA cells: 3.0 Ah × 1.5 V lithium primary, 2.5 Ah × 1.25 V NiMH (public data sheets).
  test.each([
    [3.0, 1.5, '4.5', '6.0'],
    [2.5, 1.25, '3.1', '4.2'],
  ])('of two AA cells of %f Ah at %f V: %s Wh each, %s h at 1.5 W', (ampHours, volts, each, hours) => {
    const energy = unwrap(wattHours(volts, ampHours));
    expect(energy.toFixed(1)).toBe(each);
    expect(printed(runtimeHours({ wattHours: 2 * energy, watts: 1.5 }), 1)).toBe(hours);
  });

  test.each([
    [14.4, 6.8, '97.9'],
    [12.8, 20, '256.0'],
    [12.8, 100, '1280.0'],
  ])('of %f V and %f Ah is %s Wh', (volts, ampHours, energy) => {
    expect(printed(wattHours(volts, ampHours), 1)).toBe(energy);
  });

  test('is refused for no load, an infinite load and a usable part of nothing', () => {
    expect(codeOf(runtimeHours({ wattHours: 98, watts: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(runtimeHours({ wattHours: 98, watts: Number.POSITIVE_INFINITY }))).toBe(
      'quantity-not-finite',
    );
    expect(codeOf(runtimeHours({ wattHours: 98, watts: 1, usable: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(wattHours(0, 1))).toBe('quantity-out-of-range');
  });
});
