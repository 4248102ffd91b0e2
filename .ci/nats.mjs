// Finds the log server that the tests and `npm run hub` start. On Debian as root it installs it; elsewhere it says how to get it.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { installDebian } from './browser.mjs';

/** Where Debian puts what is for administrators, which is not on everybody's path. */
const MORE = ['/usr/sbin', '/usr/local/bin'];

/** The path of nats-server on this machine, or undefined. */
export function findNatsServer() {
  const folders = [...(process.env.PATH ?? '').split(':'), ...MORE].filter(Boolean);
  const paths = [process.env.ROLLBOOK_NATS, ...folders.map((folder) => join(folder, 'nats-server'))];
  return paths.find((path) => path && existsSync(path));
}

/** The same, installed if need be; ends the process where it cannot be had. */
export function needNatsServer() {
  if (!findNatsServer()) installDebian(['nats-server']);
  const found = findNatsServer();
  if (found) return found;
  console.error(
    'Live days need nats-server, and none was found. Install it (Debian: apt install nats-server), or set ROLLBOOK_NATS to its path.',
  );
  process.exit(1);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  console.log(`Log server for the tests: ${needNatsServer()}`);
