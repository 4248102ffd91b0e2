import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { openStage } from '../../browser/harness.ts';
import { median } from '../phone.ts';
import type { Row } from '../row.ts';
import { buildPage } from '../spreadsheet.ts';

const SIZES = [1_000, 10_000, 100_000];
const RUNS = 15;
const SEED = 9;

interface Times {
  readonly read: number;
  readonly check: number;
  readonly fold: number;
}
type Recorders = 'one' | 'two';
type Measuring = {
  readonly measure: (facts: number, runs: number, recorders: Recorders) => Promise<Times[]>;
};

function pageFolder(): string {
  const root = mkdtempSync(join(tmpdir(), 'rollbook-journal-'));
  const script = JSON.stringify(resolve(import.meta.dirname, '../pages/journal.ts'));
  writeFileSync(join(root, 'main.js'), `import ${script};`);
  writeFileSync(
    join(root, 'index.html'),
    '<!doctype html><title>Journal</title><link rel="icon" href="data:,"><main></main><script type="module" src="/main.js"></script>',
  );
  return root;
}

/** For days of growing length. */
export const rows = (): Promise<Row[]> => journalRows(SIZES, 'one', '');

/** Reading a day from the database and folding it, in the same browser. */
export async function journalRows(
  sizes: readonly number[],
  recorders: Recorders,
  on: string,
): Promise<Row[]> {
  const root = pageFolder();
  const stage = await openStage({ folder: await buildPage(root), fineClock: true });
  const rows: Row[] = [];
  for (const facts of sizes) {
    const times = await stage.page.evaluate((asked) => (window as unknown as Measuring).measure(...asked), [
      facts,
      RUNS,
      recorders,
    ] as const);
    const middle = (what: keyof Times): number => median(times.map((one) => one[what]));
    const read = { by: 'reading them from IndexedDB', value: middle('read') };
    const shown = facts.toLocaleString('en-GB');
    rows.push(
      {
        work: `journal: folding ${shown} facts (seed ${SEED})${on}`,
        ours: middle('fold'),
        unit: 'ms',
        other: read,
        ratioBudget: 5,
      },
      { work: `journal: checking ${shown} facts${on}`, ours: middle('check'), unit: 'ms', other: read },
    );
  }
  await stage.close();
  rmSync(root, { recursive: true });
  return rows;
}
