// Runs `.ci/hub/proxy.conf` as a production would: nginx in front of the built app and of a log server, one host, TLS by a
// throw-away certificate. `npm run faults -- proxy`; on Debian as root it installs nginx, elsewhere it says what is missing.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { installDebian } from './browser.mjs';
import { ensureBuilt } from './build.mjs';
import { makeStreams } from './hub/streams.mjs';
import { needNatsServer } from './nats.mjs';
import { demand, inThePage } from './proxied-page.mjs';

const ROOT = resolve(import.meta.dirname, '..');
const HOST = 'rollbook.example';
const WORDS = {
  HUB_PHONE: 'phoneword',
  HUB_ONLOOKER: 'lookword',
  HUB_KEEPER: 'keeperword',
  HUB_TRUCK: 'truckword',
};
const WITHIN_MS = 20_000;
/** As many as join at once; the file lets some 60 of one address through, and 2 a second after that. */
const JOIN = 150;
const MOST_LET_THROUGH = 90;

const findNginx = () =>
  [process.env.ROLLBOOK_NGINX, '/usr/sbin/nginx', '/usr/local/bin/nginx', '/opt/homebrew/bin/nginx'].find(
    (path) => path && existsSync(path),
  );
const note = (row) => {
  const table = process.env.FAULTS_TABLE;
  if (table) appendFileSync(table, `${JSON.stringify({ fault: 'behind the proxy', lost: 0, ...row })}\n`);
};
const pause = (ms) => new Promise((done) => setTimeout(done, ms));
async function freePort() {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = /** @type {import('node:net').AddressInfo} */ (server.address());
  await new Promise((done) => server.close(done));
  return port;
}

/** The file as it is, with the ports and paths of this machine; what it no longer says is told. */
function configured(folder, port, logs) {
  let text = readFileSync(join(ROOT, '.ci/hub/proxy.conf'), 'utf8');
  for (const [from, to] of [
    ['listen 443 ssl;', `listen 127.0.0.1:${port} ssl;`],
    ['/etc/ssl/rollbook.pem', join(folder, 'cert.pem')],
    ['/etc/ssl/rollbook.key', join(folder, 'key.pem')],
    ['/srv/rollbook/dist', join(ROOT, 'dist')],
    ['server 127.0.0.1:4223;', `server 127.0.0.1:${logs};`],
  ]) {
    demand(text.includes(from), `proxy.conf does not say ${from}`);
    text = text.replace(from, to);
  }
  const temporary = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'];
  const paths = temporary.map((name) => `${name}_temp_path ${join(folder, name)};`).join('\n');
  const types = existsSync('/etc/nginx/mime.types') ? 'include /etc/nginx/mime.types;' : '';
  return `daemon off; pid ${join(folder, 'pid')}; error_log stderr warn;
events {}
http { ${types} default_type application/octet-stream; access_log off;
${paths}
${text} }`;
}

/** How a request to join is answered: 101 for a connection, 503 for one too many. */
const join101 = (port) =>
  new Promise((done, refuse) => {
    const asking = request({
      ...{ host: '127.0.0.1', port, path: '/live', servername: HOST, rejectUnauthorized: false },
      headers: {
        ...{ Host: HOST, Connection: 'Upgrade', Upgrade: 'websocket' },
        ...{ 'Sec-WebSocket-Version': '13', 'Sec-WebSocket-Key': 'dGhlIHNhbXBsZSBub25jZQ==' },
      },
    });
    asking.on('upgrade', (_, socket) => {
      socket.destroy();
      done(101);
    });
    asking.on('response', (answer) => {
      answer.resume();
      done(answer.statusCode);
    });
    asking.on('error', refuse);
    asking.end();
  });

async function run(folder, nginx) {
  const [port, logs] = [await freePort(), await freePort()];
  const started = [];
  const start = async (command, args, env, isReady) => {
    const child = spawn(command, args, {
      env: { ...process.env, ...env },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    started.push(child);
    let said = '';
    child.stderr.setEncoding('utf8').on('data', (text) => {
      said += text;
    });
    for (const until = Date.now() + WITHIN_MS; !(await isReady(said)); await pause(50))
      demand(Date.now() < until && child.exitCode === null, `${command} did not start:\n${said}`);
  };
  try {
    const subject = ['-subj', `/CN=${HOST}`, '-addext', `subjectAltName=DNS:${HOST}`];
    const files = ['-keyout', join(folder, 'key.pem'), '-out', join(folder, 'cert.pem')];
    const made = spawnSync('openssl', [
      'req',
      '-x509',
      '-newkey',
      'rsa:2048',
      '-nodes',
      '-days',
      '2',
      ...subject,
      ...files,
    ]);
    demand(made.status === 0, `no certificate: ${made.stderr}`);
    const node = {
      ...WORDS,
      HUB_STORE: folder,
      HUB_LISTEN: '127.0.0.1:-1',
      HUB_WEBSOCKET: `127.0.0.1:${logs}`,
    };
    const isThere = (said) => said.includes('Server is ready');
    await start(needNatsServer(), ['-c', join(ROOT, '.ci/hub/node.conf')], node, isThere);
    await makeStreams({ server: `ws://127.0.0.1:${logs}`, keeper: WORDS.HUB_KEEPER });
    writeFileSync(join(folder, 'nginx.conf'), configured(folder, port, logs));
    const answers = () =>
      join101(port).then(
        () => true,
        () => false,
      );
    await start(nginx, ['-c', join(folder, 'nginx.conf'), '-p', folder], {}, answers);
    const app = await inThePage(HOST, port, WORDS.HUB_PHONE);
    // All of a set joins at once, and more: the bound answers, and who is live stays so.
    const answered = await Promise.all(Array.from({ length: JOIN }, () => join101(port)));
    const letThrough = answered.filter((status) => status === 101).length;
    const refused = answered.filter((status) => status === 503).length;
    demand(letThrough + refused === JOIN, `other answers: ${[...new Set(answered)]}`);
    demand(letThrough > 0 && letThrough <= MOST_LET_THROUGH, `${letThrough} of ${JOIN} were let through`);
    await app.headSays('live');
    await app.page.reload();
    // Too many have just joined: the page is let in as soon as there is room.
    await app.headSays('live');
    await app.allThere();
    const told = app.faults.filter((fault) => !fault.includes('503'));
    demand(told.length === 0, `faults in the page: ${told.join('; ')}`);
    await app.browser.close();
    return `page and live connection over TLS, ${JOIN} joined at once, ${refused} refused`;
  } finally {
    for (const child of started) child.kill('SIGKILL');
  }
}

installDebian(['nginx-light', 'openssl']);
ensureBuilt();
const nginx = findNginx();
if (!nginx) {
  note({ tried: '0', lost: null, why: 'no nginx on this machine; set ROLLBOOK_NGINX to its path' });
  process.exit(0);
}
const folder = mkdtempSync(join(tmpdir(), 'rollbook-proxy-'));
try {
  const tried = await run(folder, nginx);
  console.log(tried);
  note({ tried });
} catch (error) {
  console.error(error);
  note({ tried: String(error).split('\n')[0], lost: 1 });
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
// A browser that a failure left open would keep this process.
process.exit();
