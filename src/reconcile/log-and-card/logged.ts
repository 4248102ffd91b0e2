import { type Answers, answersAtTake } from '../../day/answers/answers.ts';
import { fileNameOnTrack, fileNamesOf, fileNamesOn, nameTyped } from '../../day/files/file-name.ts';
import type { Day, PartId, Take } from '../../day/model.ts';
import { tracksOf } from '../../day/recorders/recorder-parts.ts';
import { mainAtTake, rollOn } from '../../day/recorders/rolling.ts';
import { settingsAtTake, startOfTake } from '../../day/settings/settings.ts';
import { slateText } from '../../day/slate.ts';
import { takesInOrder } from '../../day/takes.ts';
import { isOneOf } from '../../shared/open-word.ts';
import { stampMs } from './label-time.ts';
import { slateKey, stemKey } from './plain-key.ts';

/** A take in a form that can be compared with recordings. */
export interface Logged {
  readonly take: Take;
  /** The base name of all its files; mono files add the mark of their track. */
  readonly stem: string;
  /** The possible names of its files: the stem, and mono files of any track, recorded or not. */
  readonly stems: readonly string[];
  /** A typed name identifies the file. */
  readonly nameTyped: boolean;
  /** Possible scenes in a file: the slate itself, and other text that fits it. */
  readonly scenes: readonly string[];
  readonly looseScenes: readonly string[];
  readonly roll: string | undefined;
  readonly startMs: number | undefined;
  readonly lengthMs: number | undefined;
  /** Of the chain at the take. */
  readonly answers: Answers;
}

/** The takes as they would be on a recorder; as on the main one of each if none is named. */
export function loggedTakes(day: Day, recorder?: PartId): Logged[] {
  const onMain = fileNamesOf(day);
  const onOwn = recorder === undefined ? onMain : fileNamesOn(day, recorder);
  const nameOf = ({ id }: Take): string => onOwn.get(id) ?? onMain.get(id) ?? '';
  const onTracks = (take: Take): string[] =>
    settingsAtTake(day, take.id, recorder).fileLayout === 'mono' && take.kind !== 'mos'
      ? tracksOf(day.rig, recorder ?? mainAtTake(day, take.id)).map(({ id }) =>
          fileNameOnTrack(day, take, id, recorder),
        )
      : [];
  const startMs = (take: Take): number | undefined => {
    const start = startOfTake(day, take);
    return start ? stampMs(start) : undefined;
  };
  return takesInOrder(day).map((take) => {
    const answers = answersAtTake(day, take.id);
    return {
      take,
      stem: stemKey(nameOf(take)),
      stems: [nameOf(take), ...onTracks(take)].filter(Boolean).map(stemKey),
      nameTyped: nameTyped(day, take, recorder ?? mainAtTake(day, take.id)) !== '',
      ...scenesOf(take),
      roll: slateKey(rollOn(day, take.id, recorder ?? mainAtTake(day, take.id))) || undefined,
      startMs: startMs(take),
      lengthMs: take.length ? stampMs(take.length) : undefined,
      answers,
    };
  });
}

/** What recorders call takes without a slate (common practice, no source). */
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
