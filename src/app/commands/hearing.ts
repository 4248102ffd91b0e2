import * as hear from '../../commands/upkeep/hear.ts';
import { onAnyDay, onDay } from './command.ts';

export const followHeard = onAnyDay(hear.followHeard);
export const compareTimecode = onDay(hear.compareTimecode);
