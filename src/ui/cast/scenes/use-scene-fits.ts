import { useEffect, useState } from 'preact/hooks';
import { type SceneFit, tellSceneFits } from '../../../app/scene-fits.ts';
import type { Day } from '../../../day/model.ts';
import type { SceneId } from '../../../day/scene.ts';

const NONE: ReadonlyMap<SceneId, SceneFit> = new Map();

/** How the scenes to shoot fit the rig, as it is worked out; nothing without a rig to fit. */
export function useSceneFits(day: Day): ReadonlyMap<SceneId, SceneFit> {
  const [fits, setFits] = useState(NONE);
  useEffect(() => {
    if (day.rig.tracks.length === 0) return undefined;
    const found = new Map<SceneId, SceneFit>();
    return tellSceneFits(day, (fit) => {
      found.set(fit.scene, fit);
      setFits(new Map(found));
    });
  }, [day]);
  return fits;
}
