import { freshCells, notFresh } from '../../app/commands/upkeep.ts';
import type { Moment } from '../../app/day-store.ts';
import type { Day } from '../../day/model.ts';
import { isOfDatabase } from '../../shared/ids.ts';
import type { CellsToDo } from '../../upkeep/due/cells-round.ts';
import { cellsRound } from '../../upkeep/due/cells-round.ts';
import type { UpkeepNow } from '../../upkeep/due/day-due.ts';
import { useDatabase, useDay } from '../frame/context.ts';
import { complain } from '../frame/messages.ts';
import { CheckRow } from '../kit/check-row.tsx';
import { Sheet } from '../kit/sheet.tsx';
import { cellsWords } from './cells-words.ts';
import { wornWords } from './worn-words.ts';

interface ChecklistProps {
  readonly day: Day;
  readonly upkeep: UpkeepNow;
  readonly now: Moment;
  readonly onClose: () => void;
}

/** A round of fresh batteries: whoever puts them in ticks them, on any phone, and every phone shows who did. */
export function CellsChecklist({ day, upkeep, now, onClose }: ChecklistProps) {
  const store = useDay();
  const own = useDatabase();
  const round = cellsRound(day, upkeep, now.atMs);
  const done = round.filter(({ doneBy }) => doneBy !== undefined).length;
  const tick = ({ device, doneBy }: CellsToDo): void => {
    const said = store.run(doneBy ? notFresh(device.id) : freshCells([device.id]));
    if (!said.ok) complain(said.problem);
  };
  return (
    <Sheet title="Fresh batteries" under={`${done} of ${round.length} done`} onClose={onClose}>
      <ul class="rows">
        {round.map((one) => (
          <li key={one.device.id}>
            <CheckRow
              title={wornWords(day, one.device.id)}
              under={cellsWords(day, upkeep, one.device, now, own)}
              isTicked={one.doneBy !== undefined}
              // Nobody takes back what somebody else did.
              isStale={one.doneBy !== undefined && !isOfDatabase(one.doneBy, own)}
              onTick={() => tick(one)}
            />
          </li>
        ))}
      </ul>
    </Sheet>
  );
}
