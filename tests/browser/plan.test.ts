import { describe, expect, test } from 'vitest';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { crowdPhone } from '../plan/crowd-scene.ts';
import { onStage, type Stage } from './harness.ts';
import { paste } from './tapping.ts';

test('the next setup is planned, ticked and applied on the full sample day, and every line after it is right', async () => {
  await onStage({ clock: '2026-11-20T03:10:00Z' }, async (stage) => {
    const { page } = stage;
    const button = (name: string | RegExp) => page.getByRole('button', { name }).first();
    const tab = (name: string) => page.getByRole('link', { name, exact: true }).tap();
    const report = async (): Promise<string[]> => {
      await tab('Wrap');
      return ((await page.locator('.report-text').textContent()) ?? '').split('\n');
    };
    await button('Sample day').tap();
    await page.locator('.rows .row').first().waitFor();
    const before = await report();

    // Emil and Dr Brandão come back; Zuzu is not needed. Emil is done for the day, and is asked for all the same.
    await tab('Cast');
    await page.getByRole('link', { name: 'Next setup' }).tap();
    await button(/^Emil/).tap();
    await button(/^Dr Brandão/).tap();
    await button(/^Zuzu/).tap();
    await page.getByText('Proven: no better plan exists.').waitFor();
    const moves = page.getByRole('list', { name: 'Moves, in their order' }).getByRole('listitem');
    const words = await moves.allTextContents();
    expect(words.filter((text) => /put \w+ on Emil/.test(text))).toHaveLength(1);
    expect(words.filter((text) => /put \w+ on Dr Brandão/.test(text))).toHaveLength(1);
    expect(await page.locator('.plan-cost').textContent()).toContain('everyone recorded');

    // The utility does the first one and ticks it; that part is accepted alone, and the rest after it.
    await moves.first().getByRole('checkbox').tap();
    await button('Apply 1 ticked').tap();
    await expect.poll(() => moves.count()).toBe(words.length - 1);
    await button(/^Apply \d+ moves?$/).tap();
    await page.locator('.dock').waitFor();
    const summary = (await page.locator('.summary').textContent()) ?? '';
    expect(summary).toContain('everyone else recorded');

    // Two takes later, the lines before are as they were, and the new ones have the two who came.
    for (const minutes of [11, 13]) {
      await stage.setClock(`2026-11-20T03:${minutes}:00Z`);
      await button(/^Roll$/).tap();
      await stage.setClock(`2026-11-20T03:${minutes}:50Z`);
      await button(/^Cut$/).tap();
    }
    await stage.waitSaved();
    await stage.reload();
    const after = await report();
    // The backup still stands by, so the line that says so speaks of the two takes as well.
    expect(before.join('\n')).toContain('45/1 to 45B/2 on Cart only');
    expect(after.join('\n')).toContain('45/1 to 45B/4 on Cart only');
    const takesOf = (lines: string[]): string[] =>
      lines
        .slice(lines.indexOf('TAKES'), lines.indexOf('NOT SETTLED') - 1)
        .map((line) => line.replace(/to 45B\/\d on Cart only/, 'on Cart only'));
    expect(takesOf(after).slice(0, takesOf(before).length)).toEqual(takesOf(before));
    const added = takesOf(after).slice(takesOf(before).length).join('\n');
    expect(added).toMatch(/ 45B\/3 .*\n(.*\n)*.*\d+ Dr Brandão · \d+ Emil /);
    // The second has the tracks of the first: they are printed where they change.
    expect(added.split('\n').at(-1)).toMatch(/^ 45B\/4 /);
    expect(added).not.toMatch(/ganged|not on purpose/);

    // Two takes were four actions; the fifth undo takes the rest of the plan back whole.
    await tab('Line');
    for (let step = 0; step < 5; step += 1) await button('Undo').tap();
    await tab('Cast');
    await page.getByRole('link', { name: 'Next setup' }).tap();
    await expect.poll(() => moves.count()).toBe(words.length - 1);
  });
});

/** The bag's rig in the middle of a day, with a crowd of 24 who are all needed next: seed 18, of which the proof takes longest. */
function crowdFile(): string {
  const phone = crowdPhone(18, 'bag', 24);
  const voices = [...phone.day().voices.keys()];
  phone.say({ kind: 'voices-needed', voices: voices.map((voice) => ({ voice, need: 'needed' })) });
  return writeDayFile('day-1', 'Crowd', phone.facts);
}

/** Every word on what is proven, in the order in which the screen said it, and how many moves it listed with that. */
const wordsHeard = ({ page }: Stage): Promise<(readonly [words: string, moves: number])[]> =>
  page.evaluate(() => (window as unknown as { heard: [string, number][] }).heard);

/** What the screen says of the plan is written down from here on; the first move of a first plan is ticked if asked. */
const listen = ({ page }: Stage, ticksFirst = false): Promise<void> =>
  page.evaluate((ticks) => {
    const heard: [string, number][] = [];
    Object.assign(window, { heard });
    const look = (): void => {
      const words = document.querySelector('.plan-cost [role="status"]')?.textContent;
      if (!words || words === heard.at(-1)?.[0]) return;
      const boxes = document.querySelectorAll<HTMLInputElement>('.check-row input');
      heard.push([words, boxes.length]);
      if (ticks && words.startsWith('A first plan')) boxes[0]!.click();
    };
    new MutationObserver(look).observe(document.body, {
      childList: true,
      subtree: true,
      characterData: true,
    });
  }, ticksFirst);

async function openCrowd(stage: Stage): Promise<void> {
  const { page } = stage;
  await page.getByRole('button', { name: 'Import day file' }).tap();
  await paste(page.getByLabel('Or paste the text'), crowdFile());
  await page.getByRole('button', { name: 'Import what was pasted' }).tap();
  await page.locator('.dock').waitFor();
  await stage.waitSaved();
  await page.getByRole('link', { name: 'Cast', exact: true }).tap();
}

const toPlan = ({ page }: Stage) => page.getByRole('link', { name: 'Next setup' }).tap();

describe('a crowd of 24', () => {
  const FIRST = 'A first plan; looking for a better one…';
  const PROVEN = 'Proven: nobody else can be recorded, and no better plan exists.';

  test('has a first plan, then a better one in its place, which is said to be proven; with no signal', async () => {
    await onStage({ clock: '2026-10-07T18:00:00Z', worker: true }, async (stage) => {
      const { page } = stage;
      await stage.loseSignal();
      await openCrowd(stage);
      await listen(stage);
      await toPlan(stage);
      await page.getByText(PROVEN).waitFor();
      const heard = await wordsHeard(stage);
      expect(heard.map(([words]) => words)).toEqual([FIRST, PROVEN]);
      const [first, proven] = heard.map(([, moves]) => moves);
      expect(proven).toBeLessThan(first!);
      expect(page.workers().length).toBeGreaterThan(0);
      await page.getByRole('button', { name: `Apply ${proven} moves` }).waitFor();
      // Somebody who is left out is not needed after all; and what if so?
      expect(await page.locator('.plan-cost').textContent()).toContain('6 left out');
      const leftOut = page.locator('.row', { hasText: 'left out' }).first();
      const name = (await leftOut.locator('.row-text strong').textContent())!;
      await page.getByRole('button', { name: new RegExp(`^${name}\\b`) }).tap();
      await page.getByText('5 left out').waitFor();
      await page.getByText(PROVEN).waitFor();
      await page.getByRole('button', { name: `What if ${name} were needed too` }).tap();
      await page.getByText('if needed too: could not be recorded', { exact: true }).waitFor();
      await stage.screenshot('plan-crowd');
    });
  });

  test('begun with, keeps its first plan under the finger, and shows the better one for a tap', async () => {
    await onStage({ clock: '2026-10-07T18:00:00Z' }, async (stage) => {
      const { page } = stage;
      await openCrowd(stage);
      await listen(stage, true);
      await toPlan(stage);
      await page.getByText(/^A better plan takes \d+ moves, not \d+\.$/).waitFor();
      const moves = page.getByRole('list', { name: 'Moves, in their order' }).getByRole('listitem');
      const [[, first] = ['', 0]] = await wordsHeard(stage);
      expect(await moves.count()).toBe(first);
      await page.getByRole('button', { name: 'Apply 1 ticked' }).waitFor();
      await stage.screenshot('plan-better');
      await page.getByRole('button', { name: 'Show it' }).tap();
      await page.getByText(PROVEN).waitFor();
      expect(await moves.count()).toBeLessThan(first);
      expect(await page.getByRole('button', { name: 'Show it' }).count()).toBe(0);
    });
  });

  test('is planned by the page where no worker can start', async () => {
    const noWorkers = (): void => {
      Object.assign(window, {
        Worker: class {
          constructor() {
            throw new Error('no workers here');
          }
        },
      });
    };
    // Its clock runs: by it the page knows how long it has kept others waiting.
    await onStage({ before: noWorkers }, async (stage) => {
      await openCrowd(stage);
      await listen(stage);
      await toPlan(stage);
      await stage.page.getByText(PROVEN).waitFor();
      expect((await wordsHeard(stage)).map(([words]) => words)).toEqual([FIRST, PROVEN]);
      expect(stage.page.workers()).toEqual([]);
    });
  });
});
