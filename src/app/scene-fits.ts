import type { Day } from '../day/model.ts';
import { type SceneFit, sceneFits } from '../plan/ahead/scene-fit.ts';
import { workThrough } from './work-through.ts';

export type { SceneFit } from '../plan/ahead/scene-fit.ts';

/** Half a frame, so that taps work in between. */
const SLICE_MS = 8;

/** Works out how each scene to shoot fits the rig, and tells them one by one. Returns a function that stops it. */
export const tellSceneFits = (day: Day, tell: (fit: SceneFit) => void): (() => void) =>
  workThrough(sceneFits(day), SLICE_MS, tell, () => {});
