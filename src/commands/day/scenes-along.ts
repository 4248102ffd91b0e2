import type { Day } from '../../day/model.ts';
import { scenesInOrder } from '../../day/scenes-in-order.ts';
import type { Draft } from '../../facts/fact.ts';
import type { SceneFields } from '../../facts/kinds/scenes-described.ts';

const MOST = 500;

/** The scenes that are not done, to be shot in the order they had; those moved to another day come after the others. */
export function scenesAlong(day: Day): Draft[] {
  const voices = new Set([...day.voices.values()].filter(({ struck }) => !struck).map(({ id }) => id));
  const left = scenesInOrder(day).filter(({ state }) => state !== 'done');
  const inOrder = [
    ...left.filter(({ state }) => state !== 'moved'),
    ...left.filter(({ state }) => state === 'moved'),
  ];
  const scenes = inOrder
    .slice(0, MOST)
    .map(({ id, struck: _struck, state: _state, order: _order, ...said }, at) => {
      const fields: SceneFields = {
        ...said,
        voices: said.voices.filter((one) => voices.has(one)),
        order: at + 1,
      };
      const filled = Object.entries(fields).filter(([, value]) => value !== '' && !isEmpty(value));
      return { scene: id, fields: Object.fromEntries(filled) as SceneFields };
    });
  return scenes.length === 0 ? [] : [{ kind: 'scenes-described', scenes }];
}

const isEmpty = (value: unknown): boolean => Array.isArray(value) && value.length === 0;
