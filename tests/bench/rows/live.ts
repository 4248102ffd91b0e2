import type { HeldKeys } from '../../../src/app/key-ring.ts';
import type { LogConnection } from '../../../src/app/live/log.ts';
import { sealedSealer } from '../../../src/app/live/sealed-sealer.ts';
import { dayKeysOf, newDaySecret } from '../../../src/exchange/sealed/day-keys.ts';
import { newWriterKey } from '../../../src/exchange/sealed/signing.ts';
import { openLog } from '../../../src/live/log.ts';
import { ok } from '../../../src/shared/result.ts';
import { take } from '../../day/say.ts';
import { nodePacking } from '../../exchange/node-packing.ts';
import { nodeCrypto } from '../../exchange/sealed/crypto.ts';
import { startCluster } from '../../live/islands.ts';
import { LivePhone, PHONE } from '../../live/live-phone.ts';
import type { Row } from '../row.ts';

/** So many live days at once; the fewer say how it grows. */
const DAYS = [10, 50];
const PHONES = 20;
const MESSAGES = 10;
/** Of a sealed action, as a day has many. */
const BYTES = 600;
const ACTIONS = [400, 1600];
/** As many connections begin at once as a set has phones. */
const AT_ONCE = 20;

const parts = { crypto: nodeCrypto, packing: nodePacking };

async function connections(
  base: string,
  days: number,
): Promise<{ readonly day: number; readonly log: LogConnection }[]> {
  const all: { day: number; log: LogConnection }[] = [];
  for (let day = 0; day < days; day += 1)
    for (let from = 0; from < PHONES; from += AT_ONCE) {
      const opened = await Promise.all(
        Array.from({ length: AT_ONCE }, () => openLog(base, PHONE, `bench${days}-${day}`)),
      );
      for (const log of opened) {
        if (!log.ok) throw new Error(log.problem.code);
        all.push({ day, log: log.value });
      }
    }
  return all;
}

/** How long one message takes when all phones of all days speak at once: acknowledged by two of three servers. */
async function speaking(base: string, days: number): Promise<Row> {
  const all = await connections(base, days);
  const bytes = new Uint8Array(BYTES);
  const from = performance.now();
  await Promise.all(
    all.map(async ({ log }, phone) => {
      for (let number = 1; number <= MESSAGES; number += 1) {
        const given = await log.give({ writer: `w${phone}`, number, bytes }, 0);
        if (!given.ok) throw new Error(given.problem.code);
      }
    }),
  );
  const ms = performance.now() - from;
  for (const { log } of all) log.close();
  const count = all.length * MESSAGES;
  const rate = Math.round(count / (ms / 1000)).toLocaleString('en-GB');
  return {
    work: `one message of ${days} live days of ${PHONES} phones, a cluster of three: ${rate} a second`,
    ours: (ms * 1000) / count,
    unit: 'µs',
  };
}

/** A phone without a screen that has the day's keys. */
const phoneWith = (held: HeldKeys, database: string, day: string): LivePhone =>
  new LivePhone({
    database,
    day,
    sealer: (book, store) => sealedSealer(parts, held, store, database, book),
  });

async function isLive(phone: LivePhone): Promise<void> {
  while (!phone.isLive) await new Promise((done) => setTimeout(done, 5));
}

/** What a phone that has nothing takes until it has a day of so many actions: read, checked, opened, folded, stored. */
async function catchingUp(base: string, actions: number): Promise<Row> {
  const secret = newDaySecret(nodeCrypto);
  const key = await newWriterKey(nodeCrypto);
  const held = { secret, keys: await dayKeysOf(nodeCrypto, secret), key, firstOwner: key.publicKey };
  const day = `bench-${actions}`;
  const owner = phoneWith(held, 'benchx', day);
  await owner.open(() => base);
  await isLive(owner);
  for (let number = 1; number <= actions; number += 1) {
    owner.store.run(() => ok([take('24', 1 + Math.floor(number / 10), number % 10)]));
    // One batch for each action, as when they are said one after another.
    while (owner.shelf.batches.size < number) await new Promise((done) => setTimeout(done, 1));
  }
  while ([...owner.shelf.batches.values()].some(({ on }) => on.length === 0))
    await new Promise((done) => setTimeout(done, 5));
  await owner.close();
  const reader = phoneWith({ ...held, key: null }, 'benchy', day);
  const from = performance.now();
  await reader.open(() => base);
  await isLive(reader);
  const ours = performance.now() - from;
  const got = reader.store.day.peek().facts.length;
  await reader.close();
  if (got !== actions) throw new Error(`${got} of ${actions} entries came`);
  return { work: `first catching up with a live day of ${actions} actions`, ours, unit: 'ms' };
}

/** Live days on a cluster of three servers on this machine. */
export async function rows(): Promise<Row[]> {
  const office = await startCluster();
  const base = `http://127.0.0.1:${office.door.port}/`;
  try {
    const all: Row[] = [];
    for (const days of DAYS) all.push(await speaking(base, days));
    for (const actions of ACTIONS) all.push(await catchingUp(base, actions));
    return all;
  } finally {
    await office.remove();
  }
}
