import { type RateId, rateOf } from '../../time/rate.ts';
import { formatTimecode } from '../../time/timecode.ts';
import { withoutIsolates } from '../isolated.ts';
import type { ReportModel } from '../model.ts';
import { reportSubject } from '../printed/report-name.ts';
import { noteText, STATE_WORDS, STATUS_WORDS } from '../printed/words.ts';
import { bitDepthWords, fpsWords, sampleRateWords } from '../setting-words.ts';
import type { TakeLine } from '../take-lines.ts';
import {
  audioTrack,
  clip,
  externalReference,
  gap,
  type Metadata,
  marker,
  missingReference,
  type OtioObject,
  rationalTime,
  timeline,
  timeRange,
} from './otio-objects.ts';
import { type FilesInRow, type NotPlaced, otioTracks, type Placed } from './otio-tracks.ts';

/**
 * The day as an OpenTimelineIO file: its sound files by name, at their timecode, with scene, slate, take and who is
 * on which track in their metadata, and markers for circled, NG and notes. What cannot be placed is named in the
 * metadata of the timeline. Indented, as the format asks.
 */
export function reportOtio(model: ReportModel): string {
  const { rows, notPlaced, origins } = otioTracks(model.takes);
  const [only, ...more] = origins;
  // One moment for all rows can only be said where all count at one rate.
  const from = only && more.length === 0 ? rationalTime(only[1], only[0]) : null;
  const numberOf = new Map(model.layout.map(({ track, number }) => [track, number]));
  const tracks = rows.map((row) => rowAsTrack(row, origins.get(row.rate) ?? 0, numberOf));
  const name = reportSubject(model) || 'Sound report';
  return `${JSON.stringify(timeline(name, aboutDay(model, notPlaced), from, tracks), null, 2)}\n`;
}

/** Without the fields that nobody filled in. */
const filled = (fields: Metadata): Metadata =>
  Object.fromEntries(
    Object.entries(fields).filter(
      ([, value]) => value !== '' && value !== null && !(Array.isArray(value) && value.length === 0),
    ),
  );

const aboutDay = ({ head }: ReportModel, notPlaced: readonly NotPlaced[]): Metadata =>
  filled({
    ...{ production: head.production, day: head.label, date: head.date, unit: head.unit },
    ...{ mixer: head.mixer, recorder: head.recorder, rolls: head.rolls, remarks: head.remarks },
    not_placed: notPlaced.map(({ take, why }) => ({ ...aboutTake(take), why })),
  });

function rowAsTrack(row: FilesInRow, origin: number, numberOf: ReadonlyMap<string, string>): OtioObject {
  const { rate, on, track, timed, files } = row;
  const name = [
    ...(on ? [on.name] : []),
    track === null ? 'Sound' : `Track ${numberOf.get(track) ?? track}`,
    fpsWords(rate),
    ...(timed ? [] : ['start not known']),
  ].join(', ');
  const own = filled({
    recorder: on?.name ?? '',
    timecode_rate: fpsWords(rate),
    drop_frame: rateOf(rate).dropped > 0,
    starts_at: timed ? formatTimecode(origin, rate) : '',
  });
  return audioTrack(name, own, withGaps(files, rate));
}

function withGaps(files: readonly Placed[], rate: RateId): OtioObject[] {
  let end = 0;
  return files.flatMap((file) => {
    const before = file.at > end ? [gap(file.at - end, rate)] : [];
    end = file.at + file.frames;
    return [...before, fileAsClip(file)];
  });
}

function fileAsClip(placed: Placed): OtioObject {
  const { take, file, rate, start, frames } = placed;
  // Without a known start the file's own first frame is 0, and what it may be called is left open.
  const range = timeRange(start ?? 0, frames, rate);
  const available = start === null ? null : range;
  const media = file ? externalReference(file, available) : missingReference(available);
  const markers = markersOf(take, start ?? 0, rate);
  return clip(file || take.text, { ...aboutTake(take), ...aboutFile(placed) }, { range, media, markers });
}

/** A note is its own marker, so that each can be stepped to. */
const markersOf = (take: TakeLine, at: number, rate: RateId): OtioObject[] => [
  ...(take.circled ? [marker('circled', 'GREEN', at, rate)] : []),
  ...(take.status.includes('no-good') ? [marker('NG', 'RED', at, rate)] : []),
  ...take.notes.map((note) => marker('note', 'YELLOW', at, rate, withoutIsolates(noteText(note)))),
];

const aboutTake = (take: TakeLine): Metadata =>
  filled({
    ...{ scene: take.scene, slate: take.slate, take: take.take, called: take.text },
    ...{ roll: take.roll, date: take.date, start: take.start, end: take.end, circled: take.circled },
    status: take.status.map((one) => STATUS_WORDS[one]),
    notes: take.notes.map((note) => withoutIsolates(noteText(note))),
  });

/** What is its own: the roll and settings of its recorder, and who is on which of its tracks, by name alone. */
function aboutFile({ take, on, track: of }: Placed): Metadata {
  const set = on?.set ?? take.set;
  const tracks = (on?.tracks ?? take.tracks).filter(({ track }) => of === null || track === of);
  return {
    ...filled({
      recorder: on?.name ?? '',
      roll: on ? on.roll : take.roll,
      sample_rate: sampleRateWords(set.sampleRate),
      bit_depth: bitDepthWords(set.bitDepth),
    }),
    tracks: tracks.map(({ number, name, state }) =>
      filled({ number, name, state: state === 'mix' ? '' : STATE_WORDS[state] }),
    ),
  };
}
