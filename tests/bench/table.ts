import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Row, verdictOn } from './row.ts';

type Rows = () => Row[] | Promise<Row[]>;

const shown = (value: number): string =>
  value >= 1000
    ? Math.round(value).toLocaleString('en-GB')
    : value >= 10
      ? value.toFixed(1)
      : value.toFixed(3);

function cells(row: Row): string[] {
  const { work, ours, unit, other, budget, ratioBudget } = row;
  const budgets = [
    budget === undefined ? '' : `≤ ${shown(budget)} ${unit}`,
    ratioBudget === undefined ? '' : `≥ ${ratioBudget.toFixed(2)}x`,
  ];
  return [
    work,
    `${shown(ours)} ${unit}`,
    other ? `${shown(other.value)} ${unit}, ${other.by}` : '',
    other ? `${(other.value / ours).toFixed(2)}x` : '',
    budgets.filter(Boolean).join(', '),
    verdictOn(row),
  ];
}

/** Runs every file of `rows/`, or those whose name is asked for, and prints one table; false when a budget is missed. */
export async function printTable(
  load: (path: string) => Promise<{ rows: Rows }>,
  wanted: string[],
): Promise<boolean> {
  const folder = join(import.meta.dirname, 'rows');
  const files = readdirSync(folder).filter(
    (name) => wanted.length === 0 || wanted.includes(name.replace('.ts', '')),
  );
  const table = [['work', 'this project', 'the other', 'other / this', 'budget', 'verdict']];
  let kept = files.length > 0;
  for (const file of files) {
    const { rows } = await load(pathToFileURL(join(folder, file)).href);
    for (const row of await rows()) {
      table.push(cells(row));
      if (verdictOn(row) === 'MISSED') kept = false;
    }
  }
  const widths = table[0]!.map((_, column) => Math.max(...table.map((line) => [...line[column]!].length)));
  for (const line of table)
    console.log(
      line
        .map((cell, column) => cell.padEnd(widths[column]!))
        .join('  ')
        .trimEnd(),
    );
  return kept;
}
