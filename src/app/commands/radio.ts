import * as radio from '../../commands/upkeep/plan-radio.ts';
import { onAnyDay, onDay } from './command.ts';

export const setGuards = onAnyDay(radio.setGuards);
export const setFrequencies = onDay(radio.setFrequencies);
export const switchTransmitters = onDay(radio.switchTransmitters);
export const describeCarrier = onDay(radio.describeCarrier);
export const describeBand = onDay(radio.describeBand);
export const markOccupied = onDay(radio.markOccupied);
