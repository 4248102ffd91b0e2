import type { Answers } from '../../day/answers/answers.ts';
import type { RecorderAnswers } from '../../day/answers/recorder-answers.ts';
import { isHeard } from '../../day/answers/voice-answers.ts';
import { trackLabels } from '../../day/files/track-labels.ts';
import type { Day, Part, PartId, VoiceId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { hasSeveralRigs } from '../../day/recorders/recorder-parts.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import { partName } from './chain.ts';

type Named = Pick<Day, 'rig' | 'header'>;

export const recorderName = (day: Named, recorder: PartId): string =>
  recordersOf(day).find(({ id }) => id === recorder)?.name ?? recorder;

/** The recorder that an input, a track or a send is of, where that has to be said; else nothing. */
export const ofRecorder = (day: Named, part: Pick<Part, 'recorder'> | undefined): string =>
  part && hasSeveralRigs(day) ? recorderName(day, recorderOfPart(part)) : '';

/** An input's or a track's name, after its recorder's where there are several: `AES 1`, `Bag AES 1`. */
export const nameWithRecorder = (day: Named, id: PartId): string =>
  [ofRecorder(day, day.rig.byId.get(id)), partName(day.rig, id)].filter(Boolean).join(' ');

/** `track 5`; `Bag track 5` where several recorders have tracks. */
export const trackWithRecorder = (day: Named, id: PartId): string =>
  [ofRecorder(day, day.rig.byId.get(id)), `track ${trackLabels(day.rig).get(id) ?? partName(day.rig, id)}`]
    .filter(Boolean)
    .join(' ');

/** The recorders that roll, the main one first; of those that record the same, one. */
export function rollingRigs({ recorders }: Pick<Answers, 'recorders'>): RecorderAnswers[] {
  const rolling = recorders.filter(({ rolls }) => rolls);
  return rolling.filter(({ tracks }, at) => rolling.findIndex((one) => one.tracks === tracks) === at);
}

/** Whether a voice is heard on one recorder. */
export const isHeardBy = ({ voices }: Pick<RecorderAnswers, 'voices'>, voice: VoiceId): boolean =>
  voices.some((one) => one.voice.id === voice && isHeard(one));

/** `not on Bag`: the recorders that roll without getting a voice that another of them gets; else nothing. */
export function notOnWords(day: Named, rigs: readonly RecorderAnswers[], voices: readonly VoiceId[]): string {
  const heard = voices.filter((id) => rigs.some((rig) => isHeardBy(rig, id)));
  const without = rigs.filter((rig) => heard.some((id) => !isHeardBy(rig, id)));
  return without.length === 0
    ? ''
    : `not on ${without.map(({ recorder }) => recorderName(day, recorder)).join(' or ')}`;
}
