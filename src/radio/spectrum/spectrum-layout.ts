import type { Carrier } from '../carrier.ts';
import type { Analysis } from '../intermodulation/analysis.ts';
import { FAMILIES, type Family, type Hit } from '../intermodulation/hit.ts';
import {
  axisFor,
  type FrequencyAxis,
  isWithin,
  lengthOf,
  type Stretch,
  type Tick,
  ticksOf,
  xOf,
} from './frequency-axis.ts';
import { labelRows } from './label-rows.ts';
import { type ProductColumn, productColumns } from './product-columns.ts';

/** A range on the axis. */
export interface Band {
  readonly xPx: number;
  readonly widthPx: number;
}

export interface CarrierMark {
  readonly id: string;
  readonly name: string;
  readonly khz: number;
  readonly xPx: number;
  readonly labelLeftPx: number;
  readonly labelWidthPx: number;
  /** 0 is the row next to the axis. */
  readonly labelRow: number;
  readonly transmitting: boolean;
  readonly victim: boolean;
  readonly hitCount: number;
}

export interface GuardBand extends Band {
  readonly carrierId: string;
  readonly family: Family;
}

export interface HitMark {
  readonly hit: Hit;
  readonly xPx: number;
  readonly victimXPx: number;
}

export interface SpectrumLayout {
  readonly axis: FrequencyAxis | undefined;
  readonly ticks: readonly Tick[];
  readonly carriers: readonly CarrierMark[];
  /** Around each listening carrier, the distance each enabled family must keep. */
  readonly guards: readonly GuardBand[];
  readonly products: readonly ProductColumn[];
  readonly hits: readonly HitMark[];
  readonly blocks: readonly (Band & { readonly name: string })[];
  readonly labelRowCount: number;
}

/** How lines differ without colour: their share of a carrier's height, and dashes (empty: solid). */
export const FAMILY_LINES: Readonly<Record<Family, { heightShare: number; dashesPx: readonly number[] }>> = {
  spacing: { heightShare: 1, dashesPx: [] },
  'two-tone-third': { heightShare: 0.65, dashesPx: [6, 3] },
  'three-tone-third': { heightShare: 0.45, dashesPx: [2, 2] },
  'two-tone-fifth': { heightShare: 0.3, dashesPx: [1, 3] },
};

const LETTER_PX = 7;
const LABEL_GAP_PX = 4;

const EMPTY: SpectrumLayout = {
  axis: undefined,
  ticks: [],
  carriers: [],
  guards: [],
  products: [],
  hits: [],
  blocks: [],
  labelRowCount: 0,
};

/**
 * The plan as a picture in numbers: carriers, guards, products and hits on a frequency axis `widthPx` wide,
 * with label rows that never overlap; only one range, if given. Pixels are rounded to tenths. Without
 * carriers or width the picture is empty. `spectrumLayout(analysis, 600).carriers[0]` → { xPx: 42.9,
 * labelRow: 0, … }
 */
export function spectrumLayout(
  analysis: Analysis,
  widthPx: number,
  letterPx = LETTER_PX,
  stretch?: Stretch,
): SpectrumLayout {
  const axis = axisFor(analysis, widthPx, stretch);
  if (!axis) return EMPTY;
  const carriers = carrierMarks(
    analysis,
    axis,
    letterPx > 0 && Number.isFinite(letterPx) ? letterPx : LETTER_PX,
    stretch,
  );
  return {
    axis,
    ticks: ticksOf(axis),
    carriers,
    guards: guardBands(analysis, axis, stretch),
    products: productColumns(analysis, axis),
    hits: hitMarks(analysis, axis, stretch),
    blocks: blockBands(analysis, axis),
    labelRowCount: Math.max(...carriers.map(({ labelRow }) => labelRow)) + 1,
  };
}

function carrierMarks(
  analysis: Analysis,
  axis: FrequencyAxis,
  letterPx: number,
  stretch: Stretch | undefined,
): readonly CarrierMark[] {
  const shown = analysis.carriers
    .map((carrier, at) => ({ ...carrier, hitCount: analysis.hitsOnCarrier[at]! }))
    .filter(({ khz }) => isWithin(stretch, khz));
  const labels = shown.map(({ khz, name }) => ({
    middlePx: xOf(axis, khz),
    widthPx: Math.max(1, [...name].length) * letterPx,
  }));
  const placed = labelRows(labels, axis.widthPx, LABEL_GAP_PX);
  return shown.map(({ id, name, khz, transmitting, victim, hitCount }, at) => ({
    id,
    name,
    khz,
    xPx: labels[at]!.middlePx,
    labelLeftPx: placed[at]!.leftPx,
    labelWidthPx: labels[at]!.widthPx,
    labelRow: placed[at]!.row,
    transmitting,
    victim,
    hitCount,
  }));
}

function guardBands(
  { carriers, guards }: Analysis,
  axis: FrequencyAxis,
  stretch: Stretch | undefined,
): readonly GuardBand[] {
  const reachOf = (carrier: Carrier): Record<Family, number> => ({
    spacing: carrier.spacingKhz ?? guards.carrierKhz,
    'two-tone-third': guards.twoToneThirdKhz,
    'three-tone-third': guards.threeToneThirdKhz,
    'two-tone-fifth': guards.twoToneFifthKhz,
  });
  return carriers
    .filter(({ victim, khz }) => victim && isWithin(stretch, khz))
    .flatMap((carrier) => {
      const reach = reachOf(carrier);
      return FAMILIES.filter((family) => reach[family] > 0).map((family) => ({
        carrierId: carrier.id,
        family,
        xPx: xOf(axis, carrier.khz - reach[family]),
        widthPx: lengthOf(axis, 2 * reach[family]),
      }));
    });
}

function hitMarks(
  { hits, carriers }: Analysis,
  axis: FrequencyAxis,
  stretch: Stretch | undefined,
): readonly HitMark[] {
  const at = new Map(carriers.map(({ id, khz }) => [id, khz]));
  const shown = hits.filter(({ victimId }) => isWithin(stretch, at.get(victimId)!));
  return shown.map((hit) => ({
    hit,
    xPx: xOf(axis, hit.productKhz),
    victimXPx: xOf(axis, at.get(hit.victimId)!),
  }));
}

/** Occupied blocks, cut to the axis. */
const blockBands = (
  { options }: Analysis,
  axis: FrequencyAxis,
): readonly (Band & { readonly name: string })[] =>
  options.occupied
    .map(({ name, fromKhz, toKhz }) => ({
      name,
      from: Math.max(fromKhz, axis.fromKhz),
      to: Math.min(toKhz, axis.toKhz),
    }))
    .filter(({ from, to }) => from < to)
    .map(({ name, from, to }) => ({ name, xPx: xOf(axis, from), widthPx: lengthOf(axis, to - from) }));
