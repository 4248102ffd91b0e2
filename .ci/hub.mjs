// Starts one log server for live days on this machine and prints its live code: `npm run hub`. `npm start` hands /live
// through to it. What the phones say stays in the folder (--dir, .hub unless told) when it is stopped and started again.
import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import encodeQR from 'qr';
import { makeStreams } from './hub/streams.mjs';
import { needNatsServer } from './nats.mjs';

const { values } = parseArgs({
  options: {
    dir: { type: 'string', default: fileURLToPath(new URL('../.hub', import.meta.url)) },
    port: { type: 'string', default: process.env.LIVE_PORT ?? '4223' },
  },
});
const folder = resolve(values.dir);
mkdirSync(folder, { recursive: true, mode: 0o700 });

/** Letters and digits, the first a letter: the server's configuration takes anything else for a number or a sign. */
const newPassword = () => `w${randomBytes(15).toString('hex')}`;

/** Made once and kept beside the log: a new one would lock out the phones that know the old one. */
function passwords() {
  const path = join(folder, 'passwords.json');
  if (!existsSync(path)) {
    const names = ['HUB_PHONE', 'HUB_ONLOOKER', 'HUB_KEEPER', 'HUB_TRUCK'];
    const made = Object.fromEntries(names.map((name) => [name, newPassword()]));
    writeFileSync(path, JSON.stringify(made, null, 2), { mode: 0o600 });
  }
  return JSON.parse(readFileSync(path, 'utf8'));
}

const words = passwords();
const config = fileURLToPath(new URL('hub/node.conf', import.meta.url));
const server = spawn(needNatsServer(), ['-c', config], {
  stdio: ['ignore', 'ignore', 'pipe'],
  env: {
    ...process.env,
    ...words,
    HUB_STORE: folder,
    HUB_LISTEN: '127.0.0.1:-1',
    HUB_WEBSOCKET: `127.0.0.1:${values.port}`,
  },
});
let said = '';
let isStopped = false;
for (const signal of ['SIGINT', 'SIGTERM'])
  process.on(signal, () => {
    isStopped = true;
    server.kill('SIGTERM');
  });
server.on('exit', (code) => {
  if (!isStopped) console.error(said);
  process.exit(isStopped ? 0 : (code ?? 1));
});

server.stderr.setEncoding('utf8').on('data', async (text) => {
  const wasReady = said.includes('Server is ready');
  said += text;
  if (wasReady || !said.includes('Server is ready')) return;
  await makeStreams({ server: `ws://127.0.0.1:${values.port}`, keeper: words.HUB_KEEPER });
  const code = `rollbook-live /live phone ${words.HUB_PHONE}`;
  console.log(encodeQR(code, 'ascii'));
  console.log(
    'The log server runs. On the phone open the day, then Phones, then Go live, and scan this or paste:\n',
  );
  console.log(`    ${code}\n`);
  console.log(
    'It is a key: whoever has it may add to the log. What the days say can be read by their phones only.',
  );
});
