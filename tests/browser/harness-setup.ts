import { findChromium } from '../../.ci/browser.mjs';
import { ensureBuilt } from '../../.ci/build.mjs';

/** Runs once before the browser tests: a build of exactly these sources, and a browser to drive. */
export function setup(): void {
  if (!findChromium()) {
    throw new Error('No browser found. Run `node .ci/browser.mjs`, or set ROLLBOOK_CHROMIUM to a path.');
  }
  ensureBuilt();
}
