// Finds the browser the tests drive. On Debian as root it installs one; elsewhere it says how to get one.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const CANDIDATES = [
  process.env.ROLLBOOK_CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/usr/bin/microsoft-edge',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** Small packages with a font for each script that the tests print; the browser sees those that are there when it starts. */
export const SCRIPT_FONTS = [
  'fonts-dejavu-core',
  'fonts-lohit-deva',
  'fonts-tlwg-waree',
  'fonts-wqy-microhei',
];

/** The path of a Chromium-based browser on this machine, or undefined. */
export function findChromium() {
  return CANDIDATES.find((path) => path && existsSync(path));
}

/**
 * The path of the same engine without a window around its pages, or of the whole browser where it is not installed: what
 * only asks something of a page costs a third less in it.
 */
export function findPageEngine() {
  const shell = '/usr/bin/chromium-headless-shell';
  return !process.env.ROLLBOOK_CHROMIUM && existsSync(shell) ? shell : findChromium();
}

/** Installs Debian packages where this is Debian and we are root; true when all are there afterwards. */
export function installDebian(packages) {
  if (!existsSync('/usr/bin/apt-get') || process.getuid?.() !== 0) return false;
  const missing = packages.filter(
    (name) => spawnSync('dpkg', ['-s', name], { stdio: 'ignore' }).status !== 0,
  );
  if (missing.length === 0) return true;
  console.log(`Installing from Debian: ${missing.join(', ')} ...`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const quiet = { stdio: ['ignore', 'ignore', 'inherit'], env };
  spawnSync('apt-get', ['update', '-qq'], quiet);
  return (
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...missing], quiet).status === 0
  );
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  if (!findChromium()) installDebian(['chromium']);
  if (findPageEngine() === '/usr/bin/chromium') installDebian(['chromium-headless-shell']);
  // Without them the tests that print other scripts say which lack.
  installDebian(SCRIPT_FONTS);
  const found = findChromium();
  if (!found) {
    console.error(
      'The tests drive a real browser and found none. Install Chrome, Chromium or Edge, or set ROLLBOOK_CHROMIUM to its path.',
    );
    process.exit(1);
  }
  console.log(`Browser for the tests: ${found}`);
}
