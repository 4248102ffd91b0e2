import { castInOrder } from './cast-in-order.ts';
import type { Day, Slate, Voice } from './model.ts';
import type { Scene } from './scene.ts';
import { slateText } from './slate.ts';

/** The scenes of the day in the order to shoot, without those removed. */
export const scenesInOrder = (day: Day): Scene[] =>
  [...day.scenes.values()].filter(({ struck }) => !struck).sort((a, b) => a.order - b.order);

/** Those to come: neither done nor moved to another day. A state that only a newer version knows is to come. */
export const scenesToShoot = (day: Day): Scene[] =>
  scenesInOrder(day).filter(({ state }) => state !== 'done' && state !== 'moved');

const plain = (text: string): string => text.toUpperCase().replace(/\s+/g, '');

/** The scene on the list that has this number. */
export const sceneNumbered = (day: Day, number: string): Scene | undefined =>
  scenesInOrder(day).find((scene) => plain(scene.number) === plain(number));

/**
 * The scene that a slate is of. Slate 46A is setup A of scene 46 if the list has 46, else scene 46A itself.
 */
export function sceneOfSlate(day: Day, slate: Slate): Scene | undefined {
  if (day.scenes.size === 0) return undefined;
  return (
    sceneNumbered(day, slate.scene) ??
    (slate.style === 'lettered' ? sceneNumbered(day, slateText(slate)) : undefined)
  );
}

/** Who of the cast is in a scene, in cast order: those named, and those whose number or part the sheet says. */
export function castOf(day: Day, { voices, others }: Scene): Voice[] {
  const said = new Set(others.map(plain));
  const isSaid = ({ number, part }: Voice): boolean =>
    (number !== '' && said.has(plain(number))) || (part !== '' && said.has(plain(part)));
  return castInOrder(day).filter((voice) => voices.includes(voice.id) || (said.size > 0 && isSaid(voice)));
}

/** What the sheet says of people who are not in the cast. */
export function notInCast(day: Day, scene: Scene): string[] {
  const cast = castOf(day, scene);
  return scene.others.filter(
    (one) => !cast.some(({ number, part }) => [number, part].some((name) => plain(name) === plain(one))),
  );
}
