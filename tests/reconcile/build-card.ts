// Builds what a recorder would have put on its card for a logged day: bytes, described and joined as the app does it.
import { answersAtTake } from '../../src/day/answers/answers.ts';
import { rollIn } from '../../src/day/chain/links.ts';
import { fileNamesOf, fileNamesOn } from '../../src/day/files/file-name.ts';
import type { Day, PartId, Stamp, Take } from '../../src/day/model.ts';
import { tracksOf } from '../../src/day/recorders/recorder-parts.ts';
import { rollOn } from '../../src/day/recorders/rolling.ts';
import { startOfTake, workingAtTake } from '../../src/day/settings/settings.ts';
import { slateText } from '../../src/day/slate.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { rateOf } from '../../src/time/rate.ts';
import { framesToSamples } from '../../src/time/samples.ts';
import type { WaveDescription } from '../../src/wave/file/describe-wave.ts';
import { joinRecordings, type Recording } from '../../src/wave/recording/recordings.ts';
import { type BuiltChunk, bext, buildWave, chunk, fmt, hugeData } from '../wave/build-wave.ts';
import { described } from '../wave/described.ts';

export interface FileTrack {
  readonly channel: number;
  readonly name: string;
  readonly function?: string;
}

/** One file as the recorder writes it. */
export interface CardFile {
  readonly name: string;
  readonly project?: string;
  readonly scene?: string;
  readonly take?: string;
  readonly tape?: string;
  readonly note?: string;
  readonly circled?: boolean;
  readonly types?: readonly string[];
  /** Samples since midnight; undefined for a file without bext. */
  readonly start: number | undefined;
  /** Samples. */
  readonly length: number;
  readonly tracks: readonly FileTrack[];
  readonly sampleRate: number;
  readonly bits: number;
  readonly rate?: string;
  readonly dropFrame?: boolean;
  readonly date?: string;
  /** The recorder, as it calls itself. */
  readonly originator?: string;
  /** Of a file that is one of a set. */
  readonly fileSet?: { readonly family: string; readonly index: number; readonly total: number };
  /** More elements under the root of iXML. */
  readonly more?: string;
  readonly chunks?: readonly BuiltChunk[];
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
const element = (name: string, value: string | undefined): string =>
  value === undefined ? '' : `<${name}>${escaped(value)}</${name}>`;

const setOf = ({ fileSet }: CardFile): string =>
  fileSet === undefined
    ? ''
    : `<FILE_SET>${element('FAMILY_UID', fileSet.family)}${element('FILE_SET_INDEX', `${fileSet.index}`)}` +
      `${element('TOTAL_FILES', `${fileSet.total}`)}</FILE_SET>`;

function ixmlOf(file: CardFile): string {
  const tracks = file.tracks.map(
    ({ channel, name, function: role }, at) =>
      `<TRACK><CHANNEL_INDEX>${channel}</CHANNEL_INDEX><INTERLEAVE_INDEX>${at + 1}</INTERLEAVE_INDEX>${element('NAME', name)}${element('FUNCTION', role)}</TRACK>`,
  );
  const speed =
    element('TIMECODE_RATE', file.rate) +
    element('TIMECODE_FLAG', file.rate && (file.dropFrame ? 'DF' : 'NDF'));
  return (
    element('PROJECT', file.project) +
    element('SCENE', file.scene) +
    element('TAKE', file.take) +
    element('TAPE', file.tape) +
    element('CIRCLED', file.circled === undefined ? undefined : file.circled ? 'TRUE' : 'FALSE') +
    element('TAKE_TYPE', file.types?.join(',')) +
    element('NOTE', file.note) +
    `<SPEED>${speed}</SPEED>${setOf(file)}` +
    `<TRACK_LIST>${tracks.join('')}</TRACK_LIST>${file.more ?? ''}`
  );
}

export function describeFile(file: CardFile): Promise<WaveDescription> {
  const { start, sampleRate, bits, length, tracks } = file;
  const channels = Math.max(1, tracks.length);
  const bytes = length * channels * Math.ceil(bits / 8);
  const document = `<?xml version="1.0" encoding="UTF-8"?><BWFXML>${ixmlOf(file)}</BWFXML>`;
  const chunks = [
    ...(start === undefined
      ? []
      : [
          bext({
            timeReference: start,
            date: file.date ?? '2026-10-07',
            ...(file.originator !== undefined && { originator: file.originator }),
          }),
        ]),
    fmt({ channels, sampleRate, bits }),
    hugeData(bytes),
    chunk('iXML', new TextEncoder().encode(document)),
    ...(file.chunks ?? []),
  ];
  return described(buildWave(chunks, { name: file.name }));
}

/** From bytes to recordings. */
export const recordCard = async (files: readonly CardFile[]): Promise<Recording[]> =>
  joinRecordings(await Promise.all(files.map(describeFile)));

/** The files of a recorder that agrees with the log in everything, one poly file a take. */
export function cardOf(day: Day): CardFile[] {
  const names = fileNamesOf(day);
  return takesInOrder(day)
    .filter(({ kind }) => kind !== 'mos')
    .map((take) => fileOf(day, take, names.get(take.id)!));
}

/** The files of one of several recorders that agrees with the log in everything, with the clock of the log. */
export function cardOn(day: Day, recorder: PartId, originator: string): CardFile[] {
  const names = fileNamesOn(day, recorder);
  const tracks = new Set(tracksOf(day.rig, recorder).map(({ id }) => id));
  return takesInOrder(day)
    .filter(({ id, kind }) => kind !== 'mos' && names.has(id))
    .map((take) => {
      const { sampleRate, bitDepth, timecodeRate } = workingAtTake(day, take.id, '25', recorder);
      const { num, den, dropped } = rateOf(timecodeRate);
      const heard = answersAtTake(day, take.id).tracks.filter(({ track }) => tracks.has(track.id));
      const start = startOfTake(day, take);
      const samples = (at: Stamp): number => framesToSamples(at.frames, sampleRate, at.rate).samples;
      return {
        ...fileOf(day, take, names.get(take.id)!),
        start: start ? samples(start) : undefined,
        length: take.length ? samples(take.length) : sampleRate,
        originator,
        tape: rollOn(day, take.id, recorder),
        tracks: heard.flatMap(({ name, state, track }, at) =>
          state === 'empty' ? [] : [{ channel: at + 1, name, ...(track.mix && { function: 'MIX' }) }],
        ),
        sampleRate,
        bits: Number.parseInt(bitDepth, 10),
        rate: `${num}/${den}`,
        dropFrame: dropped > 0,
      };
    });
}

function fileOf(day: Day, take: Take, name: string): CardFile {
  const { timecodeRate, sampleRate, bitDepth, production } = workingAtTake(day, take.id, '25');
  const { num, den, dropped } = rateOf(timecodeRate);
  const answers = answersAtTake(day, take.id);
  const start = startOfTake(day, take);
  return {
    name,
    project: production,
    scene: take.kind === 'wild' ? 'WT' : take.kind === 'tone' ? 'RT' : slateText(take.slate),
    take: String(take.number),
    tape: rollIn(answers.links)?.value ?? '',
    note: take.notes.filter(({ track }) => track === undefined)[0]?.text ?? '',
    circled: take.circled,
    types: [
      ...(take.falseStart ? ['FALSE_START'] : []),
      ...(take.kind === 'wild' ? ['WILD_TRACK'] : []),
      ...(take.kind === 'pickup' ? ['PICKUP'] : []),
    ],
    start: start ? framesToSamples(start.frames, sampleRate, start.rate).samples : undefined,
    length: take.length ? framesToSamples(take.length.frames, sampleRate, take.length.rate).samples : 48_000,
    tracks: answers.tracks.flatMap(({ name: heard, state, track }, at) =>
      state === 'empty' ? [] : [{ channel: at + 1, name: heard, ...(track.mix && { function: 'MIX' }) }],
    ),
    sampleRate,
    bits: Number.parseInt(bitDepth, 10),
    rate: `${num}/${den}`,
    dropFrame: dropped > 0,
  };
}

/** The files of a recorder that writes one for each track, called by the name of the take and the channel. */
export const monoCard = (
  files: readonly CardFile[],
  nameOf: (stem: string, channel: number) => string = (stem, channel) => `${stem}_${channel}`,
): CardFile[] =>
  files.flatMap((file, at) =>
    file.tracks.map((track, index) => ({
      ...file,
      name: `${nameOf(file.name.replace('.wav', ''), track.channel)}.wav`,
      tracks: [track],
      fileSet: { family: `F${at}`, index: index + 1, total: file.tracks.length },
    })),
  );
