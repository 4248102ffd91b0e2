// The built app in a browser behind the proxy of `proxy.mjs`: its headers, a day put live, and what went wrong in the page.
import { chromium } from 'playwright-core';
import { findChromium } from './browser.mjs';

/** @param {unknown} is @param {string} what */
export const demand = (is, what) => {
  if (!is) throw new Error(what);
};

/** What the app's host must send besides its files; DEVELOPERS.md lists it. */
const SENT = {
  'strict-transport-security': 'max-age=31536000',
  'content-security-policy': "frame-ancestors 'none'",
  'referrer-policy': 'no-referrer',
  'permissions-policy': 'microphone=(self), camera=(self)',
  'x-content-type-options': 'nosniff',
};

/** @param {import('playwright-core').Page} page */
async function headersAreSent(page) {
  const answers = await page.evaluate(async () => {
    const asset = document.querySelector('script[src*="assets/"]')?.getAttribute('src');
    const paths = ['/', '/sw.js', '/manifest.webmanifest', String(asset)];
    return Promise.all(
      paths.map(async (path) => [path, Object.fromEntries((await fetch(path, { cache: 'reload' })).headers)]),
    );
  });
  for (const [path, headers] of answers) {
    for (const [name, value] of Object.entries(SENT))
      demand(headers[name] === value, `${path} comes with ${name}: ${headers[name]}`);
    const kept = path.includes('assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
    demand(
      headers['cache-control'] === kept,
      `${path} comes with cache-control: ${headers['cache-control']}`,
    );
  }
}

/** A day begun and put live in the page, behind `host`, with whatever went wrong there. */
export async function inThePage(host, port, word) {
  const executablePath = findChromium();
  demand(executablePath, 'no browser');
  const browser = await chromium.launch({
    executablePath,
    // A worker is registered only where the certificate is believed.
    args: ['--no-sandbox', `--host-resolver-rules=MAP ${host} 127.0.0.1`, '--ignore-certificate-errors'],
  });
  const page = await browser.newPage();
  page.setDefaultTimeout(20_000);
  const faults = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('response', (answer) => {
    if (answer.status() >= 400) faults.push(`${answer.status()} ${answer.url()}`);
  });
  const tap = (name) => page.getByRole('button', { name }).first().click();
  const headSays = (word) => page.locator('.head-facts').filter({ hasText: word }).waitFor();
  await page.goto(`https://${host}:${port}/`);
  await headersAreSent(page);
  await tap('New day');
  await page.getByLabel('Production', { exact: true }).first().fill('Harbour Lights');
  await tap('Start the day');
  await page.locator('main[data-tab]').waitFor();
  await page.evaluate(() => {
    location.hash = location.hash.replace(/\w+$/, 'phones');
  });
  await tap('Go live');
  await page.getByLabel('Or paste it').fill(`rollbook-live /live phone ${word}`);
  await tap('Use the pasted code');
  await headSays('live');
  const allThere = () => page.getByText('Live: everything entered here is on the server').waitFor();
  await allThere();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  return { browser, page, faults, tap, headSays, allThere };
}
