import * as z from 'zod/mini';
import { settingShapes } from './day-described.ts';
import { idText } from './envelope.ts';
import { kind } from './kind.ts';

/** The recorder of a day that names none: what is said of no recorder in particular is said of this one. */
export const FIRST_RECORDER = 'recorder';

const settings = z.object(settingShapes);

/** A recorder is set like this from here on; what is left out stays as it is. */
export const recorderSet = kind('recorder-set', z.object({ recorder: z.optional(idText), settings }));

/** These recorders roll from here on, and no others. Until it is said, the first one does. */
export const recordersRolling = kind(
  'recorders-rolling',
  z.object({ recorders: z.array(idText).check(z.minLength(1), z.maxLength(16)) }),
);

export type RecorderSettings = z.infer<typeof settings>;

export const SETTING_FIELDS = [
  'sampleRate',
  'bitDepth',
  'timecodeRate',
  'fileLayout',
  'filePattern',
] as const satisfies readonly (keyof RecorderSettings)[];
export type SettingField = (typeof SETTING_FIELDS)[number];
