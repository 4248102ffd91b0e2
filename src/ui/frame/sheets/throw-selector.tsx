import { throwSelectors } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import type { PartId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { positionName } from '../../words/facts.ts';
import { useDay, useRun } from '../context.ts';

interface ThrowProps {
  readonly input: PartId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Throws the selector before an input to its other position; nothing if it has none. */
export function ThrowSelector({ input, before, onDone }: ThrowProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { inputs } = answersBefore(day, before);
  const selector = inputs.find((one) => one.input.id === input)?.reach.selector;
  if (!selector) return null;
  const { part, position } = selector;
  const other = position === 'a' ? 'b' : 'a';
  const to = `${part.name} to ${positionName(day, part.id, other)}`;
  return (
    <Button onClick={() => run(throwSelectors([part.id], other, { before }), to) && onDone()}>{to}</Button>
  );
}
