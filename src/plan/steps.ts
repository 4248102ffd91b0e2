/** Work that can be put down after any step, so that a tap or a newer question comes between. */
export type Steps<T> = Generator<undefined, T>;

/** All of it at once. */
export function allAtOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
