import type { Day, PartId, TakeId } from '../day/model.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import { cleanLine } from './clean-text.ts';

/** A recorder of a day with several, and the takes with sound that it has. */
export interface RecorderRun {
  readonly name: string;
  readonly has: number;
  readonly of: number;
  /** The sound rolls it made, in order. */
  readonly rolls: readonly string[];
  /** The takes that it does not have, in order. */
  readonly without: readonly string[];
}

/** A recorder that a take is on, and the sound roll in it; empty if not entered. */
export interface OnRecorder {
  /** Two phones may have given two recorders one name. */
  readonly id: PartId;
  readonly name: string;
  readonly roll: string;
}

/** A take as far as its recorders go. */
interface OnRecorders {
  readonly takeId: TakeId;
  readonly text: string;
  readonly kind: string;
  readonly recorders: readonly OnRecorder[];
}

/** What each recorder has, the first one first; empty on a day with one recorder. */
export function recorderRuns(day: Day, takes: readonly OnRecorders[]): RecorderRun[] {
  if (day.rig.recorders.length === 0) return [];
  const recorded = takes.filter(({ kind }) => kind !== 'mos');
  return recordersOf(day).map(({ id, name }) => {
    const on = recorded.flatMap(({ recorders }) => recorders.filter((one) => one.id === id));
    const without = recorded
      .filter(({ recorders }) => recorders.every((one) => one.id !== id))
      .map(({ text }) => text);
    const rolls = [...new Set(on.map(({ roll }) => roll))].filter(Boolean);
    return { name: cleanLine(name), rolls, has: on.length, of: recorded.length, without };
  });
}

/** The takes that the first recorder does not have: only a backup does. */
export const onBackupOnly = <Taken extends OnRecorders>(takes: readonly Taken[]): Taken[] =>
  takes.filter(({ recorders }) => recorders.length > 0 && recorders.every(({ id }) => id !== FIRST_RECORDER));
