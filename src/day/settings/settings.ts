import { FIRST_RECORDER, SETTING_FIELDS, type SettingField } from '../../facts/kinds/recorder-set.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { sameLabel } from '../../time/label.ts';
import type { RateId } from '../../time/rate.ts';
import { countableRate, type WorkingHeader, workingHeader } from '../header.ts';
import type { Day, Header, PartId, Stamp, Take, TakeId } from '../model.ts';
import { mainAtTake, mainNow } from '../recorders/rolling.ts';
import { heldAtTake, heldNow, isSaidOf, type SaidSettings, type Settings } from './held-settings.ts';

export type { SaidSettings, Settings } from './held-settings.ts';

/** What is enough to say how things are now. */
type Now = Pick<Day, 'header' | 'tail' | 'rig'>;

/** Whether anything of a recorder was ever said on the line; else it is as the header has it. */
export const isSettingSaid = ({ tail }: Pick<Day, 'tail'>, recorder: PartId = FIRST_RECORDER): boolean =>
  isSaidOf(tail, recorder);

/** What a recorder is set to now; the main one if none is named. */
export const settingsNow = (day: Now, recorder: PartId = mainNow(day)): Settings =>
  heldNow(day, recorder).settings;

/**
 * What a recorder was set to when a take was recorded, the main one of the take if none is named: everything
 * about that take goes by this. Takes in a row for which the same holds share one object.
 */
export const settingsAtTake = (day: Day, take: TakeId, recorder: PartId = mainAtTake(day, take)): Settings =>
  heldAtTake(day, take, recorder).settings;

/** The same just before a take, or now if none is given: where a new change will go. */
export const settingsBefore = (day: Day, take: TakeId | undefined, recorder?: PartId): Settings =>
  take === undefined ? settingsNow(day, recorder) : settingsAtTake(day, take, recorder);

/** What the line says of a recorder at a take; what it does not say is as in the header. */
export const settingsSaidAt = (
  day: Day,
  take: TakeId,
  recorder: PartId = mainAtTake(day, take),
): SaidSettings => heldAtTake(day, take, recorder).said;

/** The rate that timecode is counted at now; null if only a newer version knows it. */
export const rateNow = (day: Now): RateId | null => countableRate(settingsNow(day));

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

/** The day's header with the settings that the first recorder has now, as the next day begins. */
export const headerNow = (day: Now): Header => ({
  ...day.header,
  ...settingsNow(day, FIRST_RECORDER),
});

/** The header that held at a take, to compute with; for the main recorder if none is named. */
export const workingAtTake = (day: Day, take: TakeId, otherwise: RateId, recorder?: PartId): WorkingHeader =>
  workingHeader({ header: { ...day.header, ...settingsAtTake(day, take, recorder) } }, otherwise);

/** The header that holds now, to compute with. */
export const workingNow = (day: Day, otherwise: RateId, recorder?: PartId): WorkingHeader =>
  workingHeader({ header: { ...day.header, ...settingsNow(day, recorder) } }, otherwise);

/** Whether a field of the header is one of the recorder's settings. */
export const isSetting = (field: string): field is SettingField => isOneOf(SETTING_FIELDS, field);
