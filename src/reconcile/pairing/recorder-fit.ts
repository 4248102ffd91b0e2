import type { Day, PartId } from '../../day/model.ts';
import { isOnRecorder, type Recorder } from '../../day/recorders/rolling.ts';
import { settingsAtTake } from '../../day/settings/settings.ts';
import type { Recording } from '../../wave/recording/recordings.ts';
import type { Logged } from '../log-and-card/logged.ts';
import { plainKey } from '../log-and-card/plain-key.ts';
import { recordedOf } from '../log-and-card/recorded.ts';
import { checkTracks } from '../log-and-card/track-names.ts';
import type { UnitMatch } from './match-unit.ts';

/**
 * How far a card speaks for being a recorder's, for each take of it: that the recorder rolled on it, that the file
 * is called, is on the roll, is set and has the names on tracks as on that recorder. All from memory of cards and
 * logs (common practice, no source); each can be argued with by itself.
 */
const POINTS = {
  on: { yes: 1, no: -1 },
  missing: -0.5,
  name: { yes: 1.5, no: 0 },
  roll: { yes: 2, no: -2 },
  setting: { yes: 0, no: -1 },
  tracks: { yes: 0.5, no: -1 },
  /** The files name the recorder itself. */
  originator: 3,
} as const;

/** A clock that agrees with the log's breaks a tie: the log follows the first recorder. */
const CLOCK_OFF = 0.01;
const FAR_MS = 3_600_000;

/** The sum of it over a card that was matched with the takes as they would be on the recorder. */
export function recorderFit(
  day: Day,
  { id, name }: Recorder,
  { pairs, toRecorder }: UnitMatch,
  takes: readonly Logged[],
): number {
  const byTake = new Map(takes.map((logged) => [logged.take.id, logged]));
  const paired = new Set(pairs.map(({ take }) => take));
  const lacking = takes.filter(
    ({ take }) => take.kind !== 'mos' && !paired.has(take.id) && isOnRecorder(day, take.id, id),
  );
  const points = pairs.reduce(
    (sum, { take, recording }) => sum + pointsOf(day, { id, name }, byTake.get(take)!, recording),
    POINTS.missing * lacking.length,
  );
  return points - CLOCK_OFF * Math.min(1, Math.abs(toRecorder(0)) / FAR_MS);
}

function pointsOf(day: Day, { id, name }: Recorder, logged: Logged, recording: Recording): number {
  const recorded = recordedOf(recording);
  const set = settingsAtTake(day, logged.take.id, id);
  const isNamed = logged.stems.some((stem) => recorded.stems.has(stem) || recorded.shortStems.has(stem));
  const hasRolls = logged.roll !== undefined && recorded.roll !== undefined;
  return (
    POINTS.on[isOnRecorder(day, logged.take.id, id) ? 'yes' : 'no'] +
    POINTS.name[isNamed ? 'yes' : 'no'] +
    (hasRolls ? POINTS.roll[logged.roll === recorded.roll ? 'yes' : 'no'] : 0) +
    differingSettings(set, recording) * POINTS.setting.no +
    trackPoints(day, id, logged, recording) +
    (namesRecorder(recording, name) ? POINTS.originator : 0)
  );
}

const differingSettings = (
  { sampleRate, timecodeRate }: ReturnType<typeof settingsAtTake>,
  recording: Recording,
): number =>
  [
    recording.sampleRate !== undefined && recording.sampleRate !== sampleRate,
    recording.rate !== undefined && recording.rate !== timecodeRate,
  ].filter(Boolean).length;

function trackPoints(day: Day, recorder: PartId, { answers }: Logged, recording: Recording): number {
  const named = (checkTracks(day, answers, recording, recorder) ?? []).filter(
    ({ file, answer }) => file?.name !== undefined && answer.name !== '' && !answer.track.mix,
  );
  if (named.length === 0) return 0;
  const same = named.filter(({ verdict }) => verdict === 'same').length;
  return POINTS.tracks[same * 2 >= named.length ? 'yes' : 'no'];
}

/** Shorter names are in many others. */
const LEAST_NAME = 3;

/** `'CART MIXER 2'` of a recorder that the day calls `Cart`. */
function namesRecorder(recording: Recording, name: string): boolean {
  const said = plainKey(recording.files[0]!.bext?.originator.trim() ?? '');
  const called = plainKey(name);
  return (
    said.length >= LEAST_NAME &&
    called.length >= LEAST_NAME &&
    (said.includes(called) || called.includes(said))
  );
}
