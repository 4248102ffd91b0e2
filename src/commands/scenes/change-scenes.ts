import { castOf, notInCast } from '../../day/cast-of-scene.ts';
import type { Day, Slate } from '../../day/model.ts';
import type { Scene, SceneId } from '../../day/scene.ts';
import { sceneNumbered, scenesInOrder } from '../../day/scenes-in-order.ts';
import { slateAfter } from '../../day/takes.ts';
import { SCENE_TEXT_LONGEST, type SceneFields, type SceneState } from '../../facts/kinds/scenes-described.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing } from '../command.ts';
import { callSlate } from '../line/log-takes.ts';

const MOST_SCENES = 500;

const described = (scene: SceneId, fields: SceneFields): CommandResult =>
  ok([{ kind: 'scenes-described', scenes: [{ scene, fields }] }]);

/** Adds a scene by its number, at the end of the order. */
export function addScene(day: Day, number: string, id: SceneId): CommandResult {
  const name = number.trim();
  if (name === '' || name.length > SCENE_TEXT_LONGEST.number)
    return fail({ code: 'scene-number', longest: SCENE_TEXT_LONGEST.number });
  if (sceneNumbered(day, name)) return fail({ code: 'scene-twice', number: name });
  if (day.scenes.size >= MOST_SCENES) return fail({ code: 'too-many-scenes', most: MOST_SCENES });
  return described(id, { number: name, order: nextOrder(day) });
}

export const nextOrder = (day: Day): number =>
  Math.max(0, ...scenesInOrder(day).map(({ order }) => Math.min(order, 99_000))) + 1;

/** Sets fields of a scene; its number stays its own. */
export function describeScene(day: Day, scene: SceneId, fields: SceneFields): CommandResult {
  const known = day.scenes.get(scene);
  if (!known) return missing('scene', scene);
  if (fields.number !== undefined) {
    const name = fields.number.trim();
    if (name === '' || name.length > SCENE_TEXT_LONGEST.number)
      return fail({ code: 'scene-number', longest: SCENE_TEXT_LONGEST.number });
    const other = sceneNumbered(day, name);
    if (other && other.id !== scene) return fail({ code: 'scene-twice', number: name });
  }
  const changes = (Object.keys(fields) as (keyof SceneFields)[]).some(
    (name) => JSON.stringify(fields[name]) !== JSON.stringify(known[name]),
  );
  return changes ? described(scene, fields) : fail({ code: 'nothing-changed' });
}

/** Still to shoot, done, or moved to another day. */
export const markScene = (day: Day, scene: SceneId, state: SceneState): CommandResult =>
  describeScene(day, scene, { state });

/** Puts somebody into a scene, or takes them out. */
export function castInScene(day: Day, scene: SceneId, voice: string, isIn: boolean): CommandResult {
  const known = day.scenes.get(scene);
  if (!known) return missing('scene', scene);
  if (!day.voices.has(voice)) return missing('voice', voice);
  const cast = castOf(day, known).map(({ id }) => id);
  const voices = isIn ? [...new Set([...cast, voice])] : cast.filter((id) => id !== voice);
  // Whoever is known by now is named by id, so that taking somebody out also takes out their number.
  return describeScene(day, scene, { voices, others: notInCast(day, known) });
}

/** Moves a scene within those to shoot, by so many places. */
export function moveScene(day: Day, scene: SceneId, steps: number): CommandResult {
  const order = scenesInOrder(day).map(({ id }) => id);
  const from = order.indexOf(scene);
  if (from < 0) return missing('scene', scene);
  const to = Math.min(order.length - 1, Math.max(0, from + steps));
  const moved = order.toSpliced(from, 1).toSpliced(to, 0, scene);
  const scenes = moved
    .map((id, at) => ({ scene: id, fields: { order: at + 1 } }))
    .filter(({ scene: id, fields }) => day.scenes.get(id)!.order !== fields.order);
  return scenes.length === 0 ? fail({ code: 'nothing-changed' }) : ok([{ kind: 'scenes-described', scenes }]);
}

/** Calls the slate of a scene: its next setup. Who is needed follows (see `callSlate`). */
export function goToScene(day: Day, scene: SceneId): CommandResult {
  const known = day.scenes.get(scene);
  if (!known) return missing('scene', scene);
  return callSlate(day, slateOfScene(day, known));
}

/** The first slate of a scene that is not used yet. */
export function slateOfScene(day: Day, { number }: Scene): Slate {
  const scene = number.toUpperCase();
  if (day.header.slateStyle === 'numbered')
    return { ...(slateAfter(day) as Slate & { style: 'numbered' }), scene };
  const master: Slate = { style: 'lettered', scene, setup: 0 };
  const isUsed = [...day.takes.values()].some(
    ({ slate }) => slate.style === 'lettered' && slate.scene === scene && slate.setup === 0,
  );
  return isUsed ? slateAfter(day, master) : master;
}
