import type { TakeId } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import { openTakes, ownOpenTake } from '../../day/takes.ts';
import { useDatabase, useDay } from '../frame/context.ts';
import { useCut } from '../frame/use-cut.ts';
import { Button } from '../kit/button.tsx';
import { Row } from '../kit/row.tsx';
import { clockTime } from '../words/times.ts';

/** Open takes besides the dock's: a colleague's, or one left open. Each has its own Cut. */
export function OpenTakes({ onOpen }: { onOpen: (take: TakeId) => void }) {
  const day = useDay().day.value;
  const own = ownOpenTake(day, useDatabase());
  const cut = useCut();
  const others = openTakes(day).filter((take) => take !== own);
  if (others.length === 0) return null;
  return (
    <ul class="rows" aria-label="Other takes that are rolling">
      {others.map((take) => (
        <li key={take.id} class="row-action">
          <Row
            title={`${takeText(take)} is rolling`}
            under={`since ${clockTime(take.rolledAt!, day.takeItems.get(take.id)!.fact.zone)}`}
            onTap={() => onOpen(take.id)}
          />
          <Button label={`Cut ${takeText(take)}`} onClick={() => cut(take)}>
            Cut
          </Button>
        </li>
      ))}
    </ul>
  );
}
