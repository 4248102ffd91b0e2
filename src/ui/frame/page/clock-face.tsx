import { useEffect, useRef } from 'preact/hooks';
import { clockFor } from '../../../app/commands/takes.ts';
import { timecodeAt } from '../../../time/followed-clock.ts';
import { formatTimecode } from '../../../time/timecode.ts';
import { useDay } from '../context.ts';

const TICK_MS = 120;
/** The day's rate is known only to a newer version. */
const NO_TIME = '--:--:--:--';
/** Roughly the time from a touch to the frame that answers it. */
const ANSWER_MS = 150;

/** The running timecode. It writes its own text, so that a tick redraws nothing else. */
export function ClockFace() {
  const store = useDay();
  const { clock } = store;
  const face = useRef<HTMLElement>(null);

  useEffect(() => {
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let touchedAt = -Infinity;
    const touched = (): void => {
      touchedAt = performance.now();
    };
    const tick = (): void => {
      // Drawing the clock now would delay the answer to a tap.
      if (!calm && performance.now() - touchedAt < ANSWER_MS) return;
      const now = clock.now();
      const followed = clockFor(store.day.peek(), now);
      const text = followed ? formatTimecode(timecodeAt(followed, now.atMs), followed.rate) : NO_TIME;
      if (face.current) face.current.textContent = calm ? text.slice(0, 8) : text;
    };
    tick();
    const timer = setInterval(tick, calm ? 1000 : TICK_MS);
    addEventListener('pointerdown', touched, { passive: true });
    return () => {
      clearInterval(timer);
      removeEventListener('pointerdown', touched);
    };
  }, [store, clock]);

  return <strong class="mono" ref={face} aria-hidden="true" />;
}
