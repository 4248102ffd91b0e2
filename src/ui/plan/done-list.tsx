import type { Day } from '../../day/model.ts';
import { doneByOthers } from '../../day/phones/done-by-others.ts';
import { Row } from '../kit/row.tsx';
import { factWords } from '../words/facts.ts';
import { whose } from '../words/phones.ts';
import { clockTime } from '../words/times.ts';

/** Moves that other phones ticked and applied: they are off this phone's list, and whose they were stands here. */
export function DoneList({ day, own }: { day: Day; own: string }) {
  const done = doneByOthers(day, own);
  if (done.length === 0) return null;
  return (
    <section aria-labelledby="plan-done">
      <h2 class="section-title" id="plan-done">
        Done on other phones since the last take
      </h2>
      <ul class="rows">
        {done.map((fact) => (
          <li key={fact.id}>
            <Row
              title={factWords(day, fact)}
              under={`${whose(day, fact.id, own)}, at ${clockTime(fact.at, fact.zone)}`}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
