import { bringBack, takeBack } from '../../../app/commands/correct.ts';
import type { LineItem } from '../../../day/model.ts';
import { isJoined, joinsOf } from '../../../day/phones/one-take.ts';
import { takeText } from '../../../day/slate.ts';
import { takeFrom } from '../../../day/takes.ts';
import { Button } from '../../kit/button.tsx';
import { Sheet } from '../../kit/sheet.tsx';
import { useDay, useRun } from '../context.ts';

interface TakenBackProps {
  readonly item: LineItem;
  readonly onClose: () => void;
}

/** A take that counts no more: it was removed, or is the same as one that another phone logged. */
export function TakenBackSheet({ item, onClose }: TakenBackProps) {
  const day = useDay().day.value;
  const run = useRun();
  const { fact } = item;
  const name = fact.kind === 'take-logged' ? takeText(takeFrom(fact)) : 'Take';
  if (isJoined(day, item))
    return (
      <Sheet
        title={`${name}, logged on two phones`}
        under="One take: its notes and marks stand with the other."
        onClose={onClose}
      >
        <div class="section">
          <Button
            look="solid"
            onClick={() => run(takeBack(joinsOf(day, fact.id)), `${name}: two takes again`) && onClose()}
          >
            They are two takes
          </Button>
        </div>
      </Sheet>
    );
  return (
    <Sheet title={`${name}, removed`} under="Changes placed before it stay where they are." onClose={onClose}>
      <div class="section">
        <Button look="solid" onClick={() => run(bringBack([fact.id]), `${name} brought back`) && onClose()}>
          Bring back
        </Button>
      </div>
    </Sheet>
  );
}
