import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import type { Readable } from 'node:stream';
import { findWebKit, type WebKitPaths } from '../../.ci/engines.mjs';

/** A display without a screen, a home of its own, and whatever is started in them. */
export interface WebKitHouse extends WebKitPaths {
  /** Starts a program there; `heard` gets each line it prints. */
  readonly start: (command: string, args: readonly string[], options?: StartOptions) => ChildProcess;
  /** Ends one of them, with all it started itself. */
  readonly stop: (child: ChildProcess) => Promise<void>;
  readonly close: () => Promise<void>;
}

interface StartOptions {
  readonly env?: Readonly<Record<string, string>>;
  readonly heard?: (line: string) => void;
}

/** Even if this process is killed, what it started ends with it; a browser ends with its display. */
const WITH_US = ['--pdeathsig', 'KILL', '--'];

export async function openWebKitHouse(): Promise<WebKitHouse> {
  const paths = findWebKit();
  if (!paths) throw new Error('WebKitGTK was not found; `node .ci/engines.mjs` says more');
  const home = mkdtempSync(join(tmpdir(), 'rollbook-webkit-'));
  const children = new Set<ChildProcess>();

  const stop = async (child: ChildProcess): Promise<void> => {
    children.delete(child);
    const isGone = child.exitCode !== null || child.signalCode !== null || child.pid === undefined;
    const gone = isGone ? undefined : once(child, 'exit');
    killGroup(child);
    await gone;
  };
  const stopAllNow = (): void => {
    for (const child of children) killGroup(child);
  };
  process.once('exit', stopAllNow);
  const close = async (): Promise<void> => {
    for (const child of children) await stop(child);
    process.off('exit', stopAllNow);
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };

  try {
    const screen = ['-displayfd', '3', '-screen', '0', '1024x1000x24', '-nolisten', 'tcp'];
    const xvfb = spawn('setpriv', [...WITH_US, paths.display, ...screen], {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
      detached: true,
    });
    children.add(xvfb);
    const number = await firstLine(xvfb.stdio[3] as Readable);
    const env = {
      ...process.env,
      DISPLAY: `:${number}`,
      HOME: home,
      XDG_CONFIG_HOME: join(home, 'config'),
      XDG_CACHE_HOME: join(home, 'cache'),
      XDG_DATA_HOME: join(home, 'data'),
      XDG_RUNTIME_DIR: home,
      // There is no graphics card and no session bus here.
      WEBKIT_DISABLE_DMABUF_RENDERER: '1',
      LIBGL_ALWAYS_SOFTWARE: '1',
      NO_AT_BRIDGE: '1',
    };
    return {
      ...paths,
      start: (command, args, { env: more = {}, heard } = {}) => {
        const child = spawn('setpriv', [...WITH_US, command, ...args], {
          env: { ...env, ...more },
          stdio: ['ignore', 'pipe', 'pipe'],
          detached: true,
        });
        children.add(child);
        for (const input of [child.stdout, child.stderr]) {
          createInterface({ input }).on('line', (line) => heard?.(line));
        }
        return child;
      },
      stop,
      close,
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** Each child leads a group: the browser that a driver started, and the browser's own processes, go with it. */
function killGroup({ pid }: ChildProcess): void {
  if (pid === undefined) return;
  try {
    process.kill(-pid, 'SIGKILL');
  } catch (error) {
    // Nobody of the group is left.
    if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error;
  }
}

/** Words of this engine for what it does not know; the page says them for other engines. */
const UNKNOWN_TO_IT = /directive 'manifest-src'|argument key "interactive-widget"/;

/** What the browser printed, if that is an error or a warning from the page's console. */
export const consoleFault = (line: string): string[] =>
  /CONSOLE.*(ERROR|WARN)/.test(line) && !UNKNOWN_TO_IT.test(line) ? [line] : [];

async function firstLine(input: Readable): Promise<string> {
  for await (const line of createInterface({ input })) return line;
  throw new Error('The display did not start');
}

/** A port that nothing listens at now. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('There is no free port');
  return address.port;
}
