import { castOrder } from './cast-in-order.ts';
import type { Day, Voice } from './model.ts';
import type { Scene } from './scene.ts';
import { plainName, voicesIn } from './scenes-in-order.ts';

/** Who is in a scene, in cast order. */
export const castOf = (day: Day, scene: Scene): Voice[] => voicesIn(day, scene).sort(castOrder);

/** What the sheet says of people who are not in the cast. */
export function notInCast(day: Day, scene: Scene): string[] {
  const cast = voicesIn(day, scene);
  const isKnown = (one: string): boolean =>
    cast.some(({ number, part }) => [number, part].some((name) => plainName(name) === plainName(one)));
  return scene.others.filter((one) => !isKnown(one));
}
