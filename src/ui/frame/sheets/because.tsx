import type { FactId } from '../../../day/model.ts';
import { takeText } from '../../../day/slate.ts';
import { factWords } from '../../words/facts.ts';
import { clockTime } from '../../words/times.ts';
import { useDay } from '../context.ts';
import '../from-when.css';

/** The facts behind an answer, in trade terms, with when each was entered and from where it holds. */
export function Because({ because }: { because: readonly FactId[] }) {
  const day = useDay().day.value;
  const wanted = new Set(because);
  const facts = day.facts.filter(({ id }) => wanted.has(id));
  if (facts.length === 0) return null;
  return (
    <section class="section because">
      <h3>Why</h3>
      <ul>
        {facts.map((fact) => (
          <li key={fact.id} class="soft">
            <span class="mono">{clockTime(fact.at, fact.zone)}</span> {factWords(day, fact)}
            {fact.before &&
              day.takes.has(fact.before) &&
              `, placed before ${takeText(day.takes.get(fact.before)!)}`}
          </li>
        ))}
      </ul>
    </section>
  );
}
