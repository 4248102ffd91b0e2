import { answersNow } from '../../day/answers/answers.ts';
import { pinsOf } from '../../day/chain/links.ts';
import { pinsOn } from '../../day/chain/pins.ts';
import type { Day, PartId, Pins, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';

/** What can be pinned of a voice, as it has it now. */
export interface Pinnable {
  readonly pin: Exclude<keyof Pins, 'alone'>;
  readonly id: PartId;
}

/** What a voice has on one recorder, and what of that it keeps. */
export interface PinGroup {
  /** Undefined for what is of none: the pack. */
  readonly recorder: PartId | undefined;
  readonly has: readonly Pinnable[];
  readonly pins: Pins;
}

/** What a voice has, the pack first and then what is of each recorder that it comes into, the main one's first. */
export function pinGroups(day: Day, voice: VoiceId): PinGroup[] {
  const { links, voices, main } = answersNow(day);
  const mainOne = recordsAs(day.rig, main.recorder);
  const paths = voices.find((one) => one.voice.id === voice)?.paths ?? [];
  const homeOf = (input: PartId | null): PartId => {
    const part = day.rig.byId.get(input ?? '');
    return part ? recorderOfPart(part) : mainOne;
  };
  const homes = [...new Set([mainOne, ...paths.map(({ input }) => homeOf(input))])];
  const pack = paths[0]?.transmitter;
  const groups = homes.map((recorder): PinGroup => {
    const path = paths.find(({ input }) => homeOf(input) === recorder);
    return {
      recorder,
      has: known([
        ['channel', path?.transmitter && path.channel],
        ['input', path?.input],
        ['track', path?.tracks[0]],
      ]),
      pins: pinsOn(day.rig, links, voice, { recorder, isMain: recorder === mainOne }),
    };
  });
  const pins = pinsOf(links, voice)?.value ?? {};
  return [{ recorder: undefined, has: known([['transmitter', pack]]), pins }, ...groups];
}

const known = (has: readonly (readonly [Pinnable['pin'], PartId | null | undefined])[]): Pinnable[] =>
  has.flatMap(([pin, id]) => (id ? [{ pin, id }] : []));
