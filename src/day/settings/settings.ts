import { type RecorderSettings, SETTING_FIELDS, type SettingField } from '../../facts/kinds/recorder-set.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { sameLabel } from '../../time/label.ts';
import type { RateId } from '../../time/rate.ts';
import { alongTakes } from '../chain/along-takes.ts';
import { key, type LinkReader, setTo, writesOfItem } from '../chain/links.ts';
import { countableRate, filledHeader, type WorkingHeader, workingHeader } from '../header.ts';
import type { Day, Header, LineItem, Stamp, Take, TakeId } from '../model.ts';

/** What a recorder is set to at one place on the line. */
export type Settings = { readonly [Field in SettingField]: NonNullable<Header[Field]> };

/** Those of them that somebody said; the others are as in the header. */
export type SaidSettings = { readonly [Field in SettingField]?: RecorderSettings[Field] };

/** What held at takes in a row: what the line says, and with the rest as the day's header has it. */
interface Held {
  readonly said: SaidSettings;
  readonly settings: Settings;
}

interface HeldAtTakes {
  readonly atFirst: Held;
  readonly byTake: ReadonlyMap<TakeId, Held>;
}

const remembered = new WeakMap<Day, HeldAtTakes>();

const NO_TAKES: HeldAtTakes['byTake'] = new Map();

function heldAtTakes(day: Day): HeldAtTakes {
  const known = remembered.get(day);
  if (known) return known;
  const atFirst: Held = { said: {}, settings: settingsWith(day, {}) };
  const after = (held: Held, item: LineItem): Held => heldAfter(day, held, item);
  const found = { atFirst, byTake: isSettingSaid(day) ? alongTakes(day, atFirst, after) : NO_TAKES };
  remembered.set(day, found);
  return found;
}

const fieldOf = new Map(SETTING_FIELDS.map((field) => [key.set(field), field]));

function heldAfter(day: Day, held: Held, item: LineItem): Held {
  if (item.fact.kind !== 'recorder-set') return held;
  const written = writesOfItem(item, []).flatMap(([name, value]) => {
    const field = fieldOf.get(name);
    return field ? [[field, value] as const] : [];
  });
  if (written.length === 0) return held;
  const said: SaidSettings = { ...held.said, ...Object.fromEntries(written) };
  return { said, settings: settingsWith(day, said) };
}

function heldAtTake(day: Day, take: TakeId): Held {
  const { atFirst, byTake } = heldAtTakes(day);
  return byTake.get(take) ?? atFirst;
}

/** Whether anything of it was ever said on the line; days of earlier versions only have the header. */
export const isSettingSaid = ({ tail }: Pick<Day, 'tail'>): boolean =>
  SETTING_FIELDS.some((field) => setTo(tail, field));

function settingsWith(day: Pick<Day, 'header'>, said: SaidSettings): Settings {
  const header = filledHeader(day.header);
  return Object.fromEntries(
    SETTING_FIELDS.map((field) => [field, said[field] ?? header[field]]),
  ) as unknown as Settings;
}

const saidIn = (links: LinkReader): SaidSettings =>
  Object.fromEntries(SETTING_FIELDS.map((field) => [field, setTo(links, field)?.value]));

/** What the recorder is set to now. */
export const settingsNow = (day: Pick<Day, 'header' | 'tail'>): Settings =>
  settingsWith(day, saidIn(day.tail));

/**
 * What the recorder was set to when a take was recorded: everything about that take goes by this. Takes in a
 * row for which the same holds share one object.
 */
export const settingsAtTake = (day: Day, take: TakeId): Settings => heldAtTake(day, take).settings;

/** The same just before a take, or now if none is given: where a new change will go. */
export const settingsBefore = (day: Day, take: TakeId | undefined): Settings =>
  take === undefined ? settingsNow(day) : settingsAtTake(day, take);

/** What the line says of the recorder at a take; what it does not say is as in the header. */
export const settingsSaidAt = (day: Day, take: TakeId): SaidSettings => heldAtTake(day, take).said;

/** The rate that timecode is counted at now; null if only a newer version knows it. */
export const rateNow = (day: Pick<Day, 'header' | 'tail'>): RateId | null => countableRate(settingsNow(day));

/** The same at a take. */
export const rateAtTake = (day: Day, take: TakeId): RateId | null => countableRate(settingsAtTake(day, take));

/** The rate that the line itself says for a take; null on days whose header alone has one. */
export function rateSaidAt(day: Day, take: TakeId): RateId | null {
  const { timecodeRate } = settingsSaidAt(day, take);
  return timecodeRate === undefined ? null : countableRate({ timecodeRate });
}

/**
 * The start of a take at the rate that held for it. One that was stamped before that rate was entered keeps
 * the digits that the recorder showed.
 */
export function startOfTake(day: Day, { id, start }: Pick<Take, 'id' | 'start'>): Stamp | null {
  const rate = start && rateSaidAt(day, id);
  return start && rate && rate !== start.rate
    ? { frames: sameLabel(start.frames, start.rate, rate), rate }
    : start;
}

/** The day's header with the settings of now, as the next day begins. */
export const headerNow = (day: Pick<Day, 'header' | 'tail'>): Header => ({
  ...day.header,
  ...settingsNow(day),
});

/** The header that held at a take, to compute with. */
export const workingAtTake = (day: Day, take: TakeId, otherwise: RateId): WorkingHeader =>
  workingHeader({ header: { ...day.header, ...settingsAtTake(day, take) } }, otherwise);

/** The header that holds now, to compute with. */
export const workingNow = (day: Day, otherwise: RateId): WorkingHeader =>
  workingHeader({ header: headerNow(day) }, otherwise);

/** Whether a field of the header is one of the recorder's settings. */
export const isSetting = (field: string): field is SettingField => isOneOf(SETTING_FIELDS, field);
