import { expect, test } from 'vitest';
import { hands } from './hands.ts';
import { onStage } from './harness.ts';
import { startDay } from './tapping.ts';

const LONG = ['MONTAGE-SEQ-14', `A-VERY-LONG-SEQUENCE-${'X'.repeat(170)}-9`];

test.each([
  [390, 844],
  [360, 640],
])(
  'a slate of any length leaves Roll and the setup button where they are, at %i x %i',
  async (width, height) => {
    await onStage({}, async (stage) => {
      const { page, tap, inSheet, fill, closed } = hands(stage);
      await page().setViewportSize({ width, height });
      await startDay(page());
      const places = async () =>
        page()
          .locator('.dock, .dock > .roll, .dock-slate .button, .dock-name')
          .evaluateAll((all) => all.map((one) => Math.round(one.getBoundingClientRect().height)));
      const short = await places();
      expect(short).toHaveLength(4);
      for (const slate of LONG) {
        await tap(/^Slate/);
        await fill('Another slate, e.g. 24B', slate);
        await inSheet('Use this slate');
        await closed();
        expect(await places()).toEqual(short);
        const [dock, button, roll] = await Promise.all(
          ['.dock', '.dock-slate .button', '.dock > .roll'].map((name) => page().locator(name).boundingBox()),
        );
        expect(button!.x + button!.width).toBeLessThanOrEqual(roll!.x);
        expect(roll!.x + roll!.width).toBeLessThanOrEqual(dock!.x + dock!.width);
        expect(await page().locator('.dock-name strong').textContent()).toMatch(/\/1$/);
      }
    });
  },
);
