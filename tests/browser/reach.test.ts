import { describe, expect, test } from 'vitest';
import { onStage, type Stage } from './harness.ts';
import { openSampleDay } from './places.ts';

const CLOCK = '2026-11-20T03:10:00Z';
const PHONES = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
];

/** Each tap is a button by its words; inside a sheet once one is open. What the live region says ends the action. */
interface Action {
  readonly action: string;
  readonly taps: readonly RegExp[];
  readonly says: RegExp | null;
}

// From the day's first screen of the sample day; the words are the app's own.
const ACTIONS: readonly Action[] = [
  { action: 'roll', taps: [/^Roll$/], says: /45B\/3 rolling/ },
  { action: 'cut', taps: [/^Cut$/], says: /45B\/3 cut/ },
  { action: 'circle the last take', taps: [/^circle 3 take/], says: /45B\/3 circled/ },
  { action: 'open the note on the last take', taps: [/^note 3 take/], says: null },
  {
    action: 'a usual note on the last take',
    taps: [/^note 3 take/, /^plane$/],
    says: /Noted on 45B\/3: plane/,
  },
  { action: 'the next setup', taps: [/^setup 45C$/], says: /Slate 45C/ },
  { action: 'move a pack to another performer', taps: [/Wiktoria/, /^Emil/], says: /A1 on Emil/ },
  {
    action: 'the same, from an earlier take on',
    taps: [/Siân/, /^before 45B\/3$/, /^Old Tibor/],
    says: /A4 on Old Tibor/,
  },
  { action: 'mute', taps: [/Rozália/, /^Mute/], says: /muted/ },
  { action: 'throw a selector', taps: [/Conductor/, /^selector 3 to/], says: /selector 3 to far box/ },
];

/** Does one action and returns how long it took, in seconds of this script. */
async function act({ page }: Stage, { action, taps, says }: Action): Promise<number> {
  const started = performance.now();
  for (const [at, name] of taps.entries()) {
    const within = at === 0 ? page : page.getByRole('dialog');
    await within.getByRole('button', { name }).first().tap();
  }
  if (says) await page.getByRole('status').filter({ hasText: says }).waitFor({ state: 'attached' });
  else await page.getByRole('dialog').waitFor();
  const seconds = (performance.now() - started) / 1000;
  if (!says) await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  expect(await page.getByRole('alert').filter({ hasText: /\w/ }).count(), action).toBe(0);
  return seconds;
}

describe.each(PHONES)('at $width x $height', (viewport) => {
  test('the frequent actions take the taps that the README says: 1 to roll, 2 to move a pack, 3 from an earlier take', async () => {
    await onStage({ viewport, clock: CLOCK }, async (stage) => {
      await openSampleDay(stage);
      const table: string[] = [];
      for (const action of ACTIONS) {
        const seconds = await act(stage, action);
        table.push(`${action.action} | ${action.taps.length} | ${seconds.toFixed(1)}`);
      }
      console.log(['action | taps | seconds of script', ...table].join('\n'));
      expect(ACTIONS.map(({ taps }) => taps.length)).toEqual([1, 1, 1, 1, 2, 1, 2, 3, 2, 2]);
    });
  });

  test('roll, cut, circle, note and the next setup are whole in the lower 40 % of the screen', async () => {
    await onStage({ viewport, clock: CLOCK }, async (stage) => {
      await openSampleDay(stage);
      const isLow = async (name: RegExp): Promise<void> => {
        const box = (await stage.page.getByRole('button', { name }).first().boundingBox())!;
        expect(box.y, `top of ${name}`).toBeGreaterThanOrEqual(viewport.height * 0.6);
        expect(box.y + box.height, `foot of ${name}`).toBeLessThanOrEqual(viewport.height);
        expect(box.height, `height of ${name}`).toBeGreaterThanOrEqual(48);
        expect(box.width, `width of ${name}`).toBeGreaterThanOrEqual(48);
      };
      for (const name of [/^Roll$/, /^circle 2 take/, /^note 2 take/, /^setup 45C$/]) await isLow(name);
      await stage.page.getByRole('button', { name: /^Roll$/ }).tap();
      await isLow(/^Cut$/);
    });
  });
});
