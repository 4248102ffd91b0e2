import { describe, test } from 'vitest';
import { afterRestart, mainJobIn } from './main-job.ts';
import { openChromium, openFirefox } from './puppeteer-engine.ts';
import { openWebKit } from './webkit-engine.ts';
import { openWebKitWindow } from './webkit-window.ts';

describe('the main job with no signal, from the first visit to the report', () => {
  test('in Firefox, with real input, over a reload and a restart', () =>
    mainJobIn(openFirefox, afterRestart));

  test('in Chromium, by the same script, over a reload and a restart', () =>
    mainJobIn(openChromium, afterRestart));

  // A driven session keeps nothing on the disk, so it cannot show a restart.
  test('in WebKit, with real input, over a reload', () => mainJobIn(openWebKit));

  // An ordinary window takes no input from outside, so here scripts press the buttons.
  test('in WebKit, with input made by scripts, over a reload and a restart', () =>
    mainJobIn(openWebKitWindow, afterRestart));
});
