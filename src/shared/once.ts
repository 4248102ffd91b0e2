/** Asks when the answer is first wanted, and never again. */
export function once<T>(ask: () => T): () => T {
  let known: { readonly answer: T } | undefined;
  return () => {
    known ??= { answer: ask() };
    return known.answer;
  };
}
