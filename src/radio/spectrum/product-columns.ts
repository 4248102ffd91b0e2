import type { Carrier } from '../carrier.ts';
import type { Analysis } from '../intermodulation/analysis.ts';
import { FAMILIES, type Family, familyOf, productKhzOf } from '../intermodulation/hit.ts';
import type { FrequencyAxis } from './frequency-axis.ts';

export interface ProductColumn {
  readonly family: Family;
  readonly xPx: number;
  /** Products of this family within this pixel. */
  readonly count: number;
  /** At least one of them is a hit. */
  readonly hits: boolean;
}

/**
 * All products of the tested families, grouped by pixel, so that a picture of 64 carriers has hundreds of
 * lines and not a hundred thousand. Products beyond the axis are left out.
 */
export function productColumns(analysis: Analysis, axis: FrequencyAxis): readonly ProductColumn[] {
  const pixels = Math.floor(axis.widthPx) + 1;
  const counts = FAMILIES.map(() => new Uint32Array(pixels));
  const perKhz = axis.widthPx / (axis.toKhz - axis.fromKhz);
  eachProduct(analysis, (family, khz) => {
    if (khz >= axis.fromKhz && khz <= axis.toKhz)
      counts[family]![Math.floor((khz - axis.fromKhz) * perKhz)]! += 1;
  });
  const hit = hitPixels(analysis, axis);
  return FAMILIES.flatMap((name, family) =>
    [...counts[family]!.entries()]
      .filter(([, count]) => count > 0)
      .map(([xPx, count]) => ({ family: name, xPx, count, hits: hit.has(`${name} ${xPx}`) })),
  );
}

function eachProduct({ carriers, guards }: Analysis, visit: (family: number, khz: number) => void): void {
  const on = carriers.filter(({ transmitting }) => transmitting).map(({ khz }: Carrier) => khz);
  on.forEach((a, one) => {
    on.forEach((b, two) => {
      if (one === two) return;
      if (guards.twoToneThirdKhz > 0) visit(1, 2 * a - b);
      if (guards.twoToneFifthKhz > 0) visit(3, 3 * a - 2 * b);
      if (guards.threeToneThirdKhz === 0 || two < one) return;
      for (let three = 0; three < on.length; three += 1)
        if (three !== one && three !== two) visit(2, a + b - on[three]!);
    });
  });
}

function hitPixels({ held, hits, carriers }: Analysis, axis: FrequencyAxis): ReadonlySet<string> {
  const pixels = new Set<string>();
  const add = (family: Family, khz: number): void => {
    pixels.add(`${family} ${Math.floor(xExact(axis, khz))}`);
  };
  if (held) for (const hit of held) add(FAMILIES[familyOf(hit)]!, productKhzOf(hit, carriers));
  else for (const hit of hits) add(hit.family, hit.productKhz);
  return pixels;
}

const xExact = ({ fromKhz, toKhz, widthPx }: FrequencyAxis, khz: number): number =>
  (khz - fromKhz) * (widthPx / (toKhz - fromKhz));
