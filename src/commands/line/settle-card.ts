import { answersAtTake } from '../../day/answers/answers.ts';
import { nameTypedFor } from '../../day/chain/links.ts';
import type { Day, TakeId } from '../../day/model.ts';
import type { CardSettlement } from '../../day/wrap/card-settlement.ts';
import type { Draft } from '../../facts/fact.ts';
import type { RecorderSettings } from '../../facts/kinds/recorder-set.ts';
import { takeFields } from '../../facts/kinds/take-logged.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, placed, together } from '../command.ts';
import { describeDay, settingsProblem } from '../day/describe.ts';
import { moveBefore, takeBack } from './correct.ts';
import { addNote, changeRoll, describeTake, logTake } from './log-takes.ts';

type Of<Kind extends CardSettlement['kind']> = Extract<CardSettlement, { kind: Kind }>;

/**
 * Resolves one difference between card and log, as one action. Fails as the underlying commands do, and with
 * `file-value-unfit` if a file holds a value no log can take.
 */
export function settleCard(day: Day, settlement: CardSettlement): CommandResult {
  switch (settlement.kind) {
    case 'describe-takes':
      return describeTakes(day, settlement);
    case 'describe-day':
      return describeDay(settlement.fields);
    case 'set-recorder':
      return together(
        ...settlement.changes.map(({ settings, before }) => setRecorderAnew(day, settings, before)),
      );
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

/** Resolves several differences as one action. */
export const settleAll = (day: Day, settlements: readonly CardSettlement[]): CommandResult =>
  together(...settlements.map((settlement) => settleCard(day, settlement)));

/** Records that the card was checked: its files and recordings, and how many differences are open. */
export const noteCardCheck = (files: number, recordings: number, open: number): CommandResult =>
  ok([{ kind: 'card-checked', files, recordings, open }]);

const unfit = fail({ code: 'file-value-unfit' });
const fits = (fields: unknown): boolean => takeFields.safeParse(fields).success;

function describeTakes(day: Day, { takes }: Of<'describe-takes'>): CommandResult {
  if (takes.some(({ fields }) => !fits(fields))) return unfit;
  return together(...takes.map(({ take, fields }) => describeTake(day, take, fields)));
}

/** Said even where it is so already: a change placed before another may have to end there. */
function setRecorderAnew(day: Day, settings: RecorderSettings, before: TakeId): CommandResult {
  if (!day.takes.has(before)) return missing('take', before);
  return settingsProblem(settings) ?? ok([placed({ kind: 'recorder-set', settings }, { before })]);
}

function changeRolls(day: Day, { roll, before, back }: Of<'change-roll'>): CommandResult {
  const unknown = [before, back?.before].find((take) => take !== undefined && !day.takes.has(take));
  if (unknown !== undefined) return missing('take', unknown);
  return together(
    changeRoll(roll, { before }),
    ...(back ? [changeRoll(back.roll, { before: back.before })] : []),
  );
}

/** Types the name before the take, and restores the earlier one after it. */
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
