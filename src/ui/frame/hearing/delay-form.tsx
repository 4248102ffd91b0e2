import { useState } from 'preact/hooks';
import { delayFromTaps, type HeardAt, keepDelay, type PathDelay } from '../../../app/ear/path-delay.ts';
import { Button } from '../../kit/button.tsx';
import { msWords } from '../../words/hearing.ts';

const TAPS = 5;

interface DelayFormProps {
  /** The latest frame, by the page's counter; undefined while nothing can be measured. */
  readonly heardNow: () => HeardAt | undefined;
  readonly delay: PathDelay | undefined;
  readonly onDelay: (delay: PathDelay | undefined) => void;
}

/** The delay between the connector and here: unknown until it is measured by taps, then kept on this phone. */
export function DelayForm({ heardNow, delay, onDelay }: DelayFormProps) {
  const [taps, setTaps] = useState<readonly number[] | null>(null);
  const keep = (next: PathDelay | undefined): void => {
    keepDelay(next);
    onDelay(next);
    setTaps(null);
  };
  const tap = (): void => {
    const next = [...(taps ?? []), performance.now()];
    const heard = next.length >= TAPS ? heardNow() : undefined;
    const found = heard && delayFromTaps(next, heard);
    if (found) keep(found);
    else setTaps(next);
  };
  return (
    <div class="section hearing-note">
      <h3>Delay of this phone</h3>
      <p>{delayWords(delay)}</p>
      {taps ? (
        <>
          <p>Watch the recorder. Tap each time its seconds change.</p>
          <Button class="tap-taps" onClick={tap}>
            {Math.max(0, TAPS - taps.length)} more {TAPS - taps.length === 1 ? 'tap' : 'taps'}
          </Button>
        </>
      ) : (
        <div class="buttons">
          <Button onClick={() => setTaps([])}>{delay ? 'Measure again' : 'Measure it'}</Button>
          {delay && <Button onClick={() => keep(undefined)}>Forget it</Button>}
        </div>
      )}
    </div>
  );
}

const delayWords = (delay: PathDelay | undefined): string =>
  delay
    ? `Measured on this phone: ${msWords(delay.ms)}, give or take ${msWords(delay.spreadMs)}. It is taken off.`
    : 'Unknown: sound takes 10 to 100 ms to get here, as a rule, so the clock may be up to 3 frames late. Measure it once, by taps.';
