import * as scenes from '../../commands/scenes/change-scenes.ts';
import { onDay } from './command.ts';

export { slateOfScene } from '../../commands/scenes/change-scenes.ts';

export const addScene = onDay(scenes.addScene);
export const describeScene = onDay(scenes.describeScene);
export const markScene = onDay(scenes.markScene);
export const castInScene = onDay(scenes.castInScene);
export const moveScene = onDay(scenes.moveScene);
export const goToScene = onDay(scenes.goToScene);
