import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadPoint } from '../../src/upkeep/wiring/constant-power.ts';
import {
  KNOWN_GOOD_LEADS,
  type LeadLimit,
  networkLead,
  POWER_CLASSES,
  type PowerClass,
  powerClassOf,
} from '../../src/upkeep/wiring/ethernet-power.ts';
import {
  CABLES,
  type CableId,
  conductorOhms,
  copperFactor,
  feetToMetres,
} from '../../src/upkeep/wiring/network-cables.ts';
import { codeOf, printed, unwrap } from './unwrap.ts';

/** What is left at the device at the source's least voltage and full watts, through the longest loop. */
function worstCase({ sourceWatts, sourceMinVolts, loopLimitOhms }: PowerClass) {
  const amps = sourceWatts / sourceMinVolts;
  const deviceVolts = sourceMinVolts - amps * loopLimitOhms;
  return { amps, deviceVolts, deviceWatts: deviceVolts * amps };
}

describe('the power classes of IEEE 802.3', () => {
  // Class watts: a public overview of 802.3bt-2018. Volts and ohms of types 1 and 2: public tables.
  // Least device volts of classes 5 and 7: from memory.
  test.each([
    [0, 15.4, 12.95, 1, 2, 44, 20, 37],
    [1, 4, 3.84, 1, 2, 44, 20, 37],
    [2, 7, 6.49, 1, 2, 44, 20, 37],
    [3, 15.4, 12.95, 1, 2, 44, 20, 37],
    [4, 30, 25.5, 2, 2, 50, 12.5, 42.5],
    [5, 45, 40, 3, 4, 50, 6.25, 44.3],
    [6, 60, 51, 3, 4, 50, 6.25, 42.5],
    [7, 75, 62, 4, 4, 52, 6.25, 42.9],
    [8, 90, 71.3, 4, 4, 52, 6.25, 41.1],
  ])(
    'list class %i with its watts, type, pairs, volts and loop',
    (id, source, device, type, pairs, volts, loop, least) => {
      expect(unwrap(powerClassOf(id))).toEqual({
        id,
        type,
        pairs,
        sourceWatts: source,
        deviceWatts: device,
        sourceMinVolts: volts,
        deviceMinVolts: least,
        loopLimitOhms: loop,
      });
    },
  );

  // Arithmetic on the table above: I = source watts / least volts, then the loop.
  test.each([
    [1, '3.835', '42.18', '0.091'],
    [2, '6.494', '40.82', '0.159'],
    [0, '12.95', '37.00', '0.350'],
    [3, '12.95', '37.00', '0.350'],
    [4, '25.50', '42.50', '0.600'],
    [5, '39.94', '44.38', '0.900'],
    [6, '51.00', '42.50', '1.200'],
    [7, '62.00', '42.99', '1.442'],
    [8, '71.28', '41.18', '1.731'],
  ])('leave class %i with %s W at %s V and %s A at the end of the longest loop', (id, watts, volts, amps) => {
    const point = worstCase(unwrap(powerClassOf(id)));
    expect([
      point.deviceWatts.toFixed(watts.split('.')[1]!.length),
      point.deviceVolts.toFixed(2),
      point.amps.toFixed(3),
    ]).toEqual([watts, volts, amps]);
  });

  // Some tables print 34.2 W for class 4: that is 57 V × 0.6 A, not what the class promises.
  test('give class 4 30 W at the source, and the volts of the source-end shortcut only at full class watts', () => {
    expect(unwrap(powerClassOf(4)).sourceWatts).toBe(30);
    for (const one of POWER_CLASSES) {
      const { deviceWatts, deviceVolts } = worstCase(one);
      const exact = unwrap(loadPoint(one.sourceMinVolts, one.loopLimitOhms, deviceWatts));
      expect(exact.loadVolts).toBeCloseTo(deviceVolts, 9);
      const lighter = unwrap(loadPoint(one.sourceMinVolts, one.loopLimitOhms, deviceWatts / 2));
      expect(lighter.loadVolts).toBeGreaterThan(deviceVolts + 0.5);
    }
  });

  test('know no class 9', () => {
    expect(codeOf(powerClassOf(9))).toBe('no-such-class');
    expect(POWER_CLASSES.map(({ id }) => id)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
  });
});

describe('a load of constant power', () => {
  // Exact roots: 50² - 4·12.5·25.5 = 35², 44² - 4·20·12.95 = 30².
  test.each([
    [50, 12.5, 25.5, '42.50'],
    [44, 20, 12.95, '37.00'],
    [50, 6.25, 51, '42.50'],
    [52, 6.25, 71.3, '41.18'],
    // Passive feed and cart lead, arithmetic.
    [24, 8.577, 12, '18.41'],
    [12, 0.209, 60, '10.84'],
  ])('from %f V through %f ohm at %f W sees %s V', (volts, ohms, watts, seen) => {
    expect(unwrap(loadPoint(volts, ohms, watts)).loadVolts.toFixed(2)).toBe(seen);
  });

  test('beyond what the lead can carry is a problem that names the most', () => {
    const result = loadPoint(24, 8.577, 20);
    expect(codeOf(result)).toBe('load-beyond-lead');
    expect(result).toHaveProperty('problem.mostWatts', expect.closeTo(16.79, 2));
  });

  test('obeys V·I = P + I²·R, on the stable side of half the voltage (seed 802)', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(1, 60), number(0, 50), number(0.01, 200), (volts, ohms, watts) => {
        const result = loadPoint(volts, ohms, watts);
        if (!result.ok) {
          expect(4 * ohms * watts).toBeGreaterThan(volts * volts);
          return;
        }
        const { amps, lossWatts, loadVolts } = result.value;
        expect(Math.abs(volts * amps - watts - lossWatts)).toBeLessThan(1e-9 * (1 + volts * amps));
        expect(loadVolts).toBeGreaterThanOrEqual(volts / 2);
      }),
      { seed: 802 },
    );
  });

  test('agrees with stepping the current until it settles (seed 145)', () => {
    const settle = (volts: number, ohms: number, watts: number): number => {
      let amps = 0;
      for (let step = 0; step < 500; step++) amps = watts / (volts - amps * ohms);
      return volts - amps * ohms;
    };
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(number(10, 60), number(0, 10), number(0, 0.9), (volts, ohms, part) => {
        const watts = Math.max(0.01, ohms === 0 ? 10 : Math.min(500, (part * volts * volts) / (4 * ohms)));
        expect(unwrap(loadPoint(volts, ohms, watts)).loadVolts).toBeCloseTo(settle(volts, ohms, watts), 6);
      }),
      { seed: 145 },
    );
  });

  test('refuses zero volts, an infinite load and no load', () => {
    expect(codeOf(loadPoint(0, 1, 10))).toBe('quantity-out-of-range');
    expect(codeOf(loadPoint(50, 1, Number.POSITIVE_INFINITY))).toBe('quantity-not-finite');
    expect(codeOf(loadPoint(50, 1, 0))).toBe('quantity-out-of-range');
  });
});

describe('cable resistance', () => {
  // Plain copper: public wire table. 9.38: TIA-568.2, in a public table. 9.5, 14.0, 14.5: from memory.
  test('per 100 m at 20 °C is as the tables print it', () => {
    expect(CABLES).toEqual({
      'awg-22': 5.29,
      'awg-23': 6.68,
      'awg-24': 8.42,
      'awg-26': 13.39,
      'tia-solid-limit': 9.38,
      'iec-solid-limit': 9.5,
      'tia-stranded-limit': 14,
      'iec-stranded-limit': 14.5,
    });
    expect(printed(conductorOhms('tia-solid-limit', 100), 2)).toBe('9.38');
  });

  // 0.00393 a degree: public table.
  test('grows by 1.157 at 60 °C', () => {
    expect(printed(copperFactor(60), 3)).toBe('1.157');
    expect(printed(conductorOhms('awg-24', 100, 60), 3)).toBe((8.42 * 1.1572).toFixed(3));
  });

  test('is refused for 0 m and for 10 km', () => {
    expect(codeOf(conductorOhms('awg-24', 0))).toBe('quantity-out-of-range');
    expect(codeOf(conductorOhms('awg-24', 10_000))).toBe('quantity-out-of-range');
  });
});

describe('a powered network lead', () => {
  // Arithmetic at the source's least voltage, cable only; classes 3, 4, 6, 8. Volts and watts lost.
  const feet300 = feetToMetres(300);
  test.each<[CableId, number, readonly string[]]>([
    ['tia-solid-limit', feetToMetres(250), ['41.78 (0.69)', '46.04 (2.19)', '46.04 (4.39)', '46.52 (8.39)']],
    ['tia-solid-limit', feet300, ['41.31 (0.84)', '45.16 (2.74)', '45.16 (5.47)', '45.24 (10.65)']],
    ['tia-solid-limit', 100, ['41.04 (0.93)', '44.64 (3.06)', '44.64 (6.12)', '44.48 (12.05)']],
    ['awg-23', feet300, ['42.12 (0.58)', '46.66 (1.82)', '46.66 (3.65)', '47.41 (6.91)']],
    ['awg-26', feet300, ['40.04 (1.28)', '42.69 (4.37)', '42.69 (8.74)', '41.48 (18.09)']],
  ])('of %s, %f m leaves the volts and loses the watts of the table', (cable, metres, row) => {
    const cells = [3, 4, 6, 8].map((powerClass) => {
      const report = unwrap(networkLead({ powerClass, cable, metres, connectorOhms: 0 }));
      expect(report.broken).toEqual([]);
      return `${report.loadVolts!.toFixed(2)} (${report.lossWatts!.toFixed(2)})`;
    });
    expect(cells).toEqual(row);
  });

  test('of 26 AWG, 100 m holds class 3 and fails classes 4, 6 and 8 on voltage', () => {
    const reports = [3, 4, 6, 8].map((powerClass) =>
      unwrap(networkLead({ powerClass, cable: 'awg-26', metres: 100, connectorOhms: 0 })),
    );
    expect(reports.map(({ loadVolts }) => loadVolts!.toFixed(2))).toEqual([
      '39.62',
      '41.84',
      '41.84',
      '40.09',
    ]);
    expect(reports.map(({ broken }) => broken.includes('device-voltage'))).toEqual([false, true, true, true]);
    expect(reports[0]!.lossWatts!.toFixed(2)).toBe('1.43');
  });

  // 250 ft of cat 6 and 300 ft of cat 7 have held a powered receiver box: common practice, no source.
  test('of the lengths known to hold is inside every limit at every class, connectors and 40 °C included', () => {
    expect(KNOWN_GOOD_LEADS.map(({ category, feet, metres }) => [category, feet, metres])).toEqual([
      ['cat 6', 250, feetToMetres(250)],
      ['cat 7', 300, feetToMetres(300)],
    ]);
    for (const { cable, metres } of KNOWN_GOOD_LEADS) {
      for (const { id } of POWER_CLASSES) {
        const report = unwrap(networkLead({ powerClass: id, cable, metres, celsius: 40 }));
        expect(report.broken).toEqual([]);
        expect(report.marginVolts).toBeGreaterThan(0);
      }
    }
  });

  test('names what fails first: length for good copper, voltage for thin', () => {
    const first = (cable: CableId) =>
      unwrap(networkLead({ powerClass: 4, cable, metres: 50, connectorOhms: 0 })).limits[0]!;
    expect(first('awg-23')).toEqual({ limit: 'data-length', metres: 100 });
    expect(first('awg-26').limit).toBe('device-voltage');
    // 12.5 ohm / 0.1339 ohm a metre
    expect(first('awg-26').metres.toFixed(1)).toBe('93.4');
  });

  test('breaks each limit at the length it names and not before (seed 568)', () => {
    const cable = fc.constantFrom(...(Object.keys(CABLES) as CableId[]));
    const powerClass = fc.constantFrom(...POWER_CLASSES.map(({ id }) => id));
    const celsius = fc.integer({ min: -10, max: 60 });
    fc.assert(
      fc.property(cable, powerClass, celsius, (cable, powerClass, celsius) => {
        const lead = { cable, powerClass, celsius, connectorOhms: 0.3 };
        const one = unwrap(powerClassOf(powerClass));
        for (const { limit, metres } of unwrap(networkLead({ ...lead, metres: 1 })).limits) {
          if (metres > 990) continue;
          const before = unwrap(networkLead({ ...lead, metres: metres - 0.01 }));
          const after = unwrap(networkLead({ ...lead, metres: metres + 0.01 }));
          expect(before.broken).not.toContain(limit);
          expect(after.broken).toContain(limit);
          const passes: Record<LeadLimit, boolean> = {
            'data-length': metres === 100,
            'device-voltage': before.marginVolts! >= 0 && !((after.marginVolts ?? -1) >= 0),
            'loop-resistance': before.loopOhms <= one.loopLimitOhms && after.loopOhms > one.loopLimitOhms,
            'source-power': sourceWatts(before) <= one.sourceWatts * 1.005,
            'no-solution': before.loadVolts !== undefined && after.loadVolts === undefined,
          };
          expect(passes[limit]).toBe(true);
        }
      }),
      { seed: 568, numRuns: 60 },
    );
  });

  test('never blames the source for the rounding of the published class watts', () => {
    for (const { id } of POWER_CLASSES) {
      const { limits } = unwrap(
        networkLead({ powerClass: id, cable: 'awg-24', metres: 50, connectorOhms: 0 }),
      );
      const metresOf = (wanted: LeadLimit) => limits.find(({ limit }) => limit === wanted)!.metres;
      expect(metresOf('source-power')).toBeGreaterThan(metresOf('loop-resistance'));
    }
  });

  test('with a lighter load than its class goes further', () => {
    const metresTo = (deviceWatts: number) =>
      unwrap(networkLead({ powerClass: 4, cable: 'awg-26', metres: 50, deviceWatts })).limits.find(
        ({ limit }) => limit === 'device-voltage',
      )!.metres;
    expect(metresTo(12)).toBeGreaterThan(2 * metresTo(25.5));
  });

  test('that cannot carry the load says so and shows no volts', () => {
    const report = unwrap(networkLead({ powerClass: 8, cable: 'iec-stranded-limit', metres: 1000 }));
    expect(report.broken).toContain('no-solution');
    expect(report).not.toHaveProperty('loadVolts');
  });

  test('is refused at 0 m, at 10 km, with an infinite load and with more than its class', () => {
    const lead = { powerClass: 4, cable: 'awg-23' as const, metres: 50 };
    expect(codeOf(networkLead({ ...lead, metres: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(networkLead({ ...lead, metres: 10_000 }))).toBe('quantity-out-of-range');
    expect(codeOf(networkLead({ ...lead, deviceWatts: Number.POSITIVE_INFINITY }))).toBe(
      'quantity-not-finite',
    );
    expect(codeOf(networkLead({ ...lead, deviceWatts: 30 }))).toBe('quantity-out-of-range');
    expect(codeOf(networkLead({ ...lead, powerClass: 12 }))).toBe('no-such-class');
  });
});

const sourceWatts = ({ deviceWatts, lossWatts }: { deviceWatts: number; lossWatts?: number }): number =>
  deviceWatts + (lossWatts ?? Number.MAX_VALUE);
