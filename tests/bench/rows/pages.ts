import { openStage } from '../../browser/harness.ts';
import { openSaid } from '../../browser/said-day.ts';
import { tab } from '../../browser/tapping.ts';
import { largeDay } from '../../report/large-day.ts';
import { median } from '../phone.ts';
import type { Row } from '../row.ts';

/** Arabic, Hebrew, Devanagari, Japanese, Korean, Thai. */
const NAMES = ['سلمى نديم', 'נועה כהן', 'मीरा देवी', '木村陽子', '김민서', 'นภาพร'];
const SIZE = { takes: 200, tracks: 16 };
const ROUNDS = 9;

/** Notes from when a thread is started to when it answers, and what it could not draw. */
function watchWorkers(): void {
  const times: number[] = [];
  const Plain = globalThis.Worker;
  const Watched = class extends Plain {
    constructor(...given: ConstructorParameters<typeof Plain>) {
      super(...given);
      // The copy beside the database has a thread too.
      if (!String(given[0]).includes('pages-worker')) return;
      const from = performance.now();
      this.addEventListener('message', ({ data }) => {
        if (!data.ok || data.value.missing.length > 0) throw new Error(`Not drawn: ${JSON.stringify(data)}`);
        times.push(performance.now() - from);
      });
    }
  };
  Object.assign(globalThis, { Worker: Watched, pageTimes: times });
}

async function pagesTook(names: readonly string[]): Promise<number> {
  const stage = await openStage({ before: watchWorkers });
  await openSaid(stage, { facts: [...largeDay({ ...SIZE, names }).facts] });
  for (let round = 0; round < ROUNDS; round += 1) {
    await tab(stage.page, 'Wrap');
    await stage.page.getByText('sound report A.pdf').waitFor();
    await tab(stage.page, 'Cast');
  }
  const times = await stage.page.evaluate(() => (globalThis as unknown as { pageTimes: number[] }).pageTimes);
  await stage.close();
  return median(times.slice(1));
}

export async function rows(): Promise<Row[]> {
  const ours = await pagesTook(['', ...NAMES]);
  const value = await pagesTook([]);
  return [
    {
      work: 'pages: 200 × 16 with six names in other scripts, thread and all',
      ours,
      unit: 'ms',
      other: { by: 'the same with Latin names', value },
      budget: 400,
    },
  ];
}
