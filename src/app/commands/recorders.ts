import * as back from '../../commands/line/back-again.ts';
import * as rolling from '../../commands/line/roll-recorders.ts';
import * as set from '../../commands/line/set-recorder.ts';
import { onDay } from './command.ts';

export { type WayBack, wayBack } from '../../commands/line/back-again.ts';

export const addRecorder = onDay(rolling.addRecorder);
export const rollRecorders = onDay(rolling.rollRecorders);
export const loadRoll = onDay(rolling.loadRoll);
export const correctRolling = onDay(rolling.correctRolling);
export const setRecorder = onDay(set.setRecorder);
export const backAgain = onDay(back.backAgain);
