import { answersAtTake } from '../day/answers/answers.ts';
import type { TrackAnswer } from '../day/answers/track-answers.ts';
import { AS_ONE } from '../day/files/file-name.ts';
import { filesOfTakes, filesOn, namesTogether, type TakeFile } from '../day/files/take-files.ts';
import { unitsOfTakes } from '../day/fold/units-of-takes.ts';
import type { Day, Open, PartId, Stamp, Take, TakeId, TakeKind, Unit } from '../day/model.ts';
import { recorderOfPart } from '../day/recorder-of-part.ts';
import { ownPartsOf } from '../day/recorders/recorder-parts.ts';
import { recordersOf, rollOfTake } from '../day/recorders/rolling.ts';
import { type Settings, settingsAtTake, startOfTake } from '../day/settings/settings.ts';
import { sceneText, slateText, takeText } from '../day/slate.ts';
import { dateOfTake } from '../day/take-date.ts';
import { isOpen, takesInOrder } from '../day/takes.ts';
import { takesWithoutFile } from '../day/wrap/card-check.ts';
import { lengthMs } from '../day/wrap/day-totals.ts';
import { unknownText } from '../shared/open-word.ts';
import { formatLength } from '../time/length.ts';
import { formatTimecode } from '../time/timecode.ts';
import { cleanLine, cleanNote } from './clean-text.ts';
import { FIRST_FORM, REPORT_FORM, SECOND_FORM } from './form.ts';
import {
  cleanFiles,
  type OnRecorder,
  type OnSome,
  onRecorders,
  withLacked,
  withMissed,
} from './on-recorders.ts';
import { type RollWords, withRollWords } from './rolls.ts';
import { type SettingWords, withSettingWords } from './setting-runs.ts';
import { endOf } from './take-end.ts';
import { type TakeTracks, withTrackLists } from './take-tracks.ts';
import { type TrackLine, trackLinesOf, trackNumber } from './track-lines.ts';

/** Labels of a take besides circled, in print order. */
export const STATUSES = [
  'no-good',
  'false-start',
  'pickup',
  'wild',
  'tone',
  'mos',
  'tail-slate',
  'main-unit',
  'second-unit',
  'splinter-unit',
  'rolling',
  'no-start',
  'no-length',
  'file-missing',
] as const;
export type Status = (typeof STATUSES)[number];

export interface NoteLine {
  /** The track it concerns; null for the whole take. */
  readonly track: PartId | null;
  readonly number: string | null;
  /** The recorder of that track, where several have tracks of their own; else empty. */
  readonly recorder: string;
  /** May contain line breaks (LF). */
  readonly text: string;
}

/** One take, as editors read it. Texts are clean: no control characters; only notes have lines. */
export interface TakeLine extends RollWords, SettingWords, OnSome {
  readonly takeId: TakeId;
  /** `'24B/3'`, `'24B/1 FS'`, `'24B/4 PU'`, `'WT2'`. */
  readonly text: string;
  readonly kind: Open<TakeKind>;
  /** One with all tracks, or one per track; none for MOS. */
  readonly files: readonly TakeFile[];
  /** Their names in short form: `'24BT3.wav'`, `'24BT3_1, _2, _5.wav'`. Empty if there are none. */
  readonly file: string;
  /** Empty before the first roll was entered. */
  readonly roll: string;
  /** When it rolled, `'2026-11-20'`; empty in the first form of the report. */
  readonly date: string;
  /** The recorders it is on, the main one first, if the day has several; none for MOS. */
  readonly recorders: readonly OnRecorder[];
  /** Those besides the main one; none in the first two forms, which did not say what they have. */
  readonly also: readonly OnRecorder[];
  /** What the recorder was set to. */
  readonly set: Settings;
  readonly scene: string;
  /** Empty for wild tracks and room tones, which have their own numbering. */
  readonly slate: string;
  /** `'3'`, `'WT2'`. */
  readonly take: string;
  /** Timecode, `'10:00:00:00'`; empty if unknown. */
  readonly start: string;
  /** The first frame after it, as timecode; empty if unknown, and in the first two forms. */
  readonly end: string;
  /** Both to the frame, at the rates they were taken at; null if unknown. */
  readonly exact: { readonly start: Stamp | null; readonly length: Stamp | null };
  /** `'1:52'`; empty if unknown. */
  readonly length: string;
  readonly lengthFrames: number | null;
  readonly lengthMs: number | null;
  readonly circled: boolean;
  readonly status: readonly Status[];
  /** Tracks of the main recorder that carry something; none for MOS. Takes with the same chain share the list. */
  readonly tracks: readonly TrackLine[];
  /** The same of all recorders it is on. */
  readonly lists: readonly TakeTracks[];
  readonly notes: readonly NoteLine[];
}

export function takeLinesOf(day: Day, form = REPORT_FORM): TakeLine[] {
  const filesOf = form > SECOND_FORM ? filesOfTakes(day) : filesOn(day, AS_ONE);
  const tracksOf = new Map<unknown, readonly TrackLine[]>();
  const lineOf = new Map<TrackAnswer, TrackLine>();
  const withoutFile = takesWithoutFile(day);
  const units = form > SECOND_FORM ? unitsOfTakes(day) : undefined;
  const several = day.rig.recorders.length > 0;
  const lines = takesInOrder(day).map((take) => {
    const answers = answersAtTake(day, take.id);
    const tracks = tracksOf.get(answers.tracks) ?? trackLinesOf(day, answers, lineOf, form);
    tracksOf.set(answers.tracks, tracks);
    const { length } = take;
    const start = startOfTake(day, take);
    const recorders = several && take.kind !== 'mos' ? onRecorders(day, take, tracks) : [];
    const files = cleanFiles(filesOf.get(take.id) ?? []);
    return {
      takeId: take.id,
      // A false start frees its number, so two takes may share it.
      text: cleanLine(takeText(take)) + (take.falseStart ? ' FS' : ''),
      kind: take.kind,
      files,
      file: namesTogether(files.map(({ name }) => name)),
      roll: cleanLine(rollOfTake(day, take.id)),
      date: form === FIRST_FORM ? '' : dateOfTake(day, take),
      recorders,
      also: form > SECOND_FORM ? recorders.slice(1) : [],
      set: settingsAtTake(day, take.id),
      scene: cleanLine(sceneText(take.slate)),
      slate: isSeries(take) ? '' : cleanLine(slateText(take.slate)),
      take: isSeries(take) ? takeText(take) : String(take.number),
      start: start
        ? formatTimecode(start.frames, start.rate)
        : take.unreadStart
          ? unknownText(take.unreadStart)
          : '',
      end: start && length && form > SECOND_FORM ? endOf(start, length) : '',
      exact: { start, length },
      length: length
        ? formatLength(length.frames, length.rate)
        : take.unreadLength
          ? unknownText(take.unreadLength)
          : '',
      lengthFrames: length?.frames ?? null,
      lengthMs: lengthMs(take),
      circled: take.circled,
      status: STATUSES.filter((status) =>
        status === 'file-missing'
          ? withoutFile.has(take.id) && take.kind !== 'mos'
          : HAS[status](take, units?.get(take.id) ?? [take.unit ?? 'main']),
      ),
      tracks: take.kind === 'mos' ? [] : (recorders[0]?.tracks ?? tracks),
      notes: notesOf(day, take),
    };
  });
  const worded = withSettingWords(withRollWords(lines, form));
  return withTrackLists(form > SECOND_FORM ? withMissed(worded) : withLacked(day, worded));
}

const isSeries = ({ kind }: Take): boolean => kind === 'wild' || kind === 'tone';

type HasStatus = (take: Take, units: readonly Open<Unit>[]) => boolean;

const HAS: Record<Exclude<Status, 'file-missing'>, HasStatus> = {
  'no-good': ({ noGood }) => noGood,
  'false-start': ({ falseStart }) => falseStart,
  pickup: ({ kind }) => kind === 'pickup',
  wild: ({ kind }) => kind === 'wild',
  tone: ({ kind }) => kind === 'tone',
  mos: ({ kind }) => kind === 'mos',
  'tail-slate': ({ tailSlate }) => tailSlate,
  // It goes without saying where no other unit shot it too.
  'main-unit': (_, units) => units.length > 1 && units.includes('main'),
  'second-unit': (_, units) => units.includes('second'),
  'splinter-unit': (_, units) => units.includes('splinter'),
  rolling: isOpen,
  'no-start': ({ kind, start }) => kind !== 'mos' && start === null,
  'no-length': (take) => take.kind !== 'mos' && take.length === null && !isOpen(take),
};

function recorderOfTrack(day: Day, track: PartId): string {
  const recorders = recordersOf(day).filter(({ id }) => ownPartsOf(day.rig, id).tracks.length > 0);
  if (recorders.length < 2) return '';
  const owner = recorderOfPart(day.rig.byId.get(track) ?? {});
  return cleanLine(recorders.find(({ id }) => id === owner)?.name ?? '');
}

function notesOf(day: Day, take: Take): NoteLine[] {
  return take.notes.flatMap(({ track, text }): NoteLine[] => {
    const clean = cleanNote(text);
    if (clean === '') return [];
    if (track === undefined) return [{ track: null, number: null, recorder: '', text: clean }];
    return [{ track, number: trackNumber(day, track), recorder: recorderOfTrack(day, track), text: clean }];
  });
}
