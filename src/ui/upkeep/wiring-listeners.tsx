import { listenersOf } from '../../day/answers/listeners.ts';
import type { Day } from '../../day/model.ts';
import { listenerWords } from '../words/listeners.ts';

/** Who hears what, on the wiring sheet. */
export function WiringListeners({ day }: { day: Day }) {
  const listeners = listenersOf(day);
  if (listeners.length === 0) return null;
  return (
    <section class="section" aria-labelledby="wiring-listeners">
      <h2 id="wiring-listeners">Listeners</h2>
      <ul>
        {listeners.map((one) => (
          <li key={one.id}>
            <strong>{one.name}</strong> <span class="soft">{listenerWords(one)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
