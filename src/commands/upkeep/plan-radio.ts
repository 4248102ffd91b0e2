import type { Day, PartId } from '../../day/model.ts';
import { checkKhz } from '../../facts/kinds/frequency.ts';
import type { BandFields, CarrierFields, GuardFields } from '../../facts/kinds/radio-planned.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';

const WIDEST_GUARD_KHZ = 10_000;
const WIDEST_BAND_KHZ = 2_000_000;
const LONGEST_NAME = 200;

function wrongKhz(khz: number | null | undefined): Result<never> | undefined {
  if (khz === null || khz === undefined) return undefined;
  const checked = checkKhz(khz);
  return checked.ok ? undefined : checked;
}

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

function wrongDistance(guard: string, khz: number | null | undefined): Result<never> | undefined {
  if (khz === null || khz === undefined) return undefined;
  const fine = Number.isSafeInteger(khz) && khz >= 0 && khz <= WIDEST_GUARD_KHZ;
  return fine
    ? undefined
    : fail({ code: 'guard-unusable', guard, khz: finite(khz), mostKhz: WIDEST_GUARD_KHZ });
}

function wrongName(name: string | undefined): Result<never> | undefined {
  if (name === undefined) return undefined;
  if (name.trim() === '') return fail({ code: 'name-empty' });
  return name.length > LONGEST_NAME ? fail({ code: 'name-too-long', longest: LONGEST_NAME }) : undefined;
}

/** Sets distances to keep in whole kHz, 0 to 10 MHz; 0 disables a test. */
export function setGuards(guards: GuardFields): CommandResult {
  for (const [guard, khz] of Object.entries(guards)) {
    const wrong = typeof khz === 'number' ? wrongDistance(guard, khz) : undefined;
    if (wrong) return wrong;
  }
  return ok([{ kind: 'guards-set', guards }]);
}

/** Sets frequencies of transmitters in kHz, or (null) none: one pack, or a whole set in one action. */
export function setFrequencies(
  day: Day,
  tunings: readonly { readonly transmitter: PartId; readonly khz: number | null }[],
): CommandResult {
  if (tunings.length === 0) return fail({ code: 'nothing-chosen' });
  for (const { transmitter, khz } of tunings) {
    if (day.rig.byId.get(transmitter)?.type !== 'transmitter') return missing('transmitter', transmitter);
    const wrong = wrongKhz(khz);
    if (wrong) return wrong;
  }
  return ok(
    tunings.map(({ transmitter, khz }) => ({ kind: 'part-described', part: transmitter, fields: { khz } })),
  );
}

/** Marks transmitters as on the air, or off. */
export function switchTransmitters(day: Day, transmitters: readonly PartId[], on: boolean): CommandResult {
  const unknown = transmitters.find((id) => day.rig.byId.get(id)?.type !== 'transmitter');
  if (unknown !== undefined) return missing('transmitter', unknown);
  if (transmitters.length === 0) return fail({ code: 'nothing-chosen' });
  return ok([{ kind: 'transmitters-switched', transmitters: [...transmitters], on }]);
}

/** Describes something else that radiates. A new one needs a name and a frequency. */
export function describeCarrier(day: Day, carrier: string, fields: CarrierFields): CommandResult {
  const known = day.upkeep.carriers.get(carrier);
  if (!known && !fields.name?.trim()) return fail({ code: 'name-empty' });
  if (!known && !fields.khz) return fail({ code: 'frequency-empty' });
  const wrong =
    wrongName(fields.name) ?? wrongKhz(fields.khz) ?? wrongDistance('carrierKhz', fields.spacingKhz);
  return wrong ?? ok([{ kind: 'carrier-described', carrier, fields }]);
}

/** Describes a range of spectrum. A new one needs its use (by others, or for tuning) and both ends. */
export function describeBand(day: Day, band: string, fields: BandFields): CommandResult {
  const { use, fromKhz, toKhz, rasterKhz } = { ...day.upkeep.bands.get(band), ...fields };
  if (!use || !fromKhz || !toKhz) return fail({ code: 'band-without-ends' });
  const wrong =
    wrongName(fields.name || undefined) ??
    wrongKhz(fromKhz) ??
    wrongKhz(toKhz) ??
    wrongDistance('carrierKhz', fields.spacingKhz);
  if (wrong) return wrong;
  if (toKhz < fromKhz) return fail({ code: 'range-upside-down', fromKhz, toKhz });
  if (toKhz - fromKhz > WIDEST_BAND_KHZ)
    return fail({ code: 'range-too-wide', fromKhz, toKhz, mostKhz: WIDEST_BAND_KHZ });
  if (rasterKhz !== undefined && !(Number.isSafeInteger(rasterKhz) && rasterKhz > 0))
    return fail({ code: 'raster-unusable', rasterKhz: finite(rasterKhz) });
  return ok([{ kind: 'band-described', band, fields }]);
}

/** Marks a known range, such as a TV channel, as in use here, or as free again. */
export function markOccupied(
  day: Day,
  band: string,
  block: { readonly name: string; readonly fromKhz: number; readonly toKhz: number },
  occupied: boolean,
): CommandResult {
  if (!occupied && !day.upkeep.bands.has(band)) return missing('stretch', band);
  return occupied
    ? describeBand(day, band, { use: 'occupied', ...block, struck: false })
    : ok([{ kind: 'band-described', band, fields: { struck: true } }]);
}
