import { fail, ok, type Result } from '../../shared/result.ts';
import { firstBadQuantity, metres } from '../quantity.ts';
import { type LoadPoint, loadPoint } from './constant-power.ts';
import { type CableId, conductorOhms, feetToMetres } from './network-cables.ts';

/** A power class of IEEE 802.3 clauses 33 and 145. Watts are the published, rounded ones. */
export interface PowerClass {
  readonly id: number;
  readonly type: 1 | 2 | 3 | 4;
  readonly pairs: 2 | 4;
  readonly sourceWatts: number;
  readonly deviceWatts: number;
  readonly sourceMinVolts: number;
  readonly deviceMinVolts: number;
  /** The loop the class was designed for: one pairset, or both together if four pairs carry it. */
  readonly loopLimitOhms: number;
}

const powerClass = (
  id: number,
  type: PowerClass['type'],
  sourceWatts: number,
  deviceWatts: number,
  sourceMinVolts: number,
  deviceMinVolts: number,
  loopLimitOhms: number,
): PowerClass => ({
  id,
  type,
  pairs: id >= 5 ? 4 : 2,
  sourceWatts,
  deviceWatts,
  sourceMinVolts,
  deviceMinVolts,
  loopLimitOhms,
});

/** Classes 0 to 8. The least device voltages of classes 5 and 7 are from memory. */
export const POWER_CLASSES: readonly PowerClass[] = [
  powerClass(0, 1, 15.4, 12.95, 44, 37, 20),
  powerClass(1, 1, 4, 3.84, 44, 37, 20),
  powerClass(2, 1, 7, 6.49, 44, 37, 20),
  powerClass(3, 1, 15.4, 12.95, 44, 37, 20),
  powerClass(4, 2, 30, 25.5, 50, 42.5, 12.5),
  powerClass(5, 3, 45, 40, 50, 44.3, 6.25),
  powerClass(6, 3, 60, 51, 50, 42.5, 6.25),
  powerClass(7, 4, 75, 62, 52, 42.9, 6.25),
  powerClass(8, 4, 90, 71.3, 52, 41.1, 6.25),
];

/** The longest channel for data, 90 m solid and 10 m of cords (TIA-568, ISO/IEC 11801). */
export const DATA_LIMIT_METRES = 100;

// The published class watts are rounded to at most four digits, so slightly exceeding one is not a fault.
const ROUNDING = 1.005;

/** The class, or `no-such-class`. Example: 4 is 30 W at the source and 25.5 W at the device. */
export function powerClassOf(id: number): Result<PowerClass> {
  const found = POWER_CLASSES.find((one) => one.id === id);
  return found ? ok(found) : fail({ code: 'no-such-class', class: String(id) });
}

export interface NetworkLead {
  readonly powerClass: number;
  readonly cable: CableId;
  readonly metres: number;
  readonly celsius?: number;
  /** Extra loop ohms for connectors: 0.2 to 0.5 in all (common practice, no source); 0.5 by default. */
  readonly connectorOhms?: number;
  /** The device's consumption; by default the most its class allows. */
  readonly deviceWatts?: number;
}

export type LeadLimit = 'data-length' | 'device-voltage' | 'loop-resistance' | 'source-power' | 'no-solution';

export interface LimitLength {
  readonly limit: LeadLimit;
  /** The length at which this limit is reached; 0 if connectors alone exceed it. */
  readonly metres: number;
}

export interface NetworkLeadReport extends Partial<LoadPoint> {
  readonly loopOhms: number;
  readonly deviceWatts: number;
  /** Volts above the device's minimum, negative below; missing if the lead cannot carry the load. */
  readonly marginVolts?: number;
  readonly broken: readonly LeadLimit[];
  /** Every limit by the length that reaches it: the first is what fails first. */
  readonly limits: readonly LimitLength[];
}

/**
 * A powered network lead at the source's minimum voltage: volts, amps and loss at the device, the limits
 * already exceeded, and at what length each limit would be. A load too big for the lead is an exceeded limit,
 * not a failure. Example: class 4, `tia-solid-limit`, 100 m, no connectors gives 44.64 V with 3.06 W lost;
 * data fails first.
 */
export function networkLead(lead: NetworkLead): Result<NetworkLeadReport> {
  const found = powerClassOf(lead.powerClass);
  if (!found.ok) return found;
  const one = found.value;
  const { connectorOhms = 0.5, deviceWatts = one.deviceWatts, celsius = 20 } = lead;
  const problem = firstBadQuantity([
    metres(lead.metres),
    { field: 'connectorOhms', value: connectorOhms, min: 0, max: 20 },
    { field: 'deviceWatts', value: deviceWatts, min: 0.1, max: one.deviceWatts },
  ]);
  if (problem) return fail(problem);
  const perMetre = conductorOhms(lead.cable, 1, celsius);
  if (!perMetre.ok) return perMetre;
  // With two conductors out and two back, one pairset's loop equals one conductor; four pairs halve it again.
  const loopPerMetre = perMetre.value / (one.pairs / 2);
  const loopOhms = loopPerMetre * lead.metres + connectorOhms;
  const limits = limitLengths(one, deviceWatts, loopPerMetre, connectorOhms);
  const point = loadPoint(one.sourceMinVolts, loopOhms, deviceWatts);
  return ok({
    loopOhms,
    deviceWatts,
    ...(point.ok && { ...point.value, marginVolts: point.value.loadVolts - one.deviceMinVolts }),
    broken: limits.filter((limit) => lead.metres > limit.metres).map(({ limit }) => limit),
    limits,
  });
}

function limitLengths(
  one: PowerClass,
  deviceWatts: number,
  loopPerMetre: number,
  connectorOhms: number,
): readonly LimitLength[] {
  const volts = one.sourceMinVolts;
  const fullAmps = (one.sourceWatts * ROUNDING) / volts;
  const loops: Record<Exclude<LeadLimit, 'data-length'>, number> = {
    'device-voltage': ((volts - one.deviceMinVolts) * one.deviceMinVolts) / deviceWatts,
    'loop-resistance': one.loopLimitOhms,
    'source-power': (volts - deviceWatts / fullAmps) / fullAmps,
    'no-solution': (volts * volts) / (4 * deviceWatts),
  };
  const metresFor = (ohms: number): number => Math.max(0, (ohms - connectorOhms) / loopPerMetre);
  const byPower = Object.entries(loops).map(([limit, ohms]) => ({
    limit: limit as LeadLimit,
    metres: metresFor(ohms),
  }));
  return [{ limit: 'data-length' as LeadLimit, metres: DATA_LIMIT_METRES }, ...byPower].sort(
    (a, b) => a.metres - b.metres,
  );
}

/** Lengths that have worked for a powered receiver box on set: common practice, no source. */
export const KNOWN_GOOD_LEADS: readonly {
  readonly category: string;
  readonly feet: number;
  readonly metres: number;
  readonly cable: CableId;
}[] = [
  { category: 'cat 6', feet: 250, metres: feetToMetres(250), cable: 'awg-23' },
  { category: 'cat 7', feet: 300, metres: feetToMetres(300), cable: 'awg-23' },
];
