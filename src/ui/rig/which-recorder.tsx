import { useState } from 'preact/hooks';
import type { PartId } from '../../day/model.ts';
import { recordsAs } from '../../day/recorders/recorder-ids.ts';
import { hasSeveralRigs, ownPartsOf } from '../../day/recorders/recorder-parts.ts';
import { recordersOf, rollingNow } from '../../day/recorders/rolling.ts';
import { useDay } from '../frame/context.ts';
import { Choice } from '../kit/field.tsx';

/** The recorder that something is added to: the one that rolls, until another is chosen. */
export function useWhichRecorder() {
  const day = useDay().day.value;
  const all = recordersOf(day);
  // A backup with the tracks of another grows only if that is meant.
  const [recorder, setRecorder] = useState<PartId>(() => recordsAs(day.rig, rollingNow(day)[0]!.id));
  const name = all.find(({ id }) => id === recorder)?.name ?? '';
  const isFirstOfItsOwn = recorder !== all[0]!.id && ownPartsOf(day.rig, recorder).tracks.length === 0;
  return {
    all,
    recorder,
    setRecorder,
    /** Whose section shows it. */
    of: hasSeveralRigs(day) || isFirstOfItsOwn ? name : undefined,
    /** For the end of a message. */
    words: all.length > 1 ? ` to ${name}` : '',
    isFirstOfItsOwn,
  };
}

/** Which of several recorders gets it. */
export function WhichRecorder(to: ReturnType<typeof useWhichRecorder>) {
  const { all, recorder, setRecorder, isFirstOfItsOwn } = to;
  if (all.length === 1) return null;
  return (
    <>
      <Choice
        label="Recorder"
        value={recorder}
        options={all.map(({ id, name }) => ({ value: id, name }))}
        onChoose={setRecorder}
      />
      {isFirstOfItsOwn && (
        <p class="soft">
          It records the tracks of {all[0]!.name} until it has tracks of its own; then it records those.
        </p>
      )}
    </>
  );
}
