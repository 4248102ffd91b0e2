import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { type JetStreamManager, jetstreamManager } from '@nats-io/jetstream';
import { asKeeper, makeStreams } from '../../.ci/hub/streams.mjs';
import { findNatsServer } from '../../.ci/nats.mjs';

const HUB = resolve(import.meta.dirname, '../../.ci/hub');

export const PASSWORDS = {
  HUB_PHONE: 'phoneword',
  HUB_ONLOOKER: 'onlookerword',
  HUB_KEEPER: 'keeperword',
  HUB_TRUCK: 'truckword',
} as const;

/** A real server as a process of its own. */
export interface LogServer {
  /** The address that a page served in front of it would have. */
  readonly base: string;
  readonly websocket: string;
  readonly folder: string;
  /** As a machine that loses its power: nothing is said, nothing is closed. */
  kill(): Promise<void>;
  /** Starts it again at the same addresses, on the same disk. */
  start(): Promise<void>;
  /** Kills it and removes its disk. */
  remove(): Promise<void>;
}

/** Ports that nobody has at the moment. */
export async function freePorts(count: number): Promise<number[]> {
  const servers = await Promise.all(
    Array.from({ length: count }, async () => {
      const server = createServer().listen(0, '127.0.0.1');
      await once(server, 'listening');
      return server;
    }),
  );
  const ports = servers.map((server) => (server.address() as { port: number }).port);
  await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
  return ports;
}

/** Starts a server with one of the files of `.ci/hub/`; `more` is what its variables are. */
export async function startLogServer(
  file: 'node' | 'cluster' | 'leaf' | string,
  more: Readonly<Record<string, string>> & { readonly HUB_WEBSOCKET: string },
): Promise<LogServer> {
  const folder = mkdtempSync(join(tmpdir(), 'rollbook-log-'));
  const path = file.includes('/') ? file : join(HUB, `${file}.conf`);
  const env = { ...process.env, ...PASSWORDS, HUB_STORE: folder, ...more };
  let running: ChildProcess | undefined;
  const websocket = `ws://${more.HUB_WEBSOCKET}`;
  const kill = async (): Promise<void> => {
    if (!running || running.exitCode !== null || running.signalCode !== null) return;
    const gone = once(running, 'exit');
    running.kill('SIGKILL');
    await gone;
  };
  const start = async (): Promise<void> => {
    await kill();
    running = spawn(findNatsServer() ?? 'nats-server', ['-c', path], {
      stdio: ['ignore', 'ignore', 'pipe'],
      env,
    });
    await isReady(running);
  };
  await start();
  return {
    base: `http://${more.HUB_WEBSOCKET}/`,
    websocket,
    folder,
    kill,
    start,
    async remove() {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** It says so when it listens; what it said before is the reason if it ends instead. */
function isReady(server: ChildProcess): Promise<void> {
  let said = '';
  return new Promise((done, refuse) => {
    server.stderr!.setEncoding('utf8').on('data', (text: string) => {
      if (said.includes('Server is ready')) return;
      said += text;
      if (said.includes('Server is ready')) done();
    });
    server.once('exit', () => refuse(new Error(`The server ended:\n${said}`)));
  });
}

/** A server with its streams, and what an operator may do to it. */
export interface LogNode extends LogServer {
  /** Deletes the log. */
  loseLog(): Promise<void>;
  makeLog(): Promise<void>;
  /** How many bytes it takes at most. */
  limitTo(bytes: number): Promise<void>;
}

export async function startNode(): Promise<LogNode> {
  const [client, websocket] = await freePorts(2);
  const server = await startLogServer('node', {
    HUB_LISTEN: `127.0.0.1:${client}`,
    HUB_WEBSOCKET: `127.0.0.1:${websocket}`,
  });
  const makeLog = (): Promise<void> =>
    makeStreams({ server: server.websocket, keeper: PASSWORDS.HUB_KEEPER });
  const asOperator = async (work: (manager: JetStreamManager) => Promise<unknown>): Promise<void> => {
    const connection = await asKeeper(server.websocket, PASSWORDS.HUB_KEEPER);
    await work(await jetstreamManager(connection, { checkAPI: false }));
    await connection.close();
  };
  await makeLog();
  return {
    ...server,
    makeLog,
    loseLog: () => asOperator(({ streams }) => streams.delete('SAID')),
    limitTo: (bytes) => asOperator(({ streams }) => streams.update('SAID', { max_bytes: bytes })),
  };
}
