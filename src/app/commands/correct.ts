import * as correcting from '../../commands/line/correct.ts';
import * as conflicts from '../../commands/line/resolve-conflict.ts';
import { onDay } from './command.ts';

export const takeBack = onDay(correcting.takeBack);
export const bringBack = onDay(correcting.bringBack);
export const moveBefore = onDay(correcting.moveBefore);
export const resolveConflict = onDay(conflicts.resolveConflict);
export const sayFieldAgain = onDay(conflicts.sayFieldAgain);
export const joinTakes = onDay(conflicts.joinTakes);
export const decideOrder = onDay(conflicts.decideOrder);
