import * as described from '../../commands/describe.ts';
import * as growing from '../../commands/grow-rig.ts';
import { layOn } from '../../commands/lay-on.ts';
import * as laying from '../../commands/lay-rig.ts';
import type { RigSpec } from '../../commands/rig-spec.ts';
import type { StartingRig } from '../../commands/starting-rigs.ts';
import * as striking from '../../commands/strike-part.ts';
import type { Command } from '../day-store.ts';
import { onAnyDay, onDay } from './command.ts';

export type { ReceiverSpec } from '../../commands/lay-rig.ts';
export { freeNames } from '../../commands/part-names.ts';
export { type RigSpec, readRigSpec, shapeOf } from '../../commands/rig-spec.ts';
export { STARTING_RIGS } from '../../commands/starting-rigs.ts';
export { struckParts } from '../../commands/strike-part.ts';

export const layStartingRig =
  ({ lay }: StartingRig): Command =>
  (day) =>
    layOn(day, lay());
export const layRecorder =
  (spec: RigSpec): Command =>
  (day) =>
    layOn(day, laying.layRecorder(spec));
export const addReceiver = onDay(laying.addReceiver);
export const addTransmitters = onDay(laying.addTransmitters);
export const addSelectors = onDay(laying.addSelectors);
export const addInputs = onDay(growing.addInputs);
export const addTracks = onDay(growing.addTracks);
export const addSend = onDay(growing.addSend);
export const addOutput = onDay(growing.addOutput);
export const tuneBlock = onAnyDay(laying.tuneBlock);
export const describePart = onDay(described.describePart);
export const reservePart = onDay(striking.reservePart);
export const strikePart = onDay(striking.strikePart);
export const strikeRig = onDay(striking.strikeRig);
export const bringBackPart = onDay(striking.bringBackPart);
