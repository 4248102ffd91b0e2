import { swapLeads } from '../../../app/commands/chain.ts';
import { answersBefore } from '../../../day/answers/answers.ts';
import { swapsFor } from '../../../day/answers/inputs-to-offer.ts';
import type { VoiceId } from '../../../day/model.ts';
import { Button } from '../../kit/button.tsx';
import { nameOf } from '../../words/chain.ts';
import { useDay, useRun } from '../context.ts';

interface SwapProps {
  readonly voice: VoiceId;
  readonly before: string | undefined;
  readonly onDone: () => void;
}

/** Two booms exchange their inputs, and with them their tracks. */
export function SwapLeads({ voice, before, onDone }: SwapProps) {
  const day = useDay().day.value;
  const run = useRun();
  const name = nameOf(day, voice);
  return (
    <>
      {swapsFor(answersBefore(day, before), voice).map(({ voice: { id } }) => {
        const other = nameOf(day, id);
        const swap = (): void => {
          if (run(swapLeads(voice, id, { before }), `${name} and ${other} swapped`)) onDone();
        };
        return (
          <Button key={id} onClick={swap}>
            Swap with {other}
          </Button>
        );
      })}
    </>
  );
}
