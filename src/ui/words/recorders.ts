import { rollIn } from '../../day/chain/links.ts';
import type { Day, Part, PartId } from '../../day/model.ts';
import { ownPartsOf, recorderOfPart } from '../../day/recorders/recorder-parts.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import { countOf } from './chain.ts';
import { bitDepthWords, rateWords, sampleRateWords } from './recording.ts';

export const recorderName = (day: Pick<Day, 'rig' | 'header'>, recorder: PartId): string =>
  recordersOf(day).find(({ id }) => id === recorder)?.name ?? recorder;

/** Whether recorders besides the first have inputs or tracks of their own, so that a name alone says too little. */
export const hasSeveralRigs = ({ rig }: Pick<Day, 'rig'>): boolean =>
  rig.recorders.some(({ id }) => {
    const { inputs, tracks } = ownPartsOf(rig, id);
    return inputs.length + tracks.length > 0;
  });

/** The recorder that an input, a track or a send is of, where that has to be said; else nothing. */
export const ofRecorder = (day: Day, part: Pick<Part, 'recorder'> | undefined): string =>
  part && hasSeveralRigs(day) ? recorderName(day, recorderOfPart(part)) : '';

/** What a recorder has: `32 tracks, 16 inputs`, or whose tracks it records. */
export function recorderPartsWords(day: Day, recorder: PartId): string {
  const { inputs, tracks } = ownPartsOf(day.rig, recorder);
  const [first] = recordersOf(day);
  if (tracks.length === 0 && inputs.length === 0)
    return recorder === first!.id ? 'no tracks yet' : `the same tracks as ${first!.name}`;
  return `${countOf(tracks.length, 'track')}, ${countOf(inputs.length, 'input')}`;
}

/** What a recorder is set to now: `roll 14A, 25 fps, 48 kHz, 24-bit`. */
export function recorderSetWords(day: Day, recorder: PartId): string {
  const { timecodeRate, sampleRate, bitDepth } = settingsNow(day, recorder);
  const roll = rollIn(day.tail, recorder)?.value;
  return [
    roll ? `roll ${roll}` : 'no roll',
    rateWords(timecodeRate),
    sampleRateWords(sampleRate),
    bitDepthWords(bitDepth),
  ].join(', ');
}
