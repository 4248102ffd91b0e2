import { liveSources } from '../chain/reach.ts';
import type { PartId } from '../model.ts';
import type { ChainAnswers } from './answering.ts';

/** Where somebody is muted, or would be without muting anybody else. */
export interface MutePoint {
  readonly part: PartId;
  readonly muted: boolean;
}

/**
 * Where to mute who comes in by an input, or unmute them: at the input; or at the body, if they are muted there or
 * somebody else comes in by the same input. `transmitter` is null for a hardline.
 */
export function mutePointOf(
  { inputs }: Pick<ChainAnswers, 'inputs'>,
  input: PartId,
  transmitter: PartId | null,
): MutePoint {
  const reach = inputs.find((one) => one.input.id === input)?.reach;
  if (!reach || reach.muted || transmitter === null) return { part: input, muted: reach?.muted ?? false };
  const live = liveSources(reach);
  if (live.some((one) => one.transmitter === transmitter && one.mutedAtBody))
    return { part: transmitter, muted: true };
  return live.some((one) => one.transmitter !== transmitter)
    ? { part: transmitter, muted: false }
    : { part: input, muted: false };
}
