import type { Day } from '../../day/model.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import type { RunFields } from '../../facts/kinds/runs-described.ts';
import { fail, type Result } from '../../shared/result.ts';
import { type AudioStream, linkLoad } from './audio-network.ts';
import { runtimeHours, USABLE_FRACTIONS } from './battery-energy.ts';
import { type CartRunReport, cartRun } from './direct-current.ts';
import { KNOWN_GOOD_LEADS, type NetworkLeadReport, networkLead, powerClassOf } from './ethernet-power.ts';
import { CABLES, type CableId } from './network-cables.ts';

type FilledRun = {
  readonly [Field in Exclude<keyof RunFields, 'struck'>]-?: Exclude<RunFields[Field], undefined>;
};

/** A run of the day with everything a computation needs. */
export interface DayRun extends FilledRun {
  readonly id: string;
}

/** Defaults of a new run: a remote box on 60 m of AWG 23, class 4; a cart lead of 2 m AWG 16 at 13 V. */
export const RUN_DEFAULTS: Omit<DayRun, 'id' | 'type' | 'name'> = {
  metres: 60,
  watts: null,
  cable: 'awg-23',
  powerClass: 4,
  celsius: 20,
  connectorOhms: 0.5,
  channels: 0,
  channelsAStream: 8,
  samplesAPacket: 48,
  linkMbps: 100,
  volts: 13,
  awg: 16,
  deviceMinVolts: null,
  batteryWattHours: null,
  recorder: null,
};

/** The day's runs, oldest description first, without removed ones. */
export const runsOf = (day: Day): DayRun[] =>
  [...day.upkeep.runs]
    .filter(([, { struck }]) => !struck)
    .map(([id, fields]) => {
      const type = fields.type ?? 'network';
      const name = type === 'dc' ? 'Cart lead' : 'Far box';
      return { ...RUN_DEFAULTS, name, ...(fields as Partial<FilledRun>), type, id };
    });

const isCable = (cable: string): cable is CableId => Object.hasOwn(CABLES, cable);

export interface NetworkRun {
  readonly lead: Result<NetworkLeadReport>;
  /** The lowest voltage the class's devices must accept. */
  readonly deviceMinVolts: number | undefined;
  /** Its audio as a share of the link; null if it carries none. */
  readonly sound: Result<{ readonly wireMbps: number; readonly percent: number }> | null;
}

/** A remote box's lead, computed: power at its end and, if it carries audio, the load on the link. */
export function networkRun(day: Day, run: DayRun): NetworkRun {
  const { metres, celsius, connectorOhms, powerClass, watts } = run;
  // A cable that only a newer version knows is computed as the thinnest known here.
  const cable = isCable(run.cable) ? run.cable : 'awg-26';
  const found = powerClassOf(powerClass);
  return {
    lead: networkLead({
      powerClass,
      cable,
      metres,
      celsius,
      connectorOhms,
      ...(watts !== null && { deviceWatts: watts }),
    }),
    deviceMinVolts: found.ok ? found.value.deviceMinVolts : undefined,
    sound: run.channels > 0 ? linkLoad(streamsOf(day, run), run.linkMbps) : null,
  };
}

export interface KnownLead {
  readonly category: string;
  readonly feet: number;
  readonly metres: number;
  readonly lead: Result<NetworkLeadReport>;
}

/**
 * Lengths that have worked for a remote box (common practice, no source), computed with this run's class,
 * load and temperature.
 */
export const knownLeads = (run: DayRun): KnownLead[] =>
  KNOWN_GOOD_LEADS.map(({ category, feet, metres, cable }) => ({
    category,
    feet,
    metres,
    lead: networkLead({
      powerClass: run.powerClass,
      cable,
      metres,
      celsius: run.celsius,
      connectorOhms: run.connectorOhms,
      ...(run.watts !== null && { deviceWatts: run.watts }),
    }),
  }));

/** Whole streams and a last one for what is left over. */
export function streamsOf(day: Day, { channels, channelsAStream, samplesAPacket }: DayRun): AudioStream[] {
  const { sampleRate } = settingsNow(day);
  const stream = (count: number): AudioStream => ({
    channels: count,
    sampleRate,
    samplesPerPacket: samplesAPacket,
  });
  const whole = Array.from({ length: Math.floor(channels / channelsAStream) }, () => stream(channelsAStream));
  const rest = channels % channelsAStream;
  return rest > 0 ? [...whole, stream(rest)] : whole;
}

export interface DcRun {
  readonly lead: Result<CartRunReport>;
  /** Hours on the battery with the usual fraction of its rating; null without a battery. */
  readonly runtime: Result<number> | null;
}

/**
 * A DC lead on the cart, computed; the load is 10 W by default. What the lead loses comes out of the battery
 * too. A lead that cannot carry the load, or leaves the device too few volts, has no hours, whatever the
 * battery holds.
 */
export function dcRun(run: DayRun): DcRun {
  const { volts, awg, metres, watts, deviceMinVolts, batteryWattHours } = run;
  const lead = cartRun({
    volts,
    awg,
    metres,
    load: { watts: watts ?? 10 },
    ...(deviceMinVolts !== null && { deviceMinVolts }),
  });
  return {
    lead,
    runtime: batteryWattHours === null ? null : hoursOn(batteryWattHours, lead, deviceMinVolts),
  };
}

function hoursOn(
  wattHours: number,
  lead: Result<CartRunReport>,
  deviceMinVolts: number | null,
): Result<number> {
  if (!lead.ok) return lead;
  const { loadVolts, supplyWatts, cautions } = lead.value;
  if (deviceMinVolts !== null && cautions.includes('below-device-minimum'))
    return fail({ code: 'device-below-minimum', volts: loadVolts, deviceMinVolts });
  const [usable] = USABLE_FRACTIONS['lithium-ion'];
  return runtimeHours({ wattHours, watts: supplyWatts, usable });
}
