import type { Day, Stamp, TakeId } from '../../day/model.ts';
import { rateNow, settingsNow } from '../../day/settings/settings.ts';
import { takeText } from '../../day/slate.ts';
import {
  currentSlate,
  nextNumber,
  nextTake,
  openTakes,
  ownOpenTake,
  slateAfter,
  takesInOrder,
} from '../../day/takes.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Slate, TakeFields, TakeKind } from '../../facts/kinds/take-logged.ts';
import { isOfDatabase } from '../../shared/ids.ts';
import { fail, ok } from '../../shared/result.ts';
import { type FollowedClock, timecodeAt, timeOfDayClock } from '../../time/followed-clock.ts';
import { sameLabel } from '../../time/label.ts';
import { msToFrames } from '../../time/timecode.ts';
import { type CommandResult, type Moment, missing, type Placing, placed } from '../command.ts';
import { needOfScene } from './need-of-scene.ts';

/**
 * The clock that stamps takes: the one tied to the recorder, or time of day before that. Null if this version
 * cannot count at the recorder's rate. If the rate was set since it was tied, the digits go on at the new one.
 */
export function clockFor(day: Day, now: Moment): FollowedClock | null {
  const rate = rateNow(day);
  const { clock } = day;
  if (!clock) return rate && timeOfDayClock(now.atMs, now.zone, rate);
  return rate && rate !== clock.rate
    ? { frames: sameLabel(clock.frames, clock.rate, rate), rate, atMs: clock.atMs }
    : clock;
}

const stampAt = (day: Day, now: Moment): Stamp | null => {
  const clock = clockFor(day, now);
  return clock && { frames: timecodeAt(clock, now.atMs), rate: clock.rate };
};

/** Rolls the next take of a kind: slate, number and start are filled in. One at a time per phone. */
export function rollTake(day: Day, now: Moment, kind: TakeKind = 'take'): CommandResult {
  const open = ownOpenTake(day, now.database);
  if (open) return fail({ code: 'take-open', take: takeText(open) });
  const { slate, number } = nextTake(day, kind);
  // A setup without sound has nothing to cut, so it is logged complete.
  const start = kind === 'mos' ? null : stampAt(day, now);
  const times = kind === 'mos' ? {} : { ...(start && { start }), rolledAt: now.atMs };
  return ok([{ kind: 'take-logged', fields: { kind, slate, number, ...times, ...unitOfLast(day, now) } }]);
}

/** A phone stays with its unit: its takes are of the unit of the one before, until that is corrected. */
function unitOfLast(day: Day, { database }: Moment): Pick<TakeFields, 'unit'> {
  const last = takesInOrder(day).findLast(({ id }) => database === undefined || isOfDatabase(id, database));
  return last?.unit === undefined || last.unit === 'main' ? {} : { unit: last.unit };
}

const LONGEST_MS = 86_400_000;

/**
 * Cuts an open take, this phone's own by default. Its length is the time that passed, whatever the timecode
 * did; one left open for more than a day gets none.
 */
export function cutTake(day: Day, now: Moment, take?: TakeId): CommandResult {
  const open =
    take === undefined ? ownOpenTake(day, now.database) : openTakes(day).find(({ id }) => id === take);
  if (!open) return fail({ code: 'no-take-open' });
  const rate = open.start?.rate ?? rateNow(day);
  const passedMs = Math.max(0, now.atMs - open.rolledAt!);
  const length = passedMs > LONGEST_MS || !rate ? null : { frames: msToFrames(passedMs, rate), rate };
  return ok([{ kind: 'take-described', take: open.id, fields: { cutAt: now.atMs, length } }]);
}

/** Logs a take late, with everything typed; it can be placed before an earlier take. */
export function logTake(day: Day, fields: TakeFields, at: Placing = {}): CommandResult {
  const kind = fields.kind ?? 'take';
  const slate = fields.slate ?? currentSlate(day);
  const number = fields.number ?? nextNumber(day, kind, slate);
  return ok([placed({ kind: 'take-logged', fields: { ...fields, kind, slate, number } }, at)]);
}

/** Corrects a take field by field. Circling clears NG, and NG clears the circle. */
export function describeTake(day: Day, take: string, said: TakeFields): CommandResult {
  if (!day.takes.has(take)) return missing('take', take);
  const other: TakeFields = said.noGood ? { circled: false } : said.circled ? { noGood: false } : {};
  return ok([{ kind: 'take-described', take, fields: { ...said, ...other } }]);
}

export const circleTake = (day: Day, take: string, circled: boolean): CommandResult =>
  describeTake(day, take, { circled });

export function addNote(day: Day, take: string, typed: string, track?: string): CommandResult {
  if (!day.takes.has(take)) return missing('take', take);
  const text = typed.trim();
  if (text === '') return fail({ code: 'note-empty' });
  if (text.length > 4000) return fail({ code: 'note-too-long', longest: 4000, length: text.length });
  return ok([{ kind: 'note-added', take, text, ...(track && { track }) }]);
}

/** Calls a slate for the takes from here on, by default the next setup's. Who is needed follows its scene. */
export function callSlate(day: Day, slate: Slate = slateAfter(day), at: Placing = {}): CommandResult {
  const said: Draft[] = [{ kind: 'slate-called', slate }, ...needOfScene(day, slate, at)];
  return ok(said.map((draft) => placed(draft, at)));
}

export function changeRoll(roll: string, at: Placing = {}): CommandResult {
  const name = roll.trim();
  if (name === '' || name.length > 200) return fail({ code: 'roll-name', longest: 200 });
  return ok([placed({ kind: 'roll-changed', roll: name }, at)]);
}

/** Ties the phone's clock to the recorder: it showed `frames` when the mixer tapped. */
export function followClock(day: Day, frames: number, now: Moment): CommandResult {
  const rate = rateNow(day);
  if (!rate) return fail({ code: 'rate-unknown', timecodeRate: settingsNow(day).timecodeRate });
  return ok([{ kind: 'clock-followed', frames, rate, atMs: now.atMs }]);
}
