import { isolated } from '../isolated.ts';
import { recordersText } from '../recorders-text.ts';
import type { TakeLine } from '../take-lines.ts';
import type { TakeTracks } from '../take-tracks.ts';
import type { TrackLine } from '../track-lines.ts';
import { counted } from './figures.ts';
import { alsoText } from './recorder-words.ts';
import { noteText, statusWords, trackUnit } from './words.ts';

/** A take in the words that every format prints. */
export interface PrintedTake {
  readonly text: string;
  readonly circled: boolean;
  /** Its file name, or how many files there are: `'4 files'`, `'no file'`. */
  readonly file: string;
  /** The names of several files; empty for one. */
  readonly names: string;
  readonly start: string;
  readonly length: string;
  /** Circled, status, the recorders if not all have it, settings that change during the day, and the scene if the slate does not include it. */
  readonly words: readonly string[];
  /** What each further recorder has of it: `'Backup, roll B1: 24BT3.wav'`. */
  readonly also: readonly string[];
  /** A list for each recorder with its own tracks: `'5 Lena'`, `'16 Pol, Sana (ganged)'`. */
  readonly lists: readonly (readonly string[])[];
  readonly notes: readonly string[];
}

export const printedTake = (take: TakeLine): PrintedTake => ({
  text: take.text,
  circled: take.circled,
  file: take.files.length > 1 ? counted(take.files.length, 'file') : take.file || 'no file',
  names: take.files.length > 1 ? take.file : '',
  start: take.start,
  length: take.length,
  words: [...statusWords(take), ...recorderWords(take), ...take.settingWords, ...sceneWords(take)],
  also: take.also.map(alsoText),
  lists: take.lists.map(unitsOf),
  notes: take.notes.map(noteText),
});

/** Takes with the same chain share their tracks, so these are formatted once. */
const inWords = new WeakMap<readonly TrackLine[], readonly string[]>();

function unitsOf({ on, tracks, asAt }: TakeTracks): readonly string[] {
  const known = inWords.get(tracks) ?? tracks.map(trackUnit);
  inWords.set(tracks, known);
  if (on.length === 0) return known;
  const whose = recordersText(on);
  if (asAt) return [`${whose}: tracks as at ${isolated(asAt)}`];
  const [first = 'nobody on a track', ...others] = known;
  return [`${whose}: ${first}`, ...others];
}

/** `'on Cart only'`, where another one missed it; `'24/1 to 24/9 on Cart only'` where it speaks for others. */
function recorderWords({ recorders, onSome, onSomeRun }: TakeLine): string[] {
  if (!onSome) return [];
  const takes = onSomeRun ? `${isolated(onSomeRun.from)} to ${isolated(onSomeRun.to)} ` : '';
  return [`${takes}on ${recordersText(recorders.map(({ name }) => name))} only`];
}

/** A lettered slate begins with its scene; a running number and a wild track do not include theirs. */
const sceneWords = ({ scene, text }: TakeLine): string[] =>
  scene && !text.startsWith(scene) ? [`scene ${isolated(scene)}`] : [];
