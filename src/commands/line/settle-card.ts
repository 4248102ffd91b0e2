import { answersAtTake } from '../../day/answers/answers.ts';
import { nameTypedFor, sentTo, wornBy } from '../../day/chain/links.ts';
import type { Day, FactOf, Link, PartId, TakeId } from '../../day/model.ts';
import { rollingAtTake } from '../../day/recorders/rolling.ts';
import type { CardSettlement, SettledAs, SettlementChoice } from '../../day/wrap/card-settlement.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import { FIRST_RECORDER, type RecorderSettings } from '../../facts/kinds/recorder-set.ts';
import { takeFields } from '../../facts/kinds/take-logged.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, placed, together } from '../command.ts';
import { describeDay, settingsProblem } from '../day/describe.ts';
import { moveBefore, takeBack } from './correct.ts';
import { addNote, describeTake, logTake } from './log-takes.ts';
import { correctRolling, loadRoll } from './roll-recorders.ts';

type Of<Kind extends SettlementChoice['kind']> = Extract<SettlementChoice, { kind: Kind }>;

/**
 * Settles one difference between card and log, as one action, and notes how. Fails as the underlying commands
 * do, and with `file-value-unfit` if a file holds a value no log can take.
 */
export function settleCard(day: Day, { settles, ...choice }: CardSettlement): CommandResult {
  return together(change(day, choice), ok([{ kind: 'difference-kept', ...settles, as: settledAs(choice) }]));
}

/** Only following a clock that drifts leaves the log as it is. */
function settledAs(choice: SettlementChoice): SettledAs {
  if (choice.kind === 'file-missing') return 'file-missing';
  if (choice.kind === 'follow-recorder') return choice.takes.length > 0 ? 'card' : 'log';
  return choice.kind === 'keep-log' ? 'log' : 'card';
}

function change(day: Day, choice: SettlementChoice): CommandResult {
  switch (choice.kind) {
    case 'describe-takes':
      return describeTakes(day, choice);
    case 'describe-day':
      return describeDay(choice.fields);
    case 'set-recorder':
      return together(
        ...choice.changes.map(({ settings, before }) =>
          setRecorderAnew(day, settings, before, choice.recorder),
        ),
      );
    case 'correct-rolling':
      return correctRollings(day, choice);
    case 'add-note':
      return addNote(day, choice.take, choice.text);
    case 'change-roll':
      return changeRolls(day, choice);
    case 'name-track':
      return nameTrackAt(day, choice);
    case 'swap-tracks':
      return swapTracks(day, choice);
    case 'move-changes':
      return together(...choice.changes.map((one) => moveBefore(day, one, choice.before)));
    case 'log-recording':
      return logRecording(day, choice);
    case 'take-back':
      return day.takes.has(choice.take) ? takeBack(day, [choice.take]) : missing('take', choice.take);
    case 'follow-recorder': {
      const { kind: _kind, takes, ...clock } = choice;
      return together(describeTakes(day, { takes }), ok([{ kind: 'clock-followed', ...clock }]));
    }
    case 'file-missing':
    case 'keep-log':
      return ok([]);
  }
}

/** Settles several differences as one action; a setting of the day is said once. */
export function settleAll(day: Day, settlements: readonly CardSettlement[]): CommandResult {
  const all = together(...settlements.map((settlement) => settleCard(day, settlement)));
  if (!all.ok) return all;
  const said = new Set<string>();
  return ok(
    all.value.filter((draft) => {
      const text = draft.kind === 'day-described' ? JSON.stringify(draft) : '';
      if (text === '') return true;
      const isNew = !said.has(text);
      said.add(text);
      return isNew;
    }),
  );
}

/** Records that the card was checked, and what was found. */
export const noteCardCheck = (checked: Omit<FactOf<'card-checked'>, keyof Envelope>): CommandResult =>
  ok([{ kind: 'card-checked', ...checked }]);

const unfit = fail({ code: 'file-value-unfit' });
const fits = (fields: unknown): boolean => takeFields.safeParse(fields).success;

function describeTakes(day: Day, { takes }: Pick<Of<'describe-takes'>, 'takes'>): CommandResult {
  if (takes.some(({ fields }) => !fits(fields))) return unfit;
  return together(...takes.map(({ take, fields }) => describeTake(day, take, fields)));
}

/** Said even where it is so already: a change placed before another may have to end there. */
function setRecorderAnew(
  day: Day,
  settings: RecorderSettings,
  before: TakeId,
  recorder?: PartId,
): CommandResult {
  if (!day.takes.has(before)) return missing('take', before);
  return (
    settingsProblem(settings) ??
    ok([placed({ kind: 'recorder-set', ...(recorder && { recorder }), settings }, { before })])
  );
}

function changeRolls(
  day: Day,
  { roll, before, back, recorder = FIRST_RECORDER }: Of<'change-roll'>,
): CommandResult {
  const unknown = [before, back?.before].find((take) => take !== undefined && !day.takes.has(take));
  if (unknown !== undefined) return missing('take', unknown);
  return together(
    loadRoll(day, recorder, roll, { before }),
    ...(back ? [loadRoll(day, recorder, back.roll, { before: back.before })] : []),
  );
}

function correctRollings(day: Day, { recorder, takes, isOn }: Of<'correct-rolling'>): CommandResult {
  return together(
    ...takes.map((take) => {
      const rolling = day.takes.has(take) ? rollingAtTake(day, take).map(({ id }) => id) : [];
      const others = rolling.filter((id) => id !== recorder);
      return correctRolling(day, take, isOn ? [...others, recorder] : others);
    }),
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

/** Exchanges what two tracks carry before the take and, unless that changed meanwhile, back before `until`. */
function swapTracks(day: Day, { swap, take, until }: Of<'swap-tracks'>): CommandResult {
  const unknown = [take, until].find((id) => id !== null && !day.takes.has(id));
  if (unknown) return missing('take', unknown);
  const { links } = answersAtTake(day, take);
  const later = until === null ? null : answersAtTake(day, until).links;
  const exchanged = (was: Link | undefined, then: Link | undefined, now: Draft, back: Draft): Draft[] => [
    placed(now, { before: take }),
    ...(until && then?.by === was?.by ? [placed(back, { before: until })] : []),
  ];
  if (swap.by === 'packs')
    return ok(
      swap.worn.flatMap(({ transmitter, voice }) => {
        const worn = (on: string | null): Draft => ({ kind: 'transmitter-worn', transmitter, voice: on });
        const was = wornBy(links, transmitter);
        return exchanged(
          was,
          later ? wornBy(later, transmitter) : was,
          worn(voice),
          worn(was?.value ?? null),
        );
      }),
    );
  return ok(
    swap.routes.flatMap(({ input, tracks }) => {
      const sent = (to: readonly string[]): Draft => ({
        kind: 'inputs-sent',
        routes: [{ input, tracks: [...to] }],
      });
      const was = sentTo(links, input);
      return exchanged(was, later ? sentTo(later, input) : was, sent(tracks), sent(was?.value ?? []));
    }),
  );
}

function logRecording(day: Day, { fields, before }: Of<'log-recording'>): CommandResult {
  if (before !== null && !day.takes.has(before)) return missing('take', before);
  return fits(fields) ? logTake(day, fields, before === null ? {} : { before }) : unfit;
}
