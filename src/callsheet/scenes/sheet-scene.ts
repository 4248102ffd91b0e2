import { type How, weaker } from '../cells/how-found.ts';

export const SCENE_CELLS = [
  'number',
  'intExt',
  'set',
  'dayNight',
  'pages',
  'cast',
  'crowd',
  'synopsis',
] as const;
export type SceneCell = (typeof SCENE_CELLS)[number];

/** A scene of a call sheet or schedule, in the words of the sheet. */
export interface SheetScene {
  /** The lines it was read from, counted from 1. */
  readonly lines: readonly number[];
  /** `'46A'`, `'46pt2'`, `'12-14'`. */
  readonly number: string;
  /** `'INT'`, `'EXT'`, `'INT/EXT'`, or empty. */
  readonly intExt: string;
  readonly set: string;
  /** As written: `'DAY'`, `'N2'`. */
  readonly dayNight: string;
  /** In eighths: `'2 3/8'`. */
  readonly pages: string;
  /** Cast numbers, or names where the sheet has names. */
  readonly cast: readonly string[];
  /** Background as written: `'ATMOS'`, `'12 x Villagers'`. */
  readonly crowd: string;
  readonly synopsis: string;
  /** For each cell that holds something. */
  readonly how: Readonly<Partial<Record<SceneCell, How>>>;
}

/** A scene being read. */
export interface SceneDraft {
  lines: number[];
  number: string;
  intExt: string;
  set: string;
  dayNight: string;
  pages: string;
  cast: string[];
  crowd: string;
  synopsis: string;
  how: Partial<Record<SceneCell, How>>;
}

export const emptyScene = (line: number): SceneDraft => ({
  lines: [line],
  number: '',
  intExt: '',
  set: '',
  dayNight: '',
  pages: '',
  cast: [],
  crowd: '',
  synopsis: '',
  how: {},
});

/** Adds a text to a cell; what is there already stays in front. */
export function addCell(scene: SceneDraft, cell: Exclude<SceneCell, 'cast'>, text: string, how: How): void {
  if (text === '') return;
  const had = scene[cell];
  scene[cell] = had === '' ? text : `${had} ${text}`;
  scene.how[cell] = weaker(scene.how[cell] ?? how, how);
}

/** Adds people to a scene, each once. */
export function addPeople(scene: SceneDraft, people: readonly string[], how: How): void {
  const fresh = people.filter((one) => !scene.cast.includes(one));
  if (fresh.length === 0) return;
  scene.cast.push(...fresh);
  scene.how.cast = weaker(scene.how.cast ?? how, how);
}
