interface Run {
  readonly stem: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Consecutive names as runs: `['A1', 'A2', 'A3', 'B1']` is `'A1–3, B1'`. Names without a number at the end
 * stay as they are.
 */
export function runWords(names: readonly string[]): string {
  const runs: (Run | string)[] = [];
  for (const name of names) {
    const [, stem, digits] = /^(.*?)(0|[1-9]\d{0,5})$/.exec(name) ?? [];
    if (stem === undefined || digits === undefined) {
      runs.push(name);
      continue;
    }
    const number = Number(digits);
    const last = runs.at(-1);
    if (typeof last === 'object' && last.stem === stem && last.to === number - 1) {
      runs[runs.length - 1] = { ...last, to: number };
    } else runs.push({ stem, from: number, to: number });
  }
  return runs
    .map((run) =>
      typeof run === 'string' ? run : `${run.stem}${run.from}${run.to > run.from ? `–${run.to}` : ''}`,
    )
    .join(', ');
}
