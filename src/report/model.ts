import { rollIn } from '../day/chain/links.ts';
import { type FilledHeader, filledHeader } from '../day/header.ts';
import type { Day } from '../day/model.ts';
import { settingsNow } from '../day/settings/settings.ts';
import { type DayTotals, dayTotals } from '../day/wrap/day-totals.ts';
import type { SettingField } from '../facts/kinds/recorder-set.ts';
import { type CardLine, cardLineOf } from './card-line.ts';
import { cleanLine, cleanNote } from './clean-text.ts';
import { FIRST_FORM, REPORT_FORM, SECOND_FORM } from './form.ts';
import { type HandOverLine, handOverLines } from './hand-over-lines.ts';
import { type HeadFacts, headFacts, NO_HEAD_FACTS } from './head-facts.ts';
import { isolated } from './isolated.ts';
import type { Matter } from './matter.ts';
import { type NamedAlike, namedAlike, sharedNames } from './names-shared.ts';
import { headLacks, openMatters } from './open-matters.ts';
import { mattersOfRecorders } from './recorder-matters.ts';
import { mainRuns, type RecorderRun, recorderRuns } from './recorders.ts';
import {
  isAlike,
  PRINTED_SETTINGS,
  type PrintedSetting,
  type SettingRun,
  type SettingRuns,
  settingRuns,
} from './setting-runs.ts';
import { type TakeLine, takeLinesOf } from './take-lines.ts';
import type { TrackLayout } from './track-layout.ts';
import { type TrackList, trackListsOf } from './track-lists.ts';

/** The head of the report. Texts are clean, and empty if not entered. */
export interface ReportHead extends Omit<FilledHeader, 'slateStyle' | SettingField>, HeadFacts {
  readonly form: number;
  /** What each recorder has, if the day has several. */
  readonly recorders: readonly RecorderRun[];
  /** The main recorder by name, and from which take to which; none in the first two forms. */
  readonly main: readonly SettingRun[];
  /** What the main recorder was set to, and from which take to which. */
  readonly set: SettingRuns;
  /** Settings that were not the same on all recorders at every take. */
  readonly apart: readonly PrintedSetting[];
  /** Recorders whose files have the same names. */
  readonly alike: readonly NamedAlike[];
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
  /** The tracks of each recorder that has its own; one list on a day whose recorders all have the same. */
  readonly lists: readonly TrackList[];
  /** Every track of every list, used or not. */
  readonly layout: readonly TrackLayout[];
  readonly takes: readonly TakeLine[];
  /** Open matters; empty when the report is final. */
  readonly open: readonly Matter[];
  readonly totals: DayTotals;
  /** What each recorder with takes wrote, if the day has several; none in the first two forms. */
  readonly written: readonly { readonly name: string; readonly totals: DayTotals }[];
  /** When the card was last compared with the log; null if never. */
  readonly card: CardLine | null;
  /** Cards and drives that went to somebody; earlier forms did not print them. */
  readonly handOvers: readonly HandOverLine[];
}

/**
 * The report of a day. `unsettled` adds open matters from elsewhere (a roll used on another day, conflicts
 * between phones), printed with those of the day itself. `reportOf(day).takes[0].text` is `'24B/3'`. `form`: the
 * form a sent report had.
 */
export function reportOf(day: Day, unsettled: readonly Matter[] = [], form = REPORT_FORM): ReportModel {
  const takes = takeLinesOf(day, form);
  const shared = form > SECOND_FORM ? sharedNames(takes) : [];
  const head = headOf(day, takes, form, namedAlike(shared));
  const ofRecorders = form > SECOND_FORM ? mattersOfRecorders(takes, shared) : [];
  const lists = trackListsOf(day, takes, form);
  const lacks = form === FIRST_FORM ? [] : headLacks(head);
  return {
    form,
    head,
    lists,
    layout: lists.flatMap(({ layout }) => layout),
    takes,
    open: withoutRepeats([...openMatters(day, takes), ...ofRecorders, ...lacks, ...unsettled]),
    totals: dayTotals(day),
    written: head.main.length === 0 ? [] : writtenOf(day, head),
    card: cardLineOf(day, takes),
    handOvers: form > SECOND_FORM ? handOverLines(day) : [],
  };
}

const writtenOf = (day: Day, { recorders }: ReportHead): ReportModel['written'] =>
  recorders.filter(({ has }) => has > 0).map(({ id, name }) => ({ name, totals: dayTotals(day, id) }));

function headOf(
  day: Day,
  takes: readonly TakeLine[],
  form: number,
  alike: readonly NamedAlike[],
): ReportHead {
  const { slateStyle, sampleRate, bitDepth, timecodeRate, fileLayout, filePattern, ...said } = filledHeader(
    day.header,
  );
  const isEach = form > SECOND_FORM;
  const heldRolls =
    takes.length > 0
      ? takes.flatMap(({ roll, also }) => [roll, ...also.map((one) => one.roll)])
      : [cleanLine(rollIn(day.tail)?.value ?? '')];
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
    ...(isEach ? contactsOf(said) : NO_CONTACTS),
    ...(isEach ? headFacts(day) : NO_HEAD_FACTS),
    recorder: cleanLine(said.recorder),
    remarks: cleanNote(said.remarks),
    form,
    recorders: recorderRuns(day, takes),
    alike,
    main: isEach ? mainRuns(takes) : [],
    apart: isEach ? PRINTED_SETTINGS.filter((field) => !isAlike(field, takes)) : [],
    set: settingRuns(takes, settingsNow(day), form === FIRST_FORM ? undefined : isolated),
    rolls,
    takesWithoutRoll: rolls.length > 0 ? takes.filter(({ roll }) => roll === '').length : 0,
  };
}

type Contacts = Pick<FilledHeader, 'mixerContact' | 'boomContact' | 'utilityContact' | 'tone' | 'toneRoll'>;

/** The first two forms printed none of these. */
const NO_CONTACTS: Contacts = {
  mixerContact: '',
  boomContact: '',
  utilityContact: '',
  tone: '',
  toneRoll: '',
};

const contactsOf = (said: Contacts): Contacts => ({
  mixerContact: cleanLine(said.mixerContact),
  boomContact: cleanLine(said.boomContact),
  utilityContact: cleanLine(said.utilityContact),
  tone: cleanLine(said.tone),
  toneRoll: cleanLine(said.toneRoll),
});

function withoutRepeats(matters: readonly Matter[]): Matter[] {
  const known = new Set<string>();
  return matters.filter(({ code, takes, track, voice, input, file, text }) => {
    const key = JSON.stringify([code, takes, track, voice, input, file, text]);
    return !known.has(key) && known.add(key);
  });
}
