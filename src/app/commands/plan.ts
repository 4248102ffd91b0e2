import * as ahead from '../../commands/line/plan-ahead.ts';
import { setupFacts } from '../../plan/day/setup-plans.ts';
import { ok } from '../../shared/result.ts';
import { onAnyDay, onDay } from './command.ts';

export const pinVoice = onDay(ahead.pinVoice);
export const tickMove = onDay(ahead.tickMove);
export const markOut = onAnyDay(ahead.markOut);
export const weighMoves = onAnyDay(ahead.weighMoves);
/**
 * Records as one action that moves of plans were made, with whatever else the plans contain; where the unit moves also
 * who rolls from there on.
 */
export const acceptPlans = onDay((...said: Parameters<typeof setupFacts>) => ok(setupFacts(...said)));
