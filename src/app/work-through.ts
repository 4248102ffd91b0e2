/**
 * Works through steps, `sliceMs` at a time, and says what they yield; between two slices this thread hears what else there
 * is, such as a tap or the next question. Returns what stops it. Where a step throws, `failed` is told.
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
