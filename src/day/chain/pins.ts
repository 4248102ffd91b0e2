import type { Pins } from '../../facts/kinds/plan-settings.ts';
import { FIRST_RECORDER } from '../../facts/kinds/recorder-set.ts';
import type { PartId, Rig, VoiceId } from '../model.ts';
import { recorderOfPart } from '../recorder-of-part.ts';
import { type LinkReader, pinsOf } from './links.ts';

/** The recorder that is asked for, one with inputs and tracks of its own, and whether it is the main one. */
export interface PinsAsked {
  readonly recorder: PartId;
  readonly isMain: boolean;
}

/**
 * What a voice keeps on one recorder. The pack is the same on all. What was said of no recorder is of the main one, but
 * for an input and a track, which are of the recorder that they are on.
 */
export function pinsOn(rig: Rig, links: LinkReader, voice: VoiceId, { recorder, isMain }: PinsAsked): Pins {
  const isOf = recorder === FIRST_RECORDER || isMain;
  const isOn = (id: PartId | undefined): boolean => {
    const part = rig.byId.get(id ?? '');
    return part ? recorderOfPart(part) === recorder : isOf;
  };
  const { channel, alone, input, track, ...said } = pinsOf(links, voice)?.value ?? {};
  const own = recorder === FIRST_RECORDER ? {} : (pinsOf(links, voice, recorder)?.value ?? {});
  return {
    ...said,
    ...(isOf && channel && { channel }),
    ...(isOf && alone && { alone }),
    ...(input && isOn(input) && { input }),
    ...(track && isOn(track) && { track }),
    ...own,
  };
}

/** Everything that is pinned of a voice: of no recorder in particular, then of each that has pins of its own. */
export const allPins = (
  rig: Pick<Rig, 'recorders'>,
  links: LinkReader,
  voice: VoiceId,
): { readonly recorder: PartId | undefined; readonly pins: Pins }[] =>
  [undefined, ...rig.recorders.map(({ id }) => id)].flatMap((recorder) => {
    const pins = pinsOf(links, voice, recorder)?.value;
    return pins ? [{ recorder, pins }] : [];
  });
