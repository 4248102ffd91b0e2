import { handOut } from '../../app/commands/listeners.ts';
import { type Listener, listenersOf } from '../../day/answers/listeners.ts';
import { useDay, useRun } from '../frame/context.ts';
import { Button } from '../kit/button.tsx';
import { countOf } from '../words/chain.ts';

/** Who still has a receiver, and one tap for each that came back. Nothing on a day without listeners. */
export function ReceiversOut() {
  const day = useDay().day.value;
  const run = useRun();
  const listeners = listenersOf(day);
  const out = listeners.filter(({ handedOut }) => handedOut);
  if (listeners.length === 0) return null;
  const returned = ({ id, name, receiver }: Listener): boolean =>
    run(handOut([id], false), `${receiver || 'Receiver'} returned by ${name}`);
  return (
    <section class="section report-send" aria-labelledby="receivers-head">
      <h2 id="receivers-head">
        {out.length === 0 ? 'No listener has a receiver' : `Still out: ${countOf(out.length, 'receiver')}`}
      </h2>
      {out.length > 0 && (
        <ul class="still-out">
          {out.map((one) => (
            <li key={one.id}>
              <span class="row-text">
                <strong>{one.name}</strong>
                <span class="soft">{one.receiver}</span>
              </span>
              <Button label={`${one.name}: returned`} onClick={() => returned(one)}>
                Returned
              </Button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
