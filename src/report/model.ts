import { rollIn } from '../day/chain/links.ts';
import { type FilledHeader, filledHeader } from '../day/header.ts';
import type { Day } from '../day/model.ts';
import { settingsNow } from '../day/settings/settings.ts';
import { type DayTotals, dayTotals } from '../day/wrap/day-totals.ts';
import type { SettingField } from '../facts/kinds/recorder-set.ts';
import { type CardLine, cardLineOf } from './card-line.ts';
import { cleanLine, cleanNote } from './clean-text.ts';
import { FIRST_FORM, REPORT_FORM } from './form.ts';
import { isolated } from './isolated.ts';
import { headLacks, type Matter, openMatters } from './open-matters.ts';
import { type RecorderRun, recorderRuns } from './recorders.ts';
import { type SettingRuns, settingRuns } from './setting-runs.ts';
import { type TakeLine, takeLinesOf } from './take-lines.ts';
import { type TrackLayout, trackLayoutOf } from './track-layout.ts';

/** The head of the report. Texts are clean, and empty if not entered. */
export interface ReportHead extends Omit<FilledHeader, 'slateStyle' | SettingField> {
  /** What each recorder has, if the day has several. */
  readonly recorders: readonly RecorderRun[];
  /** What the recorder was set to, and from which take to which. */
  readonly set: SettingRuns;
  /** Every sound roll of the day, in order. */
  readonly rolls: readonly string[];
  /** Takes logged before the first roll was entered. */
  readonly takesWithoutRoll: number;
}

/** The content of a report as data: every format prints exactly this. */
export interface ReportModel {
  /** See `form.ts`. */
  readonly form: number;
  readonly head: ReportHead;
  /** Every track of the recorder, used or not. */
  readonly layout: readonly TrackLayout[];
  readonly takes: readonly TakeLine[];
  /** Open matters; empty when the report is final. */
  readonly open: readonly Matter[];
  readonly totals: DayTotals;
  /** When the card was last compared with the log; null if never. */
  readonly card: CardLine | null;
}

/**
 * The report of a day. `unsettled` adds open matters from elsewhere (a roll used on another day, conflicts
 * between phones), printed with those of the day itself. `reportOf(day).takes[0].text` is `'24B/3'`. `form`: the
 * form a sent report had.
 */
export function reportOf(day: Day, unsettled: readonly Matter[] = [], form = REPORT_FORM): ReportModel {
  const takes = takeLinesOf(day, form);
  const head = headOf(day, takes, form);
  const lacks = form === FIRST_FORM ? [] : headLacks(head);
  return {
    form,
    head,
    layout: trackLayoutOf(day, takes),
    takes,
    open: withoutRepeats([...openMatters(day, takes), ...lacks, ...unsettled]),
    totals: dayTotals(day),
    card: cardLineOf(day, takes),
  };
}

function headOf(day: Day, takes: readonly TakeLine[], form: number): ReportHead {
  const { slateStyle, sampleRate, bitDepth, timecodeRate, fileLayout, filePattern, ...said } = filledHeader(
    day.header,
  );
  const heldRolls =
    takes.length > 0 ? takes.map(({ roll }) => roll) : [cleanLine(rollIn(day.tail)?.value ?? '')];
  const rolls = [...new Set(heldRolls.filter(Boolean))];
  return {
    ...said,
    production: cleanLine(said.production),
    label: cleanLine(said.label),
    unit: cleanLine(said.unit),
    mixer: cleanLine(said.mixer),
    boom: cleanLine(said.boom),
    utility: cleanLine(said.utility),
    contact: cleanLine(said.contact),
    recorder: cleanLine(said.recorder),
    remarks: cleanNote(said.remarks),
    recorders: recorderRuns(day, takes),
    set: settingRuns(takes, settingsNow(day), form === FIRST_FORM ? undefined : isolated),
    rolls,
    takesWithoutRoll: rolls.length > 0 ? takes.filter(({ roll }) => roll === '').length : 0,
  };
}

function withoutRepeats(matters: readonly Matter[]): Matter[] {
  const known = new Set<string>();
  return matters.filter(({ code, takes, track, voice, input, file, text }) => {
    const key = JSON.stringify([code, takes, track, voice, input, file, text]);
    return !known.has(key) && known.add(key);
  });
}
