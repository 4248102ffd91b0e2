/** Work that can pause after any step, to let a tap or a newer question in. */
export type Steps<T> = Generator<undefined, T>;

/** Runs it without pausing. */
export function allAtOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

// The most bounds computed for one plan: a count and not a time, so that the same question always has the
// same answer.

/** For an instant first answer. */
export const FIRST_BUDGET = 60;

/** For the full answer. It proves ordinary rigs, and for crowds who is recorded; the rest is reported. */
export const FULL_BUDGET = 4000;
