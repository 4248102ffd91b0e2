import type { SceneFields } from '../facts/kinds/scenes-described.ts';

export type SceneId = string;

/** A scene of the day, with defaults for all that was not said. */
export interface Scene extends Readonly<{ [Field in keyof SceneFields]-?: NonNullable<SceneFields[Field]> }> {
  readonly id: SceneId;
}

const LAST = 100_000;

export const mergeScene = (old: Scene | undefined, id: SceneId, fields: SceneFields): Scene => ({
  id,
  number: '',
  intExt: '',
  set: '',
  dayNight: '',
  pages: '',
  synopsis: '',
  crowd: '',
  voices: [],
  others: [],
  order: LAST,
  state: 'to-shoot',
  struck: false,
  ...old,
  ...(fields as Partial<Scene>),
});
