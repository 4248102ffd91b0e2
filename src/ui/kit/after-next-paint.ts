import { useLayoutEffect, useState } from 'preact/hooks';

/**
 * Does this once the next paint is done. The paint that shows a tap was felt comes before what the tap asked for: done
 * with it, it would be as late. Returns what calls it off.
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

/** False until the next paint is done, then true; `atOnce` is for what need not wait. */
export function useAfterNextPaint(atOnce: boolean): boolean {
  const [isDue, setDue] = useState(atOnce);
  useLayoutEffect(() => (isDue ? undefined : afterNextPaint(() => setDue(true))), []);
  return isDue;
}

/** What is worked out from something: at once at first, and again after the paint that shows a change of it. */
export function useWorkedOut<Of, T>(of: Of, work: (of: Of) => T): T {
  const [result, setResult] = useState(() => work(of));
  useLayoutEffect(() => afterNextPaint(() => setResult(work(of))), [of]);
  return result;
}
