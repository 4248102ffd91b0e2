// Serves the built app the way a static host should: `node .ci/serve.mjs [--dir dist] [--port 4173]`.
// `npm start` uses it, and so do the browser tests, which kill it to take the signal away.
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { connect } from 'node:net';
import { extname, join, normalize, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const { values } = parseArgs({
  options: {
    dir: { type: 'string', default: fileURLToPath(new URL('../dist', import.meta.url)) },
    port: { type: 'string', default: process.env.PORT ?? '4173' },
    'end-with-parent': { type: 'boolean', default: false },
    // The port of the log server's WebSocket (`npm run hub`): live days find it under /live of this address.
    live: { type: 'string', default: process.env.LIVE_PORT ?? '4223' },
    // Nothing of another origin may share the page's process; the page's clock is fine then, and in tenths of a ms otherwise.
    isolated: { type: 'boolean', default: false },
  },
});
const root = resolve(values.dir);
const ISOLATION = values.isolated && {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
};

/** Names under assets/ carry a hash of their content; everything else may change under its name. */
const cacheControl = (path) =>
  path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';

/** The file a request asks for, or undefined. Hidden files and anything outside the folder do not exist. */
function fileFor(path) {
  if (path.includes('\0') || path.split('/').some((part) => part.startsWith('.'))) return undefined;
  const wanted = join(root, normalize(path.endsWith('/') ? `${path}index.html` : path));
  return statSync(wanted, { throwIfNoEntry: false })?.isFile() ? wanted : undefined;
}

const decoded = (url) => {
  try {
    return decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return undefined;
  }
};

const server = createServer((request, response) => {
  const end = (status, headers = {}) => response.writeHead(status, headers).end();
  if (request.method !== 'GET' && request.method !== 'HEAD') return end(405, { Allow: 'GET, HEAD' });
  const path = decoded(request.url);
  if (path === undefined) return end(400);
  // A page address inside the app has no file of its own; the app itself answers it.
  const isPage = extname(path) === '' && request.headers.accept?.includes('text/html');
  const file = fileFor(path) ?? (isPage ? fileFor('/index.html') : undefined);
  if (!file) return end(404);
  response.writeHead(200, {
    'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
    'Cache-Control': cacheControl(path),
    'Content-Security-Policy': "frame-ancestors 'none'",
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
    // Timecode is heard and codes are read by this page, and by no page inside another.
    'Permissions-Policy': 'microphone=(self), camera=(self)',
    ...ISOLATION,
  });
  if (request.method === 'HEAD') return response.end();
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
});

// What a reverse proxy does for the log server: hands the connection through.
server.on('upgrade', (request, socket, head) => {
  socket.on('error', () => socket.destroy());
  if (decoded(request.url) !== '/live') return socket.destroy();
  const asked = Object.entries(request.headers).map(([name, value]) => `${name}: ${value}\r\n`);
  const behind = connect(Number(values.live), '127.0.0.1', () => {
    behind.write(`GET /live HTTP/1.1\r\n${asked.join('')}\r\n`);
    behind.write(head);
    socket.pipe(behind).pipe(socket);
  });
  behind.on('error', () => socket.destroy());
  socket.on('close', () => behind.destroy());
  behind.on('close', () => socket.destroy());
});

server.on('error', (error) => {
  console.error(
    error.code === 'EADDRINUSE'
      ? `Port ${values.port} is in use by another program. Stop that one, or choose a port: PORT=4180 npm start`
      : `The server could not start: ${error.message}`,
  );
  process.exit(1);
});

// 127.0.0.1 and not every address: this machine only, and a secure context even without a certificate.
server.listen(Number(values.port), '127.0.0.1', () => {
  console.log(`Rollbook is at http://127.0.0.1:${server.address().port}/`);
});

if (values['end-with-parent']) process.stdin.on('end', () => process.exit()).resume();
