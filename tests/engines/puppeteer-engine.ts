import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type Browser, type ElementHandle, type LaunchOptions, type Page } from 'puppeteer-core';
import { findChromium } from '../../.ci/browser.mjs';
import { findFirefox } from '../../.ci/engines.mjs';
import type { LastingEngine } from './engine.ts';
import { findElement } from './find-element.ts';

/** Firefox, spoken to by WebDriver BiDi. */
export const firefox = (): LaunchOptions => ({
  browser: 'firefox',
  executablePath: found(findFirefox(), 'Firefox'),
});

export const openFirefox = (): Promise<LastingEngine> => open(firefox());

export const chromium = (): LaunchOptions => ({
  browser: 'chrome',
  executablePath: found(findChromium(), 'Chromium'),
  args: ['--disable-gpu', ...(process.getuid?.() === 0 ? ['--no-sandbox'] : [])],
});

/** The engine of all other browser tests, by the same script as the two others. */
export const openChromium = (): Promise<LastingEngine> => open(chromium());

function found(path: string | undefined, name: string): string {
  if (path === undefined) throw new Error(`No ${name} found; \`node .ci/engines.mjs\` says more`);
  return path;
}

async function open(options: LaunchOptions): Promise<LastingEngine> {
  const home = mkdtempSync(join(tmpdir(), 'rollbook-engine-'));
  const faults: string[] = [];
  let browser: Browser | undefined;
  let page: Page;
  const launch = async (): Promise<string> => {
    browser = await puppeteer.launch({
      ...options,
      headless: true,
      userDataDir: join(home, 'profile'),
      env: { ...process.env, HOME: home, XDG_CONFIG_HOME: home, XDG_CACHE_HOME: home, XDG_DATA_HOME: home },
      defaultViewport: { width: 390, height: 844 },
    });
    page = (await browser.pages())[0] ?? (await browser.newPage());
    page.on('console', (message) => {
      if (['error', 'warn'].includes(message.type())) faults.push(`${message.type()}: ${message.text()}`);
    });
    page.on('pageerror', (error) => faults.push(`page error: ${String(error)}`));
    return browser.version();
  };
  const close = async (): Promise<void> => {
    await browser?.close();
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };
  try {
    const name = await launch();
    return {
      name,
      goTo: async (url) => void (await page.goto(url)),
      reload: async () => void (await page.reload()),
      run: (inPage, given = '') => page.evaluate(inPage, given),
      press: async (role, pattern) => {
        const handle = (await page.evaluateHandle(findElement, role, pattern)).asElement();
        if (!handle) return false;
        return (handle as ElementHandle<Element>).click().then(
          () => true,
          (error: unknown) => {
            // It was drawn anew since it was found; nothing was pressed.
            if (/detached|not clickable/.test(String(error))) return false;
            throw error;
          },
        );
      },
      type: (text) => page.keyboard.type(text),
      faults: async () => faults,
      restart: async () => {
        await browser?.close();
        await launch();
      },
      close,
    };
  } catch (error) {
    await close();
    throw error;
  }
}
