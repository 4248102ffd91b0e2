import { answersAtTake } from '../../day/answers/answers.ts';
import { fileNameOnTrack, fileNamesOf } from '../../day/files/file-name.ts';
import { filledHeader } from '../../day/header.ts';
import type { Day, Take } from '../../day/model.ts';
import { slateText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { stampMs } from './label-time.ts';
import { slateKey, stemKey } from './plain-key.ts';

/** A take in the form in which it is compared with recordings. */
export interface Logged {
  readonly take: Take;
  /** What all its files are called; behind it mono files have the mark of their track. */
  readonly stem: string;
  /** What a file of it may be called: the stem, and those of mono files of any track, recorded or not. */
  readonly stems: readonly string[];
  /** A name typed by hand says which file it is. */
  readonly nameTyped: boolean;
  /** What a file may say as its scene: the slate itself, and what only fits it. */
  readonly scenes: readonly string[];
  readonly looseScenes: readonly string[];
  readonly roll: string | undefined;
  readonly startMs: number | undefined;
  readonly lengthMs: number | undefined;
}

/** The takes of the day in order, MOS too. */
export function loggedTakes(day: Day): Logged[] {
  const names = fileNamesOf(day);
  const isMono = filledHeader(day.header).fileLayout === 'mono';
  const onTracks = (take: Take): string[] =>
    isMono && take.kind !== 'mos' ? day.rig.tracks.map(({ id }) => fileNameOnTrack(day, take, id)) : [];
  return takesInOrder(day).map((take) => ({
    take,
    stem: stemKey(names.get(take.id) ?? ''),
    stems: [names.get(take.id) ?? '', ...onTracks(take)].filter(Boolean).map(stemKey),
    nameTyped: (take.file ?? '').trim() !== '',
    ...scenesOf(take),
    roll: slateKey(answersAtTake(day, take.id).roll) || undefined,
    startMs: take.start ? stampMs(take.start) : undefined,
    lengthMs: take.length ? stampMs(take.length) : undefined,
  }));
}

/** How recorders call what has no slate (common practice, no source). */
export const SERIES = {
  wild: ['WT', 'WILD', 'WILDTRACK'],
  tone: ['RT', 'TONE', 'ROOMTONE', 'AMB', 'ATMOS'],
} as const;

function scenesOf({ kind, slate, number }: Take): Pick<Logged, 'scenes' | 'looseScenes'> {
  const own = slateKey(slateText(slate));
  const words: readonly string[] | undefined = isOneOf(['wild', 'tone'], kind) ? SERIES[kind] : undefined;
  if (words) {
    return { scenes: [...words, ...words.map((word) => `${word}${number}`)], looseScenes: [own] };
  }
  if (slate.style === 'unread') return { scenes: [], looseScenes: [] };
  if (slate.style === 'lettered') return { scenes: [own], looseScenes: [] };
  const scene = slateKey(slate.scene);
  return scene === ''
    ? { scenes: [own], looseScenes: [] }
    : { scenes: [own, `${scene}${own}`], looseScenes: [scene] };
}
