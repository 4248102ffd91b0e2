import * as chain from '../../commands/line/change-chain.ts';
import * as runs from '../../commands/rig/plug-run.ts';
import { onDay } from './command.ts';

export { inputsFrom, leadFrom, likelyInput, outputsFor, pairUp } from '../../commands/rig/plug-run.ts';

export const giveTransmitter = onDay(chain.giveTransmitter);
export const tuneChannel = onDay(chain.tuneChannel);
export const throwSelectors = onDay(chain.throwSelectors);
export const sendInput = onDay(chain.sendInput);
export const moveToTrack = onDay(chain.moveToTrack);
export const setMute = onDay(chain.setMute);
export const declareGang = onDay(chain.declareGang);
export const dissolveGang = onDay(chain.dissolveGang);
export const nameTrack = onDay(chain.nameTrack);
export const markNeed = onDay(chain.markNeed);
export const plugRun = onDay(runs.plugRun);
export const swapLeads = onDay(runs.swapLeads);
