/** Work that can be put down after any step, so that a tap or a newer question comes between. */
export type Steps<T> = Generator<undefined, T>;

/** All of it at once. */
export function allAtOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

// The most bounds computed for one plan: a count and not a time, so that the same question has the same answer.

/** For an answer that is there before anybody waits for it. */
export const FIRST_BUDGET = 60;

/** For the answer after that. It proves ordinary rigs, and of crowds who is recorded; what it cannot prove is said. */
export const FULL_BUDGET = 4000;
