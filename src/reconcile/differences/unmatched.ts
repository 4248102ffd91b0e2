import { namesTogether } from '../../day/files/take-files.ts';
import type { Day, TakeId } from '../../day/model.ts';
import { rollingAtTake } from '../../day/recorders/rolling.ts';
import { slateText, takeText } from '../../day/slate.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import { lengthOfFile, startOfFile, takeOfFile } from '../log-and-card/file-fields.ts';
import { stampMs } from '../log-and-card/label-time.ts';
import { isOfAnotherDay } from '../log-and-card/other-day.ts';
import { fileNamesIn, recordedOf, recordingName } from '../log-and-card/recorded.ts';
import type { Question } from '../pairing/match-recordings.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';

/** Takes without a recording, recordings without a take, and takes with several candidates. */
export function unmatchedDifferences(checking: Checking): Found[] {
  const { day, match } = checking;
  const textOf = (take: TakeId): string => {
    const known = day.takes.get(take);
    return known ? takeText(known) : '';
  };
  const placeBefore = placesByTime(checking);
  const stray = match.recordingsWithout.filter((recording) => isOfAnotherDay(day, recording));
  const strange = [...match.ofOtherDays, ...stray];
  const unlogged = match.recordingsWithout.filter((recording) => !stray.includes(recording));
  return [
    ...(strange.length > 0 ? [ofAnotherDay(checking, strange)] : []),
    ...(match.ofOtherUnits.length > 0 ? [ofAnotherUnit(match.ofOtherUnits)] : []),
    ...match.takesWithout.map((take): Found => notRecorded(take, textOf(take))),
    ...match.onBackupOnly.map((take): Found => onBackupOnly(day, take, textOf(take))),
    ...match.questions.map((question): Found => unsure(question, textOf(question.take))),
    ...match.recordedMos.map(({ take, recording }) => mosRecorded(checking, take, recording)),
    ...unlogged.map(
      (recording): Found => ({
        code: 'recording-not-logged',
        recording,
        was: null,
        is: namesTogether(fileNamesIn(recording)),
        settlements: [
          {
            kind: 'log-recording',
            fields: takeOfFile(recording, checking.header),
            before: placeBefore(recording),
          },
        ],
      }),
    ),
  ];
}

const ofAnotherDay = ({ header }: Checking, recordings: readonly Recording[]): Found => ({
  code: 'recordings-of-another-day',
  was: header.date,
  is: [...new Set(recordings.flatMap(({ files }) => files[0]!.bext?.originationDate ?? []))].sort(),
  detail: { count: recordings.length },
});

/** They match no take, and are of a recorder that hardly has any of the day. */
const ofAnotherUnit = (recordings: readonly Recording[]): Found => ({
  code: 'recordings-of-another-unit',
  was: null,
  is: [...new Set(recordings.flatMap(({ files }) => files[0]!.bext?.originator.trim() || []))].sort(),
  detail: { count: recordings.length },
});

const notRecorded = (take: TakeId, text: string): Found => ({
  code: 'take-not-recorded',
  take,
  was: text,
  is: null,
  settlements: [
    { kind: 'describe-takes', takes: [{ take, fields: { kind: 'mos' } }] },
    { kind: 'take-back', take },
  ],
});

const onBackupOnly = (day: Day, take: TakeId, text: string): Found => ({
  code: 'take-on-backup-only',
  take,
  was: text,
  is: rollingAtTake(day, take).map(({ name }) => name),
});

/** Naming the file answers the question: a typed name outweighs all else at the next check. */
const unsure = ({ take, choices }: Question, text: string): Found => ({
  code: 'match-unsure',
  take,
  was: text,
  is: choices.flatMap(({ recording }) => (recording ? [namesTogether(fileNamesIn(recording))] : [])),
  choices,
  settlements: choices.flatMap(({ recording }) => {
    const file = recording ? recordingName(recording) : '';
    return file === '' || file.length > 200
      ? []
      : [{ kind: 'describe-takes' as const, takes: [{ take, fields: { file } }] }];
  }),
});

function mosRecorded({ day, header }: Checking, take: TakeId, recording: Recording): Found {
  const start = startOfFile(recording, header.timecodeRate);
  const length = lengthOfFile(recording, header.timecodeRate);
  const fields: TakeFields = { kind: 'take', ...(start && { start }), ...(length && { length }) };
  return {
    code: 'mos-recorded',
    take,
    recording,
    was: slateText(day.takes.get(take)!.slate),
    is: namesTogether(fileNamesIn(recording)),
    settlements: [{ kind: 'describe-takes', takes: [{ take, fields }] }],
  };
}

/**
 * Which take to put a recording before: the one after the last that starts no later, by the recorder's clock.
 * Null for the end of the day, or a recording without a start.
 */
export function placesByTime({ takes, pairs, match }: Checking): (recording: Recording) => TakeId | null {
  const { axis, toRecorder } = match;
  const startOf = new Map(pairs.map(({ take, recorded }) => [take.id, recorded.startMs]));
  const timed = takes.flatMap(({ id, start }, index) => {
    const ms = startOf.get(id) ?? (start ? toRecorder(stampMs(start)) : undefined);
    return ms === undefined ? [] : [{ index, x: axis.at(ms) }];
  });
  return (recording) => {
    const { startMs } = recordedOf(recording);
    if (startMs === undefined) return null;
    const x = axis.at(startMs);
    let last = { index: -1, x: -1 };
    for (const one of timed) if (one.x <= x && one.x >= last.x) last = one;
    return takes[last.index + 1]?.id ?? null;
  };
}
