import { useLayoutEffect, useState } from 'preact/hooks';

/**
 * Runs work after the next paint, so that the paint confirming a tap does not wait for the work it started.
 * Returns a function that cancels it.
 */
export function afterNextPaint(work: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    timer = setTimeout(work);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(timer);
  };
}

/** False until the next paint is done, then true; `atOnce` skips the wait. */
export function useAfterNextPaint(atOnce: boolean): boolean {
  const [isDue, setDue] = useState(atOnce);
  useLayoutEffect(() => (isDue ? undefined : afterNextPaint(() => setDue(true))), []);
  return isDue;
}

/** A value computed at once at first, and recomputed after the paint that shows a change of its input. */
export function useWorkedOut<Of, T>(of: Of, work: (of: Of) => T): T {
  const [result, setResult] = useState(() => work(of));
  useLayoutEffect(() => afterNextPaint(() => setResult(work(of))), [of]);
  return result;
}
