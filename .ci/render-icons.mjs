// Renders the PNG icons from icons/icon.svg: `node .ci/render-icons.mjs`, after a change to the drawing.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { findChromium } from './browser.mjs';

const folder = new URL('../icons/', import.meta.url);
const rounded = readFileSync(new URL('icon.svg', folder), 'utf8');
// Phones that cut the shape themselves want the ground up to the corners.
const square = rounded.replace(/clip-path="[^"]*"/, '');
// Everything that matters stays inside the circle of 80 % which every mask keeps (W3C App Manifest, icon masks).
const maskable = square.replace('viewBox="0 0 512 512"', 'viewBox="-72 -72 656 656"');

const ICONS = [
  { name: 'icon-192.png', size: 192, svg: rounded },
  { name: 'icon-512.png', size: 512, svg: rounded },
  { name: 'icon-maskable-512.png', size: 512, svg: maskable },
  { name: 'apple-touch-icon-180.png', size: 180, svg: square },
];

const browser = await chromium.launch({
  executablePath: findChromium(),
  chromiumSandbox: process.getuid?.() !== 0,
});
for (const { name, size, svg } of ICONS) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: ${size}px }</style>${svg}`);
  await page.screenshot({ path: fileURLToPath(new URL(name, folder)), omitBackground: true });
  await page.close();
}
await browser.close();
