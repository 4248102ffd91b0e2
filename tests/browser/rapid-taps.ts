import type { Page } from 'playwright-core';

/**
 * Taps Roll and Cut as fast as the page draws, in bursts, until the window is gone or the time is up. Whenever the
 * screen calls everything saved, it says on the console how many rolls and cuts the screen shows: `saved 7 6`.
 */
export async function tapAsFastAsYouCan(page: Page, forMs: number): Promise<void> {
  await page.evaluate(async (most) => {
    const end = performance.now() + most;
    // A timer would wait four milliseconds, in which the disk follows; a message lets the page draw and goes on.
    const { port1, port2 } = new MessageChannel();
    const pause = (): Promise<void> =>
      new Promise((done) => {
        port1.onmessage = () => done();
        port2.postMessage(null);
      });
    const saved = (): boolean => document.querySelector('[data-unsaved="0"]') !== null;
    for (let burst = 1; performance.now() < end; burst = (burst % 12) + 1) {
      for (let tapped = 0; tapped < burst; tapped += 1) {
        document.querySelector<HTMLElement>('.dock > .roll')!.click();
        await pause();
      }
      while (!saved()) await pause();
      const shown = document.querySelector('.dock-name strong')!.textContent!;
      const number = Number(/\/(\d+)$/.exec(shown)![1]);
      const rolling = document.querySelector('.dock > .roll-open') !== null;
      console.debug(`saved ${rolling ? number : number - 1} ${number - 1}`);
    }
  }, forMs);
}

interface Heard {
  rolls: number;
  cuts: number;
  /** Called at each word. */
  onNext: () => void;
}

/** The last word of the page on what is saved; it grows while the page lives. */
export function hearSaved(page: Page): Heard {
  const heard: Heard = { rolls: 0, cuts: 0, onNext: () => {} };
  page.on('console', (message) => {
    const said = /^saved (\d+) (\d+)$/.exec(message.text());
    if (said) Object.assign(heard, { rolls: Number(said[1]), cuts: Number(said[2]) });
    if (said) heard.onNext();
  });
  return heard;
}
