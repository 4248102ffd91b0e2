import { mkdtempSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, type BrowserContextOptions, chromium } from 'playwright-core';
import { findChromium, findPageEngine } from '../../.ci/browser.mjs';
import type { StageOptions } from './harness.ts';

/** What a stage stands in: a browser of its own with a profile on disk, or a fresh context of one that it shares. */
export interface StageBrowser {
  /** The context to work in. A browser of its own finds again what its profile keeps. */
  readonly open: () => Promise<BrowserContext>;
  /** Throws where others share the browser: it is not this stage's to end. So do the next two. */
  readonly mustBeOwn: () => void;
  /** Sends a signal to all its processes. */
  readonly signal: (name: NodeJS.Signals) => void;
  readonly loseDatabase: () => void;
  /** Removes what it kept on the disk. Its context is closed by now. */
  readonly remove: () => void;
}

export const openBrowser = (trapPort: number, options: StageOptions): StageBrowser =>
  needsOwn(options) ? ownBrowser(trapPort, options) : sharedBrowser(trapPort, options);

const needsOwn = ({ ownBrowser, profileIn, untouched, fineClock, hears, camera }: StageOptions): boolean =>
  Boolean(ownBrowser || profileIn || untouched || fineClock || hears || camera);

function ownBrowser(trapPort: number, options: StageOptions): StageBrowser {
  const profile = mkdtempSync(join(options.profileIn ?? tmpdir(), 'rollbook-profile-'));
  const open = (): Promise<BrowserContext> =>
    chromium.launchPersistentContext(profile, {
      ...launchOptions(
        findChromium(),
        // This machine's own addresses bypass a proxy; whatever else is asked for runs into the trap.
        `--proxy-server=http://127.0.0.1:${trapPort}`,
        ...(options.hears ? microphoneOf(options.hears) : []),
        ...(options.camera ? cameraArgs(options.camera) : []),
      ),
      ...contextOptions(options),
    });
  const signal = (name: NodeJS.Signals): void => {
    // The browser notes its process in its profile; it leads the group of all its processes.
    const pid = Number(/-(\d+)$/.exec(readlinkSync(join(profile, 'SingletonLock')))![1]);
    process.kill(-pid, name);
  };
  return {
    open,
    mustBeOwn: () => undefined,
    signal,
    loseDatabase: () => rmSync(join(profile, 'Default', 'IndexedDB'), { recursive: true }),
    remove: () => rmSync(profile, { recursive: true, force: true, maxRetries: 5 }),
  };
}

/** The browser plays the file as what its camera sees, from when it is asked for the camera, and allows it. */
const cameraArgs = (file: string): string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-video-capture=${file}`,
];

function sharedBrowser(trapPort: number, options: StageOptions): StageBrowser {
  const mustBeOwn = (): void => {
    throw new Error('This stage shares its browser with others; open it with `ownBrowser: true` to do this.');
  };
  const open = async (): Promise<BrowserContext> =>
    (await sharedChromium()).newContext({
      ...contextOptions(options),
      // As in a browser of its own: unless told, the driver sends this machine's addresses there too.
      proxy: { server: `http://127.0.0.1:${trapPort}`, bypass: '127.0.0.1' },
    });
  return { open, mustBeOwn, signal: mustBeOwn, loseDatabase: mustBeOwn, remove: () => undefined };
}

let shared: Promise<Browser> | undefined;

/** The one browser that the stages of this process share. The driver ends it when the process ends. */
export async function sharedChromium(): Promise<Browser> {
  // One that died with a test is not the next test's fault.
  if (shared && !(await shared).isConnected()) shared = undefined;
  // Contexts have proxies of their own, which one for the whole browser would outrank; a name that one of them did not
  // ask for leads nowhere.
  shared ??= chromium.launch(
    launchOptions(findPageEngine(), '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1'),
  );
  return shared;
}

const microphoneOf = (recording: string): string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-audio-capture=${recording}`,
];

function launchOptions(executablePath: string | undefined, ...args: string[]) {
  if (!executablePath) throw new Error('No browser found; see .ci/browser.mjs');
  return {
    executablePath,
    chromiumSandbox: process.getuid?.() !== 0,
    args: [
      '--disable-gpu',
      // The browser's own sign-in and component updates end at a closed port of this machine.
      '--gaia-url=http://127.0.0.1:9',
      '--component-updater=url-source=http://127.0.0.1:9/',
      ...args,
    ],
  };
}

const contextOptions = (options: StageOptions): BrowserContextOptions => ({
  viewport: options.viewport ?? { width: 390, height: 844 },
  ...((options.phone ?? true) ? { isMobile: true, hasTouch: true, deviceScaleFactor: 2 } : {}),
  colorScheme: options.colorScheme ?? 'dark',
  timezoneId: options.timezone ?? 'Europe/Berlin',
  locale: 'en-GB',
  acceptDownloads: true,
});
