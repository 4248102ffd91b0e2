// Finds the two other engines the tests drive. On Debian as root it installs them; elsewhere it says how to get them.
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installDebian } from './browser.mjs';

const firstThere = (paths) => paths.find((path) => path && existsSync(path));

const onPath = (name) =>
  firstThere((process.env.PATH ?? '').split(':').map((folder) => folder && join(folder, name)));

/** The path of a Firefox on this machine, or undefined. */
export function findFirefox() {
  return (
    firstThere([process.env.ROLLBOOK_FIREFOX]) ??
    onPath('firefox-esr') ??
    onPath('firefox') ??
    firstThere([
      '/Applications/Firefox.app/Contents/MacOS/firefox',
      'C:\\Program Files\\Mozilla Firefox\\firefox.exe',
    ])
  );
}

/** The library's own small browser: it lies beside the library, in a folder named after the machine and the version. */
function findMiniBrowser() {
  const roots = existsSync('/usr/lib')
    ? ['/usr/lib', ...readdirSync('/usr/lib').map((name) => `/usr/lib/${name}`)]
    : [];
  return firstThere([
    process.env.ROLLBOOK_MINIBROWSER,
    ...roots.map((root) => join(root, 'webkit2gtk-4.1', 'MiniBrowser')),
    '/usr/libexec/webkit2gtk-4.1/MiniBrowser',
  ]);
}

/** The paths of WebKitGTK's browser, its driver and a display that needs no screen; undefined if one is missing. */
export function findWebKit() {
  const [browser, driver, display] = [findMiniBrowser(), onPath('WebKitWebDriver'), onPath('Xvfb')];
  return browser && driver && display ? { browser, driver, display } : undefined;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  if (!findFirefox()) installDebian(['firefox-esr']);
  if (!findWebKit()) installDebian(['webkit2gtk-driver', 'libwebkit2gtk-4.1-0', 'xvfb']);
  const firefox = findFirefox();
  const webKit = findWebKit();
  if (!firefox) {
    console.error('The tests drive Firefox and found none. Install it, or set ROLLBOOK_FIREFOX to its path.');
  }
  if (!webKit) {
    console.error(
      'The tests drive WebKitGTK and found not all of MiniBrowser, WebKitWebDriver and Xvfb. Debian has them in libwebkit2gtk-4.1-0, webkit2gtk-driver and xvfb.',
    );
  }
  if (!firefox || !webKit) process.exit(1);
  console.log(`Engines for the tests: ${firefox}, ${webKit.browser}`);
}
