import { describe, expect, test } from 'vitest';
import { type Carrier, type Guards, SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { analyse } from '../../../src/radio/intermodulation/analyse.ts';
import type { Analysis, AnalysisOptions } from '../../../src/radio/intermodulation/analysis.ts';
import { FAMILIES } from '../../../src/radio/intermodulation/hit.ts';
import { productCounts } from '../../../src/radio/intermodulation/product-counts.ts';
import { stretchesOf } from '../../../src/radio/spectrum/frequency-axis.ts';
import { FAMILY_LINES, spectrumLayout } from '../../../src/radio/spectrum/spectrum-layout.ts';
import { NO_GUARDS, packsAt, randomCarriers } from '../sample-carriers.ts';

const ALL_ON: Guards = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 50 };

function analysed(
  carriers: readonly Carrier[],
  guards = ALL_ON,
  options: Partial<AnalysisOptions> = {},
): Analysis {
  const result = analyse(carriers, guards, options);
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
}

describe('the picture of three carriers', () => {
  const carriers = packsAt([500_000, 501_000, 504_000]);
  const layout = spectrumLayout(analysed(carriers), 1000);

  test('runs from half a MHz below the lowest to half a MHz above the highest', () => {
    expect(layout.axis).toEqual({ fromKhz: 499_500, toKhz: 504_500, widthPx: 1000 });
  });

  test('puts carriers in proportion', () => {
    expect(layout.carriers.map(({ xPx }) => xPx)).toEqual([100, 300, 900]);
  });

  test('draws each guard as wide as it reaches on both sides', () => {
    expect(layout.guards.filter(({ carrierId }) => carrierId === 'c1')).toEqual([
      { carrierId: 'c1', family: 'spacing', xPx: 220, widthPx: 160 },
      { carrierId: 'c1', family: 'two-tone-third', xPx: 280, widthPx: 40 },
      { carrierId: 'c1', family: 'three-tone-third', xPx: 290, widthPx: 20 },
      { carrierId: 'c1', family: 'two-tone-fifth', xPx: 290, widthPx: 20 },
    ]);
  });

  test('draws the products within the axis, in their families', () => {
    expect(layout.products).toEqual([
      { family: 'two-tone-third', xPx: 500, count: 1, hits: false },
      { family: 'three-tone-third', xPx: 700, count: 1, hits: false },
      { family: 'two-tone-fifth', xPx: 700, count: 1, hits: false },
    ]);
  });

  test('marks the axis at round frequencies', () => {
    expect(layout.ticks.map(({ label, xPx }) => `${label} ${xPx}`)).toEqual([
      '499.5 0',
      '500 100',
      '500.5 200',
      '501 300',
      '501.5 400',
      '502 500',
      '502.5 600',
      '503 700',
      '503.5 800',
      '504 900',
      '504.5 1000',
    ]);
  });
});

test('a hit is drawn from its product to its victim, and its column says that it hits', () => {
  const layout = spectrumLayout(analysed(packsAt([500_000, 501_000, 502_050])), 1000);
  const [mark] = layout.hits.filter(({ hit }) => hit.family === 'two-tone-third' && hit.victimId === 'c2');
  expect(mark).toMatchObject({ hit: { productKhz: 502_000, distanceKhz: 50 } });
  expect(mark!.xPx).toBeLessThan(mark!.victimXPx);
  expect(layout.products.filter(({ hits }) => hits).length).toBeGreaterThan(0);
  // The one in the middle is only ever hit by products it takes part in itself.
  expect(layout.carriers.map(({ hitCount }) => hitCount > 0)).toEqual([true, false, true]);
});

describe.each([
  [1, 2, 300],
  [2, 12, 360],
  [3, 40, 800],
  [4, 64, 320],
])('a crowded picture (seed %i, %i carriers, %i px)', (seed, n, widthPx) => {
  const carriers = randomCarriers(seed, n, 60_000, true).map((one, at) => ({
    ...one,
    name: 'Somebody With A Long Name'.slice(0, 1 + (at % 25)),
  }));
  const analysis = analysed(carriers, ALL_ON, {
    occupied: [{ name: 'TV', fromKhz: 460_000, toKhz: 480_000 }],
  });
  const layout = spectrumLayout(analysis, widthPx);

  test('keeps every label clear of every other in its row', () => {
    const clashes = layout.carriers.flatMap((one, at) =>
      layout.carriers
        .slice(at + 1)
        .filter(
          (two) =>
            one.labelRow === two.labelRow &&
            one.labelLeftPx < two.labelLeftPx + two.labelWidthPx &&
            two.labelLeftPx < one.labelLeftPx + one.labelWidthPx,
        ),
    );
    expect(clashes).toEqual([]);
    expect(layout.labelRowCount).toBe(Math.max(...layout.carriers.map(({ labelRow }) => labelRow)) + 1);
  });

  test('keeps every mark within the width', () => {
    const xs = [
      ...layout.carriers.flatMap(({ xPx, labelLeftPx }) => [xPx, labelLeftPx]),
      ...layout.products.map(({ xPx }) => xPx),
      ...layout.hits.flatMap(({ xPx, victimXPx }) => [xPx, victimXPx]),
      ...layout.guards.flatMap(({ xPx, widthPx: wide }) => [xPx, xPx + wide]),
      ...layout.blocks.flatMap(({ xPx, widthPx: wide }) => [xPx, xPx + wide]),
      ...layout.ticks.map(({ xPx }) => xPx),
    ];
    expect(xs.filter((x) => !(x >= -0.1 && x <= widthPx + 0.1))).toEqual([]);
    expect(layout.blocks).toHaveLength(1);
  });

  test('has a bounded number of columns however many products there are', () => {
    expect(layout.products.length).toBeLessThanOrEqual(3 * (widthPx + 1));
    const on = carriers.filter(({ transmitting }) => transmitting).length;
    const counts = productCounts(on);
    const drawn = layout.products.reduce((sum, { count }) => sum + count, 0);
    expect(drawn).toBeLessThanOrEqual(counts.twoToneThird + counts.threeToneThird + counts.twoToneFifth);
  });
});

test('a column hits exactly where a listed hit has its product', () => {
  const analysis = analysed(randomCarriers(8, 14, 9_000, false), ALL_ON, { listedPerFamily: 100_000 });
  const layout = spectrumLayout(analysis, 700);
  const { fromKhz, toKhz } = layout.axis!;
  const expected = new Set(
    analysis.hits
      .filter(({ family }) => family !== 'spacing')
      .map(
        ({ family, productKhz }) =>
          `${family} ${Math.floor((productKhz - fromKhz) * (700 / (toKhz - fromKhz)))}`,
      ),
  );
  const drawn = layout.products.filter(({ hits }) => hits).map(({ family, xPx }) => `${family} ${xPx}`);
  expect(new Set(drawn)).toEqual(expected);
});

test('a family that is switched off has neither guards nor products', () => {
  const layout = spectrumLayout(analysed(packsAt([500_000, 501_000, 504_000]), NO_GUARDS), 500);
  expect([layout.guards, layout.products]).toEqual([[], []]);
});

test('one carrier alone has an axis, a guard and no hits', () => {
  const layout = spectrumLayout(analysed(packsAt([470_100])), 200);
  expect(layout.carriers[0]).toMatchObject({ xPx: 100, labelRow: 0, hitCount: 0 });
  expect(layout.ticks.length).toBeGreaterThan(0);
});

test.each([0, -5, 0.5, Number.NaN, Number.POSITIVE_INFINITY])(
  'a width of %d px is an empty picture',
  (widthPx) => {
    expect(spectrumLayout(analysed(packsAt([470_100])), widthPx)).toMatchObject({
      axis: undefined,
      carriers: [],
    });
  },
);

test('no carriers are an empty picture', () => {
  expect(spectrumLayout(analysed([]), 600)).toMatchObject({ axis: undefined, labelRowCount: 0 });
});

test('carriers from 26 MHz to 7 GHz still have a few ticks and no NaN', () => {
  const layout = spectrumLayout(analysed(packsAt([26_100, 7_125_000])), 320);
  expect(layout.ticks.length).toBeGreaterThan(1);
  expect(layout.ticks.length).toBeLessThan(7);
  expect(layout.carriers.every(({ xPx }) => Number.isFinite(xPx))).toBe(true);
});

test('families are told apart by height and dashes, without colour', () => {
  expect(new Set(FAMILIES.map((family) => FAMILY_LINES[family].heightShare)).size).toBe(4);
  expect(new Set(FAMILIES.map((family) => FAMILY_LINES[family].dashesPx.join())).size).toBe(4);
});

describe('carriers far apart', () => {
  const guards = { ...NO_GUARDS, carrierKhz: 400, twoToneThirdKhz: 100 };
  const far = analysed(packsAt([470_100, 470_500, 475_000, 530_100, 533_300]), guards);

  test('are looked at in stretches of their own', () => {
    expect(stretchesOf(far)).toEqual([
      { fromKhz: 470_100, toKhz: 475_000 },
      { fromKhz: 530_100, toKhz: 533_300 },
    ]);
    expect(stretchesOf(analysed(packsAt([]), guards))).toEqual([]);
  });

  test('a stretch shows its own carriers, guards and hits, each once', () => {
    const panels = stretchesOf(far).map((stretch) => spectrumLayout(far, 400, 7, stretch));
    expect(panels.flatMap(({ carriers }) => carriers)).toHaveLength(5);
    expect(panels.flatMap(({ hits }) => hits)).toHaveLength(far.hits.length);
    expect(panels.map(({ axis }) => [axis?.fromKhz, axis?.toKhz])).toEqual([
      [469_600, 475_500],
      [529_600, 533_800],
    ]);
  });
});
