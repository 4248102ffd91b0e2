import { expect } from 'vitest';
import type { Stage } from './harness.ts';

/** A target of a sheet can be tapped as the sheet stands: whole on the screen, nothing over it, 48 px high. */
export async function isInReach({ page }: Stage, name: RegExp): Promise<void> {
  const target = page.getByRole('dialog').getByRole('button', { name }).first();
  await target.waitFor();
  const found = await target.evaluate((one) => {
    const { top, bottom, left, right, height } = one.getBoundingClientRect();
    const at = [top + 2, (top + bottom) / 2, bottom - 2].map((y) =>
      one.contains(document.elementFromPoint((left + right) / 2, y)),
    );
    return { top, bottom, height, at, screen: innerHeight };
  });
  expect(found.top, `top of ${name}`).toBeGreaterThanOrEqual(0);
  expect(found.bottom, `foot of ${name}`).toBeLessThanOrEqual(found.screen);
  expect(found.height, `height of ${name}`).toBeGreaterThanOrEqual(47.9);
  expect(found.at, `nothing lies over ${name}`).toEqual([true, true, true]);
}
