// Takes the pictures in README from the running app: `npm run pictures`.
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { chromium } from 'playwright-core';
import { findChromium } from './browser.mjs';
import { ensureBuilt } from './build.mjs';

const PORT = 4189;
const FOLDER = 'tests/pictures';

await ensureBuilt();
mkdirSync(FOLDER, { recursive: true });
const server = spawn('node', ['.ci/serve.mjs', '--port', String(PORT), '--end-with-parent'], {
  stdio: 'pipe',
});
await new Promise((ready) => server.stdout.once('data', ready));
const browser = await chromium.launch({
  executablePath: findChromium(),
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update'],
});

async function phone(look) {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    isMobile: true,
    hasTouch: true,
    deviceScaleFactor: 1,
    colorScheme: 'light',
    timezoneId: 'Europe/Berlin',
    locale: 'en-GB',
  });
  await context.addInitScript((chosen) => localStorage.setItem('rollbook-look', chosen), look);
  const page = await context.newPage();
  // The sample night ends at about four in the morning.
  await page.clock.setFixedTime('2026-11-20T03:05:00Z');
  await page.goto(`http://127.0.0.1:${PORT}/`);
  await page.getByRole('button', { name: 'Sample day' }).tap();
  await page.locator('.rows .row').first().waitFor();
  await page.getByRole('status').filter({ hasText: /\w/ }).waitFor({ state: 'hidden' });
  const shot = (name) => page.screenshot({ path: `${FOLDER}/${name}.png`, animations: 'disabled' });
  return { page, shot };
}

const { page, shot } = await phone('light');
await shot('now');
await page.getByRole('button', { name: /Rozália/ }).tap();
await page.getByRole('dialog').waitFor();
await shot('give');
await page.getByRole('button', { name: 'Close' }).tap();
for (const tab of ['Line', 'Wrap', 'Cast', 'Rig']) {
  await page.getByRole('link', { name: tab, exact: true }).tap();
  await page.waitForTimeout(400);
  await shot(tab.toLowerCase());
}
await page.getByRole('link', { name: 'Wrap', exact: true }).tap();
await page.getByRole('button', { name: /^Picture of the day/ }).tap();
await page.getByRole('button', { name: 'Smaller' }).tap();
await page.waitForTimeout(300);
await shot('picture');
await page.getByRole('link', { name: 'Cast', exact: true }).tap();
await page.getByRole('link', { name: 'Next setup' }).tap();
for (const name of [/^Emil/, /^Dr Brandão/]) await page.getByRole('button', { name }).first().tap();
await page.locator('main.body').evaluate((body) => body.scrollTo(0, 0));
await page.waitForTimeout(300);
await shot('plan');
await (await phone('dim')).shot('dim');
await browser.close();
server.kill();
