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

/** Runs every file of `rows/`, or those whose name is asked for: the table as Markdown, and whether every budget is kept. */
export async function benchTable(
  load: (path: string) => Promise<{ rows: Rows }>,
  wanted: string[],
): Promise<{ readonly text: string; readonly kept: boolean }> {
  const folder = join(import.meta.dirname, 'rows');
  const files = readdirSync(folder).filter(
    (name) => wanted.length === 0 || wanted.includes(name.replace('.ts', '')),
  );
  if (files.length === 0) throw new Error(`No rows are called ${wanted.join(' or ')}`);
  const table = [
    ['work', 'this project', 'the other', 'other / this', 'budget', 'verdict'],
    Array<string>(6).fill('---'),
  ];
  let kept = true;
  for (const file of files) {
    const { rows } = await load(pathToFileURL(join(folder, file)).href);
    for (const row of await rows()) {
      table.push(cells(row));
      if (verdictOn(row) === 'MISSED') kept = false;
    }
  }
  return { text: table.map((line) => `| ${line.join(' | ')} |`).join('\n'), kept };
}
