import * as described from '../../commands/day/describe.ts';
import { type Beside, layBeside } from '../../commands/day/lay-beside.ts';
import * as growing from '../../commands/rig/grow-rig.ts';
import { layOn } from '../../commands/rig/lay-on.ts';
import * as laying from '../../commands/rig/lay-rig.ts';
import type { RigSpec } from '../../commands/rig/rig-spec.ts';
import type { StartingRig } from '../../commands/rig/starting-rigs.ts';
import * as striking from '../../commands/rig/strike-part.ts';
import type { Command } from '../day-store.ts';
import { onAnyDay, onDay } from './command.ts';

export type { Beside } from '../../commands/day/lay-beside.ts';
export type { ReceiverSpec } from '../../commands/rig/lay-rig.ts';
export { freeNames } from '../../commands/rig/part-names.ts';
export { type RigSpec, readRigSpec, shapeOf } from '../../commands/rig/rig-spec.ts';
export { STARTING_RIGS } from '../../commands/rig/starting-rigs.ts';
export { struckParts } from '../../commands/rig/strike-part.ts';

export const layStartingRig =
  ({ lay }: StartingRig): Command =>
  (day) =>
    layOn(day, lay());
export const layRecorder =
  (spec: RigSpec): Command =>
  (day) =>
    layOn(day, laying.layRecorder(spec));
/** Lays a ready rig, or a recorder described in a sentence, beside the rig that is there. */
export const layStartingRigBeside =
  ({ lay }: StartingRig, beside: Beside): Command =>
  (day) =>
    layBeside(day, lay(), beside);
export const layRecorderBeside =
  (spec: RigSpec, beside: Beside): Command =>
  (day) =>
    layBeside(day, laying.layRecorder(spec), beside);
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
