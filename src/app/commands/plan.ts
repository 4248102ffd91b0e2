import * as ahead from '../../commands/line/plan-ahead.ts';
import { unitFacts } from '../../plan/day/move-unit.ts';
import { factsOfPlan } from '../../plan/day/plan-facts.ts';
import { ok } from '../../shared/result.ts';
import { onAnyDay, onDay } from './command.ts';

export const pinVoice = onDay(ahead.pinVoice);
export const markOut = onAnyDay(ahead.markOut);
export const weighMoves = onAnyDay(ahead.weighMoves);
/** Records that moves of a plan were made, with whatever else the plan contains. */
export const acceptPlan = onDay((...wanted: Parameters<typeof factsOfPlan>) => ok(factsOfPlan(...wanted)));
/** Moves the unit as one action: who rolls from there on, and every move of the plans. */
export const moveUnit = onDay((...moved: Parameters<typeof unitFacts>) => ok(unitFacts(...moved)));
