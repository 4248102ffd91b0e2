import { useEffect, useRef } from 'preact/hooks';
import { clockFor } from '../../../app/commands/takes.ts';
import { timecodeAt } from '../../../time/followed-clock.ts';
import { formatTimecode } from '../../../time/timecode.ts';
import { useApp, useDay } from '../context.ts';

const TICK_MS = 120;
/** The day counts at a rate that only a newer version knows. */
const NO_TIME = '--:--:--:--';
/** From a touch to the picture that answers it, about. */
const ANSWER_MS = 150;

/** The running timecode. It writes its own text, so that nothing else is drawn again for a tick. */
export function ClockFace() {
  const store = useDay();
  const { clock } = useApp().parts;
  const face = useRef<HTMLElement>(null);

  useEffect(() => {
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches;
    let touchedAt = -Infinity;
    const touched = (): void => {
      touchedAt = performance.now();
    };
    const tick = (): void => {
      // Drawing the face just then would come between a finger and what it asks for.
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
