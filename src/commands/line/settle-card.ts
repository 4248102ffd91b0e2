import { answersAtTake } from '../../day/answers/answers.ts';
import { nameTypedFor } from '../../day/chain/links.ts';
import type { Day, TakeId } from '../../day/model.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Draft } from '../../facts/fact.ts';
import { takeFields } from '../../facts/kinds/take-logged.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, placed, together } from '../command.ts';
import { describeDay } from '../day/describe.ts';
import { moveBefore, takeBack } from './correct.ts';
import { addNote, changeRoll, describeTake, logTake } from './log-takes.ts';

type Of<Kind extends CardSettlement['kind']> = Extract<CardSettlement, { kind: Kind }>;

/**
 * Settles one difference between the card and the log: the facts of one action, so one undo takes it back. Fails as
 * the commands it stands for do, and with `file-value-unfit` where a file says what no log can hold.
 */
export function settleCard(day: Day, settlement: CardSettlement): CommandResult {
  switch (settlement.kind) {
    case 'describe-takes':
      return describeTakes(day, settlement);
    case 'describe-day':
      return describeDay(settlement.fields);
    case 'add-note':
      return addNote(day, settlement.take, settlement.text);
    case 'change-roll':
      return changeRolls(day, settlement);
    case 'name-track':
      return nameTrackAt(day, settlement);
    case 'move-changes':
      return together(...settlement.changes.map((change) => moveBefore(day, change, settlement.before)));
    case 'log-recording':
      return logRecording(day, settlement);
    case 'take-back':
      return day.takes.has(settlement.take)
        ? takeBack(day, [settlement.take])
        : missing('take', settlement.take);
    case 'follow-recorder': {
      const { kind: _kind, ...clock } = settlement;
      return ok([{ kind: 'clock-followed', ...clock }]);
    }
    case 'keep-log':
      return ok([{ kind: 'difference-kept', ...settlement.difference }]);
  }
}

/** Settles several differences as one action. */
export const settleAll = (day: Day, settlements: readonly CardSettlement[]): CommandResult =>
  together(...settlements.map((settlement) => settleCard(day, settlement)));

/** Says that the card was checked: how many files and recordings it held, and how many differences are open. */
export const noteCardCheck = (files: number, recordings: number, open: number): CommandResult =>
  ok([{ kind: 'card-checked', files, recordings, open }]);

const unfit = fail({ code: 'file-value-unfit' });
const fits = (fields: unknown): boolean => takeFields.safeParse(fields).success;

function describeTakes(day: Day, { takes }: Of<'describe-takes'>): CommandResult {
  if (takes.some(({ fields }) => !fits(fields))) return unfit;
  return together(...takes.map(({ take, fields }) => describeTake(day, take, fields)));
}

function changeRolls(day: Day, { roll, before, back }: Of<'change-roll'>): CommandResult {
  const unknown = [before, back?.before].find((take) => take !== undefined && !day.takes.has(take));
  if (unknown !== undefined) return missing('take', unknown);
  return together(
    changeRoll(roll, { before }),
    ...(back ? [changeRoll(back.roll, { before: back.before })] : []),
  );
}

/** The name is typed before the take and whatever was typed before it comes back after it. */
function nameTrackAt(day: Day, { track, name, take, until }: Of<'name-track'>): CommandResult {
  if (!day.rig.byId.has(track)) return missing('track', track);
  const unknown = [take, until].find((id) => id !== null && !day.takes.has(id));
  if (unknown) return missing('take', unknown);
  const typed = name.trim();
  if (typed === '' || typed.length > 200) return unfit;
  const named = (text: string | null, before: TakeId): Draft =>
    placed({ kind: 'track-named', track, name: text }, { before });
  const earlier = nameTypedFor(answersAtTake(day, take).links, track)?.value ?? null;
  return ok([named(typed, take), ...(until ? [named(earlier, until)] : [])]);
}

function logRecording(day: Day, { fields, before }: Of<'log-recording'>): CommandResult {
  if (before !== null && !day.takes.has(before)) return missing('take', before);
  return fits(fields) ? logTake(day, fields, before === null ? {} : { before }) : unfit;
}
