import { useState } from 'preact/hooks';
import { rollIn } from '../../../day/chain/links.ts';
import type { PartId } from '../../../day/model.ts';
import { Choice, TextField } from '../../kit/field.tsx';
import { useDay } from '../context.ts';

/** The sound roll of a recorder as it is typed, and from when it was in if it is entered late. */
export function useRoll(recorder?: PartId) {
  const day = useDay().day.value;
  const known = rollIn(day.tail, recorder)?.value ?? '';
  const [typed, setTyped] = useState(known);
  const [from, setFrom] = useState<'first' | 'now'>('first');
  const [firstTake] = day.takeOrder;
  const name = typed.trim();
  const isSaid = name !== known && name !== '';
  // The takes so far have no roll, and most likely it was in all along.
  const isLateFirst = isSaid && firstTake !== undefined && known === '';
  return {
    typed,
    setTyped,
    from,
    setFrom,
    name,
    isSaid,
    isLateFirst,
    /** The take that it goes before, if it was in from the first one on. */
    before: isLateFirst && from === 'first' ? firstTake : undefined,
  };
}

export const RollField = ({ typed, setTyped }: ReturnType<typeof useRoll>) => (
  <TextField label="Sound roll from here on" value={typed} onInput={setTyped} capitals="characters" />
);

export function RollFrom({ name, isLateFirst, from, setFrom }: ReturnType<typeof useRoll>) {
  if (!isLateFirst) return null;
  return (
    <Choice
      label={`Roll ${name} was in from`}
      value={from}
      options={[
        { value: 'first', name: 'The first take on' },
        { value: 'now', name: 'Here on' },
      ]}
      onChoose={setFrom}
    />
  );
}
