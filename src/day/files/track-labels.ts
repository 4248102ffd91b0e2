import type { Part, PartId, Rig } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';

const memory = new WeakMap<readonly Part[], ReadonlyMap<PartId, string>>();

/**
 * The labels of the tracks, in order, all different on one recorder: `'5'`. A mix named by a word is called by its
 * position, or by the word if another track has that number: `'L'`. Remaining duplicates get their position:
 * `'5 (place 7)'`.
 */
export function trackLabels({ tracks }: Rig): ReadonlyMap<PartId, string> {
  const known = memory.get(tracks);
  if (known) return known;
  const labels = new Map(ofEachRecorder(tracks).flatMap((own) => [...labelsOf(own)]));
  memory.set(tracks, labels);
  return labels;
}

/** The tracks of each recorder that has some. */
export function ofEachRecorder(tracks: readonly Part[]): Part[][] {
  const recorders = [...new Set(tracks.map(recorderOfPart))];
  return recorders.map((recorder) => tracks.filter((track) => recorderOfPart(track) === recorder));
}

function labelsOf(tracks: readonly Part[]): ReadonlyMap<PartId, string> {
  const labels = new Map<PartId, string>();
  const taken = new Set<string>();
  const call = (track: Part, words: Iterable<string>): void => {
    if (labels.has(track.id)) return;
    for (const word of words) {
      const read = readAs(word);
      if (read === '' || taken.has(read)) continue;
      taken.add(read);
      labels.set(track.id, word.trim());
      return;
    }
  };
  // Numbered tracks keep their numbers; unnumbered mixes take what is left.
  for (const track of tracks) if (!isMixByWord(track)) call(track, [track.name]);
  for (const [at, track] of tracks.entries()) if (isMixByWord(track)) call(track, [`${at + 1}`, track.name]);
  for (const [at, track] of tracks.entries()) call(track, withPlace(track.name.trim(), at + 1));
  return new Map(tracks.map(({ id }) => [id, labels.get(id)!]));
}

/** Endless, so one of these is always free. */
function* withPlace(name: string, place: number): Generator<string> {
  const isRead = readAs(name) !== '';
  if (!isRead) yield `${place}`;
  for (let beside = `${place}`; ; beside += ` ${place}`) yield `${isRead ? name : 'track'} (place ${beside})`;
}

export const isNumber = (text: string): boolean => /^\d+$/.test(text.trim());

export const isMixByWord = ({ mix, name }: Part): boolean => mix === true && !isNumber(name);

/** Names that look alike count as equal: ignores case, width, spaces and invisible characters. */
const readAs = (text: string): string =>
  text
    .replaceAll(/[\p{C}\s]+/gu, '')
    .normalize('NFKC')
    .replaceAll(/\s+/gu, '')
    .toUpperCase();
