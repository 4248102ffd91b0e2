import type { Day, Slate, Voice } from './model.ts';
import type { Scene } from './scene.ts';
import { slateText } from './slate.ts';

/** The scenes of the day in the order to shoot, without those removed. */
export const scenesInOrder = (day: Day): Scene[] =>
  [...day.scenes.values()].filter(({ struck }) => !struck).sort((a, b) => a.order - b.order);

/** Those to come: neither done nor moved to another day. A state that only a newer version knows is to come. */
export const scenesToShoot = (day: Day): Scene[] =>
  scenesInOrder(day).filter(({ state }) => state !== 'done' && state !== 'moved');

/** Those to come after a scene; all of them where it is not on the list. */
export const scenesAfter = (day: Day, scene: Scene | undefined): Scene[] =>
  scenesToShoot(day).filter(
    ({ id, order }) => id !== scene?.id && (scene === undefined || order > scene.order),
  );

/** The next one to shoot after a scene, or else the first that was passed over. */
export const sceneAfter = (day: Day, scene: Scene | undefined): Scene | undefined =>
  scenesAfter(day, scene)[0] ?? scenesToShoot(day).find(({ id }) => id !== scene?.id);

/** Names and numbers as they are compared. */
export const plainName = (text: string): string => text.toUpperCase().replace(/\s+/g, '');

/** The scene on the list that has this number. */
export const sceneNumbered = (day: Day, number: string): Scene | undefined =>
  scenesInOrder(day).find((scene) => plainName(scene.number) === plainName(number));

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

/** Who is in a scene, in no order: those named, and those whose number or part the sheet says. */
export function voicesIn(day: Day, { voices, others }: Scene): Voice[] {
  const said = new Set(others.map(plainName));
  const isSaid = ({ number, part }: Voice): boolean =>
    (number !== '' && said.has(plainName(number))) || (part !== '' && said.has(plainName(part)));
  return [...day.voices.values()].filter(
    (voice) => !voice.struck && (voices.includes(voice.id) || (said.size > 0 && isSaid(voice))),
  );
}
