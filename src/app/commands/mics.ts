import * as mics from '../../commands/line/mount-mic.ts';
import { onDay } from './command.ts';

export type { OneMic } from '../../commands/line/mount-mic.ts';

export const mountMic = onDay(mics.mountMic);
export const micAsOn = onDay(mics.micAsOn);
export const keepMic = onDay(mics.keepMic);
