import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity, metres } from '../quantity.ts';
import { loadPoint } from './constant-power.ts';

/** Ohms per km of one copper conductor at 20 °C by AWG, from a public wire table. */
export const WIRES: Readonly<Record<number, number>> = {
  10: 3.28,
  12: 5.21,
  14: 8.28,
  16: 13.2,
  18: 20.9,
  20: 33.2,
  22: 52.9,
};

/** Flexible-cord ratings by AWG, lowest and highest of the usual ones (order of NEC 400.5, from memory). */
export const CORD_AMPS: Readonly<Record<number, readonly [number, number]>> = {
  12: [20, 25],
  14: [15, 18],
  16: [10, 13],
  18: [7, 10],
};

/** Keep the drop within this fraction of the supply (common practice, no source). */
export const DROP_AIM = 0.03;

export type RunCaution = 'drop-above-aim' | 'below-device-minimum' | 'above-cord-rating' | 'no-cord-rating';

export interface CartRun {
  readonly volts: number;
  readonly awg: number;
  /** One way; the current goes out and back. */
  readonly metres: number;
  readonly load: { readonly amps: number } | { readonly watts: number };
  readonly deviceMinVolts?: number;
}

export interface CartRunReport {
  readonly loopOhms: number;
  readonly amps: number;
  readonly loadVolts: number;
  readonly dropVolts: number;
  readonly dropPercent: number;
  readonly lossWatts: number;
  /** What the supply gives: the load, and what is lost in the lead. */
  readonly supplyWatts: number;
  readonly cautions: readonly RunCaution[];
}

/**
 * A DC lead on the cart with a load of constant current or constant power. Problems: a gauge not in the
 * table, a number out of range, a load that takes all the volts. Example: 13 V, AWG 18, 3 m, 5 A drops 0.627
 * V, 4.8 %.
 */
export function cartRun(run: CartRun): Result<CartRunReport> {
  const { volts, awg, load, deviceMinVolts } = run;
  const perKm = WIRES[awg];
  if (perKm === undefined) return fail({ code: 'unknown-gauge', awg: String(awg) });
  const problem = firstBadQuantity([
    { field: 'volts', value: volts, min: 0.1, max: 60 },
    metres(run.metres),
    { field: 'deviceMinVolts', value: deviceMinVolts ?? 0, min: 0, max: 60 },
  ]);
  if (problem) return fail(problem);
  const loopOhms = (2 * perKm * run.metres) / 1000;
  const point =
    'watts' in load ? loadPoint(volts, loopOhms, load.watts) : currentPoint(volts, loopOhms, load.amps);
  if (!point.ok) return point;
  const dropVolts = volts - point.value.loadVolts;
  return ok({
    loopOhms,
    ...point.value,
    dropVolts,
    dropPercent: (dropVolts / volts) * 100,
    supplyWatts: volts * point.value.amps,
    cautions: runCautions(run, point.value.loadVolts, point.value.amps),
  });
}

function currentPoint(
  volts: number,
  ohms: number,
  amps: number,
): Result<Pick<CartRunReport, 'loadVolts' | 'amps' | 'lossWatts'>> {
  const problem = firstBadQuantity([{ field: 'amps', value: amps, min: 0.001, max: 200 }]);
  if (problem) return fail(problem);
  if (amps * ohms >= volts) return fail({ code: 'current-beyond-lead', amps, mostAmps: volts / ohms });
  return ok({ loadVolts: volts - amps * ohms, amps, lossWatts: amps * amps * ohms });
}

function runCautions(run: CartRun, loadVolts: number, amps: number): readonly RunCaution[] {
  const cautions: RunCaution[] = [];
  if (run.volts - loadVolts > run.volts * DROP_AIM) cautions.push('drop-above-aim');
  if (run.deviceMinVolts !== undefined && loadVolts < run.deviceMinVolts)
    cautions.push('below-device-minimum');
  const cord = CORD_AMPS[run.awg];
  if (!cord) cautions.push('no-cord-rating');
  else if (amps > cord[0]) cautions.push('above-cord-rating');
  return cautions;
}

export interface WeakestLink {
  readonly amps: number;
  readonly limitedBy: 'wire' | 'connector' | 'device';
}

/**
 * The largest fuse at the battery: the lowest of wire, connector and device. The wire counts with the low end
 * of the cord ratings; a gauge without one is `no-cord-rating`. A caution, not a design. Example: AWG 18,
 * connector 10 A, device 5 A gives 5 A, limited by the device.
 */
export function fuseLimit(lead: {
  readonly awg: number;
  readonly connectorAmps?: number;
  readonly deviceAmps?: number;
}): Result<WeakestLink> {
  const cord = CORD_AMPS[lead.awg];
  if (!cord) return fail({ code: 'no-cord-rating', awg: String(lead.awg) });
  const links: WeakestLink[] = [{ amps: cord[0], limitedBy: 'wire' }];
  if (lead.connectorAmps !== undefined) links.push({ amps: lead.connectorAmps, limitedBy: 'connector' });
  if (lead.deviceAmps !== undefined) links.push({ amps: lead.deviceAmps, limitedBy: 'device' });
  const problem = firstBadQuantity(
    links.map(({ amps, limitedBy }) => ({ field: `${limitedBy}Amps`, value: amps, min: 0.01, max: 200 })),
  );
  if (problem) return fail(problem);
  return ok(links.reduce((weakest, link) => (link.amps < weakest.amps ? link : weakest)));
}
