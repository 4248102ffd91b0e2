/**
 * Runs steps in slices of `sliceMs` and reports what they yield. Between slices the thread handles other
 * work, such as a tap or the next question. Returns a function that stops it; `failed` is called if a step
 * throws.
 */
export function workThrough<T>(
  steps: Generator<T | undefined, void>,
  sliceMs: number,
  say: (news: T) => void,
  failed: (error: unknown) => void,
): () => void {
  let stopped = false;
  const slice = (): void => {
    const end = performance.now() + sliceMs;
    while (!stopped && performance.now() < end) {
      const step = steps.next();
      if (step.done) return;
      if (step.value !== undefined) say(step.value);
    }
    if (!stopped) setTimeout(next);
  };
  const next = (): void => {
    try {
      slice();
    } catch (error) {
      failed(error);
    }
  };
  setTimeout(next);
  return () => {
    stopped = true;
  };
}
