import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DayRun, dcRun, RUN_DEFAULTS } from '../../src/upkeep/wiring/day-runs.ts';
import { cartRun, WIRES } from '../../src/upkeep/wiring/direct-current.ts';
import { codeOf, unwrap } from './unwrap.ts';

const lead = (more: Partial<DayRun>): DayRun => ({
  ...RUN_DEFAULTS,
  id: 'r',
  type: 'dc',
  name: 'Cart lead',
  volts: 12,
  awg: 18,
  metres: 5,
  watts: 60,
  batteryWattHours: 98,
  ...more,
});
const hoursOf = (run: DayRun) => dcRun(run).runtime!;

describe('hours of a battery at the end of a DC lead', () => {
  // By hand. AWG 18 has 6.385 ohms per 1000 ft at 20 °C (wire table of R. Nave, HyperPhysics, Georgia State
  // University), 20.9 per km; out and back over 5 m that is 0.209 ohms. 60 W of constant power at the far end of 12 V:
  //   V² − 12 V + 60 · 0.209 = 0   V = (12 + √93.84) / 2 = 10.8436 V   I = 60 / 10.8436 = 5.5332 A
  //   lost in the lead: 5.5332² · 0.209 = 6.399 W   out of the battery: 12 · 5.5332 = 66.399 W
  //   98 Wh, of which 80 % count (common practice, no source): 78.4 / 66.399 = 1.1807 h
  // Without the lead's own loss it was 78.4 / 60 = 1.3067 h: 10.7 % too long.
  test('count what the lead itself loses', () => {
    expect(unwrap(dcRun(lead({})).lead)).toMatchObject({
      loadVolts: expect.closeTo(10.8436, 4),
      amps: expect.closeTo(5.5332, 4),
      lossWatts: expect.closeTo(6.399, 3),
    });
    expect(unwrap(hoursOf(lead({})))).toBeCloseTo(1.1807, 4);
  });

  test('are those of the load alone where the lead loses next to nothing', () => {
    const short = unwrap(hoursOf(lead({ metres: 0.1, awg: 10, watts: 1 })));
    expect(short).toBeLessThan(78.4);
    expect(short).toBeCloseTo(78.4, 2);
  });

  // 20 m: 0.836 ohms carry 12² / (4 · 0.836) = 43.1 W at most, whatever the battery holds.
  test('are not given where the lead cannot carry the load: the volts collapse, and that is said', () => {
    const collapsed = dcRun(lead({ metres: 20 }));
    expect(collapsed.lead).toMatchObject({ problem: { code: 'load-beyond-lead', watts: 60 } });
    expect(collapsed.runtime).toEqual(collapsed.lead);
    expect(codeOf(hoursOf(lead({ metres: 20, watts: 43 })))).toBe('none');
    expect(codeOf(hoursOf(lead({ metres: 20, watts: 43.1 })))).toBe('load-beyond-lead');
  });

  test('are not given for a device that gets too few volts to run, to the volt it needs', () => {
    expect(hoursOf(lead({ deviceMinVolts: 11 }))).toEqual({
      ok: false,
      problem: { code: 'device-below-minimum', volts: expect.closeTo(10.8436, 4), deviceMinVolts: 11 },
    });
    const { loadVolts } = unwrap(dcRun(lead({})).lead);
    expect(codeOf(hoursOf(lead({ deviceMinVolts: loadVolts })))).toBe('none');
  });

  test('are of ten watts where no load was said, and none without a battery', () => {
    expect(unwrap(hoursOf(lead({ watts: null })))).toBe(unwrap(hoursOf(lead({ watts: 10 }))));
    expect(dcRun(lead({ batteryWattHours: null })).runtime).toBeNull();
  });

  const anyLead = fc.record({
    volts: fc.double({ min: 5, max: 30, noNaN: true }),
    awg: fc.constantFrom(...Object.keys(WIRES).map(Number)),
    metres: fc.double({ min: 0.1, max: 60, noNaN: true }),
    watts: fc.double({ min: 0.1, max: 150, noNaN: true }),
    batteryWattHours: fc.double({ min: 10, max: 2000, noNaN: true }),
  });

  test('never grow with the length, and what the battery gives is the load and the loss', () => {
    fc.assert(
      fc.property(anyLead, fc.double({ min: 0.1, max: 60, noNaN: true }), (fields, more) => {
        const [near, far] = [lead(fields), lead({ ...fields, metres: fields.metres + more })];
        const [before, after] = [hoursOf(near), hoursOf(far)];
        // Once a lead cannot carry the load no longer one can.
        if (!before.ok) return !after.ok;
        const { lossWatts, loadVolts, amps } = unwrap(dcRun(near).lead);
        expect(loadVolts * amps).toBeCloseTo(fields.watts, 6);
        expect(before.value * (fields.watts + lossWatts)).toBeCloseTo(fields.batteryWattHours * 0.8, 6);
        expect(fields.volts * amps).toBeCloseTo(fields.watts + lossWatts, 6);
        return !after.ok || after.value <= before.value;
      }),
      { seed: 31, numRuns: 1000 },
    );
  });

  test('never grow with a thinner wire', () => {
    const gauges = Object.keys(WIRES).map(Number);
    fc.assert(
      fc.property(anyLead, (fields) => {
        const hours = gauges
          .map((awg) => hoursOf(lead({ ...fields, awg })))
          .map((one) => (one.ok ? one.value : 0));
        return hours.every((one, at) => at === 0 || one <= hours[at - 1]!);
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});

// ASTM B258: AWG n is 0.127 mm × 92 ^ ((36 − n) / 39) thick; IEC 60028: 1 m of annealed copper of 1 mm² has 0.017241 ohms
// at 20 °C. The printed table is rounded to three digits.
test.each(Object.entries(WIRES))('AWG %s has the ohms of its thickness in copper', (gauge, ohms) => {
  const thick = 0.127 * 92 ** ((36 - Number(gauge)) / 39);
  const perKm = (0.017241 * 1000) / ((Math.PI * thick ** 2) / 4);
  expect(Math.abs(ohms / perKm - 1)).toBeLessThan(0.005);
});

test('a load of constant current draws from the battery what it takes and what is lost', () => {
  const report = unwrap(cartRun({ volts: 13, awg: 18, metres: 3, load: { amps: 5 } }));
  expect(report.supplyWatts).toBeCloseTo(65, 12);
  expect(report.loadVolts * 5 + report.lossWatts).toBeCloseTo(65, 12);
});
