import { useState } from 'preact/hooks';
import { bringBack, moveBefore, takeBack } from '../../app/commands/correct.ts';
import type { LineItem } from '../../day/model.ts';
import { itemOnLine } from '../../day/takes.ts';
import { lateOnLine } from '../../day/wrap/since-closing.ts';
import { useDatabase, useDay, useRun } from '../frame/context.ts';
import { FromWhen } from '../frame/from-when.tsx';
import { Button } from '../kit/button.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { lateWords } from '../words/closing.ts';
import { factWords } from '../words/facts.ts';
import { whose } from '../words/phones.ts';
import { clockTime } from '../words/times.ts';

/** One change: when it was entered, from which take it holds, and how to move or undo it. */
export function ChangeSheet({ item, onClose }: { item: LineItem; onClose: () => void }) {
  const day = useDay().day.value;
  const run = useRun();
  const { fact, takenBack } = item;
  const [before, setBefore] = useState(placedBefore(day, fact.id));
  const words = factWords(day, fact);
  const by = whose(day, fact.id, useDatabase());
  const late = lateOnLine(day).get(fact.id);
  const place = (to: string | undefined): void => {
    if (
      run(
        moveBefore(fact.id, to ?? null),
        to ? 'Moved: every later take follows' : 'Back where it was entered',
      )
    ) {
      setBefore(to);
    }
  };
  return (
    <Sheet
      title={words}
      under={`entered at ${clockTime(fact.at, fact.zone)}${by && `, ${by}`}${takenBack ? ', removed' : ''}${late ? `, ${lateWords(late)}` : ''}`}
      onClose={onClose}
      foot={<FromWhen before={before} onPlace={place} question="Starting when?" />}
    >
      <div class="section buttons">
        {takenBack ? (
          <Button
            look="solid"
            onClick={() => run(bringBack([fact.id]), `${words}: brought back`) && onClose()}
          >
            Bring back
          </Button>
        ) : (
          <Button onClick={() => run(takeBack([fact.id]), `${words}: removed`) && onClose()}>Remove</Button>
        )}
        {before !== undefined && (
          <Button onClick={() => place(undefined)}>Back to where it was entered</Button>
        )}
      </div>
    </Sheet>
  );
}

/** The take that a change was placed before: at first, or by its last move that still stands. */
function placedBefore(day: ReturnType<typeof useDay>['day']['value'], id: string): string | undefined {
  let before = itemOnLine(day, id)?.fact.before;
  for (const fact of day.facts) {
    if (fact.kind === 'fact-moved' && fact.target === id && !day.takenBack.has(fact.id))
      before = fact.to ?? undefined;
  }
  return before;
}
