import type { Day, PartId } from '../day/model.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { settingsNow } from '../day/settings/settings.ts';
import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import { cleanLine } from './clean-text.ts';
import { isolated } from './isolated.ts';
import type { OnRecorder } from './on-recorders.ts';
import { runsOf, type SettingRun, type SettingRuns, settingRuns } from './setting-runs.ts';

/** A recorder of a day with several, and the takes with sound that it has. */
export interface RecorderRun {
  readonly id: PartId;
  readonly name: string;
  readonly has: number;
  readonly of: number;
  /** The takes in a row that it has, by the first and the last of them. */
  readonly runs: readonly Omit<SettingRun, 'text'>[];
  /** The sound rolls it made, in order. */
  readonly rolls: readonly string[];
  /** From which take to which each was in it; empty text for takes without a roll. */
  readonly rollRuns: readonly SettingRun[];
  /** What it was set to, and from which take to which. */
  readonly set: SettingRuns;
  /** The takes that it does not have, in order. */
  readonly without: readonly string[];
}

/** A take as far as its recorders go. */
interface OnRecorders {
  readonly text: string;
  readonly kind: string;
  readonly recorders: readonly OnRecorder[];
}

/** What each recorder has, the first one first; empty on a day with one recorder. */
export function recorderRuns(day: Day, takes: readonly OnRecorders[]): RecorderRun[] {
  if (day.rig.recorders.length === 0) return [];
  const recorded = takes.filter(({ kind }) => kind !== 'mos');
  return recordersOf(day).map(({ id, name }) => {
    const on = recorded.flatMap(({ text, kind, recorders }) =>
      recorders.filter((one) => one.id === id).map(({ roll, set }) => ({ text, kind, roll, set })),
    );
    const isOn = ({ recorders }: OnRecorders): boolean => recorders.some((one) => one.id === id);
    return {
      id,
      name: cleanLine(name),
      has: on.length,
      of: recorded.length,
      runs: runsOf(recorded, (take) => (isOn(take) ? 'on' : ''), isolated).filter(({ text }) => text),
      rolls: [...new Set(on.map(({ roll }) => roll))].filter(Boolean),
      rollRuns: runsOf(on, ({ roll }) => roll, isolated),
      set: settingRuns(on, settingsNow(day, id), isolated),
      without: recorded.filter((take) => !isOn(take)).map(({ text }) => text),
    };
  });
}

/** The main recorder along the day, by name. */
export const mainRuns = (takes: readonly OnRecorders[]): SettingRun[] =>
  runsOf(
    takes.filter(({ recorders }) => recorders.length > 0),
    ({ recorders }) => recorders[0]!.name,
    isolated,
  );

/** The takes that the first recorder does not have: only a backup does, which records the same. */
export const onBackupOnly = <Taken extends OnRecorders>(takes: readonly Taken[]): Taken[] =>
  takes.filter(
    ({ recorders }) =>
      recorders.length > 0 &&
      recorders.every(({ id, recordsAs }) => id !== FIRST_RECORDER && recordsAs === FIRST_RECORDER),
  );
