import type { Day, PartId } from '../../day/model.ts';
import { nameOfFirst, recordersOf } from '../../day/recorders/rolling.ts';
import { isSettingSaid, settingsBefore } from '../../day/settings/settings.ts';
import type { HeaderFields } from '../../facts/kinds/day-described.ts';
import {
  FIRST_RECORDER,
  type RecorderSettings,
  SETTING_FIELDS,
  type SettingField,
} from '../../facts/kinds/recorder-set.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed, together } from '../command.ts';
import { describeDay, settingsProblem } from '../day/describe.ts';
import { changeRoll } from './log-takes.ts';

/**
 * Sets a recorder from a place on the line on; what is left out, or is so there already, stays. Until anything
 * is recorded, what is said of the first one holds for the whole day.
 */
export function setRecorder(
  day: Day,
  settings: RecorderSettings,
  at: Placing = {},
  recorder: PartId = FIRST_RECORDER,
): CommandResult {
  const wrong = settingsProblem(settings);
  if (wrong) return wrong;
  if (!recordersOf(day).some(({ id }) => id === recorder)) return missing('recorder', recorder);
  if (at.before !== undefined && !day.takes.has(at.before)) return missing('take', at.before);
  const was = settingsBefore(day, at.before, recorder);
  const said = onlySettings(settings, (field) => settings[field] !== was[field]);
  if (Object.keys(said).length === 0) return fail({ code: 'nothing-changed' });
  const isFirst = recorder === FIRST_RECORDER;
  if (isFirst && day.takeOrder.length === 0 && !isSettingSaid(day)) return describeDay(said);
  return ok([placed({ kind: 'recorder-set', ...(!isFirst && { recorder }), settings: said }, at)]);
}

const onlySettings = (fields: HeaderFields, isWanted: (field: SettingField) => boolean): RecorderSettings =>
  Object.fromEntries(
    SETTING_FIELDS.filter((field) => fields[field] !== undefined && isWanted(field)).map((field) => [
      field,
      fields[field],
    ]),
  );

/** What was typed about a day: some of it holds for the whole day, some from a place on the line on. */
export interface HeadTyped {
  readonly fields: HeaderFields;
  /** From which take on the recorder is set so; undefined means from now on. */
  readonly setBefore?: string | undefined;
  readonly roll?: { readonly name: string; readonly before?: string | undefined } | undefined;
}

/** Changes the head of the day as one action. */
export function changeHead(day: Day, { fields, setBefore, roll }: HeadTyped): CommandResult {
  const settings = onlySettings(fields, () => true);
  const renamed = fields.recorder === undefined ? undefined : nameOfFirst({ recorder: fields.recorder });
  const isTaken = day.rig.recorders.some(({ name }) => name === renamed);
  if (isTaken) return fail({ code: 'name-taken', name: renamed! });
  const wholeDay: HeaderFields = { ...fields };
  for (const field of SETTING_FIELDS) delete wholeDay[field];
  const parts = [
    ...(Object.keys(wholeDay).length > 0 ? [describeDay(wholeDay)] : []),
    ...(Object.keys(settings).length > 0 ? [setRecorder(day, settings, { before: setBefore })] : []),
    ...(roll ? [changeRoll(roll.name, { before: roll.before })] : []),
  ];
  // What is so already is no reason to refuse the rest.
  const changes = parts.filter((part) => part.ok || part.problem.code !== 'nothing-changed');
  return changes.length > 0 ? together(...changes) : fail({ code: 'nothing-changed' });
}
