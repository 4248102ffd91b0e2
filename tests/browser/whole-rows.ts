import type { Page } from 'playwright-core';

/** Rows of the list that are whole between what stands above it and the dock. */
export const wholeRows = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const head = document.querySelector('.head')!.getBoundingClientRect();
    const foot = document.querySelector('.foot')!.getBoundingClientRect();
    return [...document.querySelectorAll('main .rows .row')].filter((row) => {
      const { top, bottom, height } = row.getBoundingClientRect();
      return height > 0 && top >= Math.max(0, head.bottom) - 0.5 && bottom <= foot.top + 0.5;
    }).length;
  });
