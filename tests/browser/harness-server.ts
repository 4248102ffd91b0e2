import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { resolve } from 'node:path';
import { createInterface } from 'node:readline';

const ROOT = resolve(import.meta.dirname, '../..');
const SCRIPT = resolve(ROOT, '.ci/serve.mjs');

/** The folder `npm start` serves. */
export const DIST = resolve(ROOT, 'dist');

/** The real server as a process of its own, so that killing it leaves nothing that could answer. */
export interface Server {
  /** `http://127.0.0.1:<port>`; the same after every start. */
  readonly origin: string;
  readonly isAlive: () => boolean;
  /** Nobody has killed it or started it anew, so it serves what it was started with. */
  readonly isAsStarted: () => boolean;
  /** Kills the process and waits until it is gone. */
  readonly kill: () => Promise<void>;
  /** Starts it again at the same address, perhaps with another build. */
  readonly start: (folder?: string) => Promise<void>;
}

/** Servers of dist, as they were started, that no stage of this process uses at the moment. */
const idle: Server[] = [];

/** A server of dist: one that another stage has left as it was, or else a new one. */
export const borrowServer = async (): Promise<Server> => idle.pop() ?? startServer();

/** Leaves a server to the next stage, unless this one killed it or had it serve something else. */
export async function giveBackServer(server: Server): Promise<void> {
  if (server.isAsStarted()) idle.push(server);
  else await server.kill();
}

/** Starts a server on a free port; `isolated`: whose pages share no process with another origin, and have a fine clock; `live`: the port of a log server. */
export async function startServer(folder: string = DIST, isolated = false, live?: number): Promise<Server> {
  let running = await spawnServer(folder, 0, isolated, live);
  const first = running;
  const { port } = running;
  const isAlive = (): boolean => running.child.exitCode === null && running.child.signalCode === null;
  const kill = async (): Promise<void> => {
    if (!isAlive()) return;
    const exited = once(running.child, 'exit');
    running.child.kill('SIGKILL');
    await exited;
  };
  const start = async (next: string = DIST): Promise<void> => {
    await kill();
    running = await spawnServer(next, port, isolated, live);
  };
  const isAsStarted = (): boolean => running === first && isAlive();
  return { origin: `http://127.0.0.1:${port}`, isAlive, isAsStarted, kill, start };
}

async function spawnServer(
  folder: string,
  port: number,
  isolated: boolean,
  live: number | undefined,
): Promise<{ child: ChildProcess; port: number }> {
  const args = [SCRIPT, '--dir', folder, '--port', String(port), '--end-with-parent'];
  if (isolated) args.push('--isolated');
  if (live !== undefined) args.push('--live', String(live));
  const child = spawn(process.execPath, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  for await (const line of createInterface({ input: child.stdout })) {
    const found = /:(\d+)\/$/.exec(line);
    if (found) return { child, port: Number(found[1]) };
  }
  throw new Error(`The server said no address; it ended with ${child.exitCode}`);
}
