// Makes the streams of a server, or leaves those that are there: node .ci/hub/streams.mjs --keeper PASSWORD
//   --server ws://127.0.0.1:4223  its WebSocket port
//   --domain truck                     the server's own, if it is not hub
//   --replicas 3                       on a cluster of three
//   --from truck                       a domain whose phones are heard here too; may be given several times
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { jetstreamManager } from '@nats-io/jetstream';
import { nanos, wsconnect } from '@nats-io/nats-core';
import { WebSocket } from 'ws';

const HOUR_MS = 3_600_000;

/** What both have in common: a full server refuses what is new, and never throws away what is old. */
const kept = (replicas) => ({
  storage: 'file',
  retention: 'limits',
  discard: 'new',
  num_replicas: replicas,
  max_msg_size: 128 * 1024,
  max_bytes: 3 * 1024 ** 3,
  duplicate_window: nanos(2 * HOUR_MS),
});

/** What phones said here. A writer has one subject: `max_msgs_per_subject` is what a flood of one can take up. */
const said = (replicas, domain) => ({
  ...kept(replicas),
  name: 'SAID',
  subjects: [`days.${domain}.*.*`],
  max_msgs_per_subject: 100_000,
  discard_new_per_subject: true,
  deny_delete: true,
  deny_purge: true,
});

/** What phones said elsewhere: a copy, so nothing of it goes round. */
const heard = (replicas, from) => ({
  ...kept(replicas),
  name: 'HEARD',
  sources: from.map((domain) => ({ name: 'SAID', domain })),
});

/** Connects over the WebSocket port: Node 20 has no client of its own for it. */
export async function asKeeper(server, password) {
  const wsFactory = (url) => ({ socket: new WebSocket(url), encrypted: false });
  return wsconnect({ servers: server, user: 'keeper', pass: password, wsFactory, reconnect: false });
}

export async function makeStreams({ server, keeper, domain = 'hub', replicas = 1, from = [] }) {
  const connection = await asKeeper(server, keeper);
  try {
    const manager = await jetstreamManager(connection, { checkAPI: false });
    const there = await manager.streams.names().next();
    if (!there.includes('SAID')) await manager.streams.add(said(replicas, domain));
    if (from.length === 0) return;
    if (there.includes('HEARD')) await manager.streams.update('HEARD', heard(replicas, from));
    else await manager.streams.add(heard(replicas, from));
  } finally {
    await connection.close();
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { values } = parseArgs({
    options: {
      server: { type: 'string', default: 'ws://127.0.0.1:4223' },
      keeper: { type: 'string' },
      domain: { type: 'string', default: 'hub' },
      replicas: { type: 'string', default: '1' },
      from: { type: 'string', multiple: true, default: [] },
    },
  });
  await makeStreams({ ...values, replicas: Number(values.replicas) });
  console.log('The streams are there.');
}
