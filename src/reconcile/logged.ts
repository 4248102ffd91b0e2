import { answersAtTake } from '../day/answers.ts';
import { fileNamesOf } from '../day/file-name.ts';
import type { Day, Take } from '../day/model.ts';
import { slateText } from '../day/slate.ts';
import { takesInOrder } from '../day/takes.ts';
import { stampMs } from './label-time.ts';
import { slateKey, stemKey } from './plain-key.ts';

/** A take in the form in which it is compared with recordings. */
export interface Logged {
  readonly take: Take;
  readonly stem: string;
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
  return takesInOrder(day).map((take) => ({
    take,
    stem: stemKey(names.get(take.id) ?? ''),
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
  if (kind === 'wild' || kind === 'tone') {
    const words: readonly string[] = SERIES[kind];
    return { scenes: [...words, ...words.map((word) => `${word}${number}`)], looseScenes: [own] };
  }
  if (slate.style === 'lettered') return { scenes: [own], looseScenes: [] };
  const scene = slateKey(slate.scene);
  return scene === ''
    ? { scenes: [own], looseScenes: [] }
    : { scenes: [own, `${scene}${own}`], looseScenes: [scene] };
}
