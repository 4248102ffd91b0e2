import type { PartId } from '../../day/model.ts';
import { onRecorderWords } from '../printed/recorder-words.ts';
import { noteText, statusWords, trackText } from '../printed/words.ts';
import { recordersText } from '../recorders-text.ts';
import type { TakeLine } from '../take-lines.ts';
import type { TrackLine } from '../track-lines.ts';

/** One field of a take, for comparison. */
export interface TakeField {
  /** `'length'`, `'track 5'`. */
  readonly title: string;
  /** Equal keys mean equal content. */
  readonly key: string;
  /** As printed. */
  readonly text: string;
  /** More precise words, to distinguish values that print alike. */
  readonly closer: string;
  /** For tracks: the label. */
  readonly number?: string;
  /** The recorder it is of; whether that one has the take at all is a field of its own. */
  readonly of?: PartId;
}

/** All fields of a take by name; tracks by id, whatever their label. */
export function takeFields(take: TakeLine): Map<string, TakeField> {
  const plain = (title: string, text: string): [string, TakeField] => [
    title,
    { title, key: text, text, closer: text },
  ];
  return new Map([
    plain('slate and take', take.text),
    ['file', fileField('', take)],
    ...take.also.map((on): [string, TakeField] => [
      `file ${on.id}`,
      { ...fileField(` on ${on.name}`, on), of: on.id },
    ]),
    plain('roll', take.roll),
    plain('date', take.date),
    plain('scene', take.scene),
    plain('start', take.start),
    plain('end', take.end),
    plain('recorders', take.recorders.map(onRecorderWords).join(', ')),
    plain('settings', take.settingWords.join(', ')),
    ['length', lengthField(take)],
    plain('status', statusWords(take).join(', ')),
    ...take.lists.flatMap(({ on, owner, tracks }) =>
      tracks.map((line): [string, TakeField] => [
        `track ${line.track}`,
        { ...trackField(on, line), ...(on.length > 0 && { of: owner }) },
      ]),
    ),
    ['notes', notesField(take)],
  ]);
}

function fileField(where: string, { files, file }: Pick<TakeLine, 'files' | 'file'>): TakeField {
  const title = (files.length > 1 ? 'files' : 'file') + where;
  return { title, key: JSON.stringify(files), text: file, closer: files.map(({ name }) => name).join(', ') };
}

/** Two lengths can print alike: after rounding, or as one count of frames at two rates. */
function lengthField({ length, lengthFrames, lengthMs }: TakeLine): TakeField {
  const known = lengthFrames !== null && lengthMs !== null;
  return {
    title: 'length',
    key: JSON.stringify([length, lengthFrames, lengthMs]),
    text: known ? `${length} (${lengthFrames} frames)` : '',
    closer: known ? `${length} (${lengthFrames} frames, ${(lengthMs / 1000).toFixed(3)} s)` : '',
  };
}

/** Voices are compared by id, whatever their names. */
function trackField(on: readonly string[], line: TrackLine): TakeField {
  const text = trackText(line);
  const { number, name, state, typed, voices } = line;
  const key = JSON.stringify([number, name, state, typed, voices]);
  const whose = on.length > 0 ? ` of ${recordersText(on)}` : '';
  return { title: `track ${number}${whose}`, key, text, closer: text, number };
}

function notesField({ notes }: TakeLine): TakeField {
  const texts = notes.map(noteText);
  return {
    title: 'notes',
    key: JSON.stringify(texts),
    text: texts.join('; '),
    closer: texts.map((text) => `“${text}”`).join(' '),
  };
}

/** Whether a field is of a recorder that the take is not on. */
export const isElsewhere = ({ of }: TakeField, { recorders }: TakeLine): boolean =>
  of !== undefined && recorders.every(({ id, recordsAs }) => id !== of && recordsAs !== of);
