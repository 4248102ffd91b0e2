import { rollIn } from '../../day/chain/links.ts';
import type { Day, PartId } from '../../day/model.ts';
import { ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { settingsNow } from '../../day/settings/settings.ts';
import { countOf } from './chain.ts';
import { bitDepthWords, rateWords, sampleRateWords } from './recording.ts';

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
