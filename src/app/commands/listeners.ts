import * as listeners from '../../commands/upkeep/listeners.ts';
import { onDay } from './command.ts';

export { BOOM_OPERATOR, MIX, OWN_BOOM } from '../../commands/upkeep/listeners.ts';

export const addListener = onDay(listeners.addListener);
export const describeListener = onDay(listeners.describeListener);
export const hearPart = onDay(listeners.hearPart);
export const hearWords = onDay(listeners.hearWords);
export const handOut = onDay(listeners.handOut);
