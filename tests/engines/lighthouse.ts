import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import lighthouse from 'lighthouse';
import puppeteer, { type Page } from 'puppeteer-core';
import { startServer } from '../browser/harness-server.ts';
import { chromium } from './puppeteer-engine.ts';

const CATEGORIES = ['accessibility', 'best-practices', 'seo'];

export interface Audited {
  /** Out of 100, by category. */
  readonly scores: Readonly<Record<string, number>>;
  /** The audits that took points away, each with its category; those of performance differ from run to run. */
  readonly lost: readonly string[];
  /** The address at the end of the audit, and the words on the screen there. */
  readonly address: string;
  readonly shown: string;
}

export interface Opened {
  readonly page: Page;
  readonly origin: string;
  readonly close: () => Promise<void>;
}

/** Serves the built app to a browser with a profile of its own. */
export async function openPage(): Promise<Opened> {
  const profile = mkdtempSync(join(tmpdir(), 'rollbook-lighthouse-'));
  const server = await startServer();
  const browser = await puppeteer.launch({ ...chromium(), headless: true, userDataDir: profile });
  return {
    page: (await browser.pages())[0] ?? (await browser.newPage()),
    origin: server.origin,
    close: async () => {
      await browser.close();
      await server.kill();
      rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** Opens the sample day from the list of days; returns its address when the day and the whole app are on the disk. */
export async function makeSampleDay(page: Page, origin: string): Promise<string> {
  await page.goto(origin);
  await page.locator('::-p-aria(Sample day[role="button"])').click();
  await page.waitForSelector('.dock');
  await page.waitForSelector('[data-unsaved="0"]');
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
  return page.url();
}

/**
 * Has Lighthouse load an address as a phone does, and prints its figures. On the first visit it measures performance
 * too, which takes as long as all the rest.
 */
export async function audit(
  name: string,
  page: Page,
  url: string,
  visit: 'first' | 'later',
): Promise<Audited> {
  const started = performance.now();
  const result = await lighthouse(
    url,
    {
      onlyCategories: visit === 'first' ? ['performance', ...CATEGORIES] : CATEGORIES,
      logLevel: 'error',
      // Otherwise it takes the worker and all it keeps away first, and so looks at a first visit.
      disableStorageReset: visit === 'later',
    },
    undefined,
    // It declares the page of another version of the same library, and uses what both have.
    page as never,
  );
  if (!result) throw new Error('Lighthouse gave no result');
  const { categories, audits, finalDisplayedUrl, runtimeError } = result.lhr;
  if (runtimeError) throw new Error(`Lighthouse could not look: ${runtimeError.message}`);
  const all = Object.entries(categories);
  const scores = Object.fromEntries(all.map(([id, { score }]) => [id, Math.round((score ?? 0) * 100)]));
  const lost = all.flatMap(([category, { auditRefs }]) =>
    auditRefs
      .filter(({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 1)
      .map(({ id }) => `${category}: ${id}`),
  );
  const figures = Object.entries(scores).map(([id, score]) => `${id} ${score}`);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  console.log(`Lighthouse, ${name}: ${figures.join(', ')} (${seconds} s)`);
  // biome-ignore lint/performance/useDomNodeTextContent: words of two blocks must not run together
  const shown = await page.evaluate(() => document.body.innerText);
  return { scores, lost, address: finalDisplayedUrl, shown };
}
