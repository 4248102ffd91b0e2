import * as cast from '../../commands/cast/change-cast.ts';
import * as described from '../../commands/day/describe.ts';
import { onAnyDay, onDay } from './command.ts';

export { movedBy, nextRank } from '../../commands/cast/change-cast.ts';

export const addVoice = onAnyDay(described.addVoice);
export const describeVoice = onDay(described.describeVoice);
export const strikeVoice = onDay(cast.strikeVoice);
export const reinstateVoice = onDay(cast.reinstateVoice);
export const rankVoices = onDay(cast.rankVoices);
export const sayWhoIsNeeded = onDay(cast.sayWhoIsNeeded);
