import { castOf } from '../../day/cast-of-scene.ts';
import type { Day, FactOf, Voice } from '../../day/model.ts';
import type { Scene } from '../../day/scene.ts';
import { sceneNumbered } from '../../day/scenes-in-order.ts';
import { unknownText } from '../../shared/open-word.ts';
import { countOf, nameOf } from './chain.ts';

const TOLD = 8;

/** `'1, 2, 5'`: cast numbers, or names where there are none. */
export function numbersOf(day: Day, voices: readonly Voice[]): string {
  const told = voices.slice(0, TOLD).map(({ id, number }) => number || nameOf(day, id));
  const more = voices.length - told.length;
  return [...told, ...(more > 0 ? [`${more} more`] : [])].join(', ');
}

/** `'2 3/8 pages'`, `'3/8 page'`. */
export const pagesWords = (pages: string): string =>
  pages === '' ? '' : `${pages} ${/^(?:1|[0-7]\/8)$/.test(pages) ? 'page' : 'pages'}`;

/** Why somebody is needed: `'scene 46: 1, 2, 5'`. */
export function sceneNeedWords(day: Day, number: string): string {
  const scene = sceneNumbered(day, number);
  const cast = scene ? numbersOf(day, castOf(day, scene)) : '';
  return `scene ${number}: ${cast || 'nobody'}`;
}

const STATES: Readonly<Record<string, string>> = {
  'to-shoot': 'to shoot',
  done: 'done',
  moved: 'moved to another day',
};

/** Whether a scene is done; nothing is said of one that is still to come. */
export const stateOfScene = ({ state }: Pick<Scene, 'state'>): string =>
  state === 'to-shoot' ? '' : (STATES[state] ?? unknownText(state));

/** What was said of scenes, in one line. */
export function scenesWords(day: Day, { scenes }: FactOf<'scenes-described'>): string {
  const [first] = scenes;
  if (scenes.length !== 1 || !first) return `${countOf(scenes.length, 'scene')} edited`;
  const name = `scene ${first.fields.number ?? day.scenes.get(first.scene)?.number ?? ''}`.trim();
  const { state, struck } = first.fields;
  if (struck) return `${name} removed`;
  if (state !== undefined) return `${name} ${STATES[state] ?? unknownText(state)}`;
  if (struck === false) return `${name} brought back`;
  return `${name} edited`;
}
