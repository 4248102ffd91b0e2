import { jetstreamManager } from '@nats-io/jetstream';
import { headers, type NatsConnection, wsconnect } from '@nats-io/nats-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { asKeeper } from '../../.ci/hub/streams.mjs';
import type { AppStore } from '../../src/app/app-store.ts';
import type { HeldKeys, KeyRing } from '../../src/app/key-ring.ts';
import { accept, admit, keysToShare } from '../../src/app/live/join.ts';
import { refusedHere } from '../../src/app/live/refusals.ts';
import { sealedSealer } from '../../src/app/live/sealed-sealer.ts';
import { cutTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { FIRST_KEY } from '../../src/exchange/sealed/day-keys.ts';
import { NO_BATCH, sealBatch } from '../../src/exchange/sealed/seal.ts';
import { newWriterKey } from '../../src/exchange/sealed/signing.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { openLog } from '../../src/live/log.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { refusedWords, SEALED_SENTENCES } from '../../src/ui/words/sealed.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { take } from '../day/say.ts';
import { SetPhone } from '../day/three-phones.ts';
import { parts } from '../exchange/sealed/sealed-phone.ts';
import { LivePhone, PHONE } from './live-phone.ts';
import { type LogNode, PASSWORDS, startNode } from './servers.ts';

const DAY = 'day-flood';
/** Messages of each kind of flood. */
const EACH = LONG ? 5000 : 400;

/** A machine may have much else to do. */
const WITHIN = { timeout: 40_000, interval: 50 };

let server: LogNode;
const phones: LivePhone[] = [];
const connections: NatsConnection[] = [];
beforeAll(async () => {
  server = await startNode();
});
afterEach(async () => {
  await Promise.all(phones.splice(0).map((phone) => phone.close()));
  await Promise.all(connections.splice(0).map((connection) => connection.close()));
});
afterAll(() => server?.remove());

function ringOf(): KeyRing {
  const kept = new Map<string, HeldKeys>();
  return {
    read: async (day) => kept.get(day),
    keep: async (day, held) => void kept.set(day, held),
    find: async (name) => [...kept].find(([, { keys }]) => keys.name === name)?.[0],
  };
}

/** The mixer's phone, whose day it is, and one that it has let in; both live at the server. */
async function sharedDay(day: string): Promise<{ mixer: LivePhone; boom: LivePhone; held: HeldKeys }> {
  const ring = ringOf();
  const mixer = new LivePhone({
    ...{ database: 'phonea', day },
    sealer: async (book, store) => {
      const app = { parts: { journal: mixer.journal } } as unknown as AppStore;
      const held = await keysToShare(parts, ring, app, store);
      return sealedSealer(parts, held, store, 'phonea', book);
    },
  });
  await mixer.open(() => server.base);
  const held = (await ring.read(day))!;
  const { secret, firstOwner } = held;
  const invited = {
    day,
    secrets: new Map([[FIRST_KEY, secret]]),
    firstOwner,
    offer: 'writer' as const,
    word: '0123456789abcdef',
    place: PHONE,
  };
  const theirs = await accept(parts, ringOf(), invited);
  const asking = { key: theirs.key!.publicKey, word: invited.word, database: 'phoneb', name: 'Jon', job: '' };
  expect((await admit(parts, held, mixer.store, asking)).ok).toBe(true);
  const boom = new LivePhone({
    ...{ database: 'phoneb', day },
    sealer: (book, store) => sealedSealer(parts, theirs, store, 'phoneb', book),
  });
  await boom.open(() => server.base);
  phones.push(mixer, boom);
  await expect.poll(() => [mixer.isLive, boom.isLive], WITHIN).toEqual([true, true]);
  return { mixer, boom, held };
}

const takeOne = ({ store }: LivePhone): void => {
  for (const command of [rollTake, cutTake]) expect(store.run((day, now) => command(day, now)).ok).toBe(true);
};
const ids = ({ store }: LivePhone): string[] =>
  store.day
    .peek()
    .facts.map(({ id }) => id)
    .sort();
const reported = async ({ journal, day }: LivePhone): Promise<string> =>
  reportText(reportOf(foldDay(day, (await journal.read(day)) as never), []));

async function connect(): Promise<NatsConnection> {
  const connection = await wsconnect({
    ...{ servers: server.websocket, user: 'phone', pass: PASSWORDS.HUB_PHONE, reconnect: false },
  });
  connections.push(connection);
  return connection;
}

interface Message {
  readonly writer: string;
  readonly bytes: Uint8Array;
}

/** The subject of a writer of a day: the log knows the day by its sealed name only. */
const subjectOf = (day: HeldKeys['keys'], writer: string): string => `days.hub.${day.name}.${writer}`;

/** Whoever has the live code sends as much as the line takes; resolves when the server has all of it. */
async function pour(messages: readonly Message[], day: HeldKeys['keys']): Promise<void> {
  const connection = await connect();
  for (const [at, { writer, bytes }] of messages.entries()) {
    const named = headers();
    named.set('Nats-Msg-Id', `${day.name} flood ${writer} ${at}`);
    connection.publish(subjectOf(day, writer), bytes, { headers: named });
  }
  await connection.flush();
}

const FLOODED = take('FLOOD', 1, 6);

/** The same message with one bit other than it was: signed by nobody. */
function alteredOf({ writer, bytes }: Message, at: number): Message {
  const other = new Uint8Array(bytes);
  other[other.length - 1 - (at % 64)]! ^= 1 + (Math.floor(at / 64) % 255);
  return { writer, bytes: other };
}

/** A batch of this day by a key that nobody admitted. */
async function byStranger(keys: HeldKeys['keys'], day: string, drafts: readonly Draft[]): Promise<Message> {
  const phone = new SetPhone(2, 0);
  const facts = drafts.map((draft) => ({ ...phone.say(draft, 0), day }));
  return sealBatch(parts, keys, await newWriterKey(parts.crypto), NO_BATCH, facts, FIRST_KEY);
}

/** The same of some 100 kB: a server takes no more than 128. */
function largeBatch({ keys }: HeldKeys): Promise<Message> {
  const text = (): string => Buffer.from(parts.crypto.random(2000)).toString('base64').slice(0, 2600);
  const notes = Array.from({ length: 45 }, () => text());
  return byStranger(
    keys,
    'day-kinds',
    notes.map((said): Draft => ({ kind: 'note-added', take: '000001-phonea00000', text: said })),
  );
}

/** So many of each kind of message that nobody may fold. */
async function flood({ keys, key }: HeldKeys, genuine: Uint8Array, many: number) {
  const own = { writer: key!.writer, bytes: genuine };
  const strange = await byStranger(keys, DAY, [FLOODED]);
  const numbered = Array.from({ length: many }, (_, at) => at);
  return {
    garbage: numbered.map((at): Message => ({ writer: 'nobody', bytes: new Uint8Array(200).fill(at % 251) })),
    replays: numbered.map((): Message => own),
    altered: numbered.map((at) => alteredOf(own, at)),
    strangers: numbered.map((at) => alteredOf(strange, at)),
  };
}

describe('a flood on the log of a day', () => {
  test('is refused and named, changes nothing on any phone, and lets what phones say through', async () => {
    const { mixer, boom, held } = await sharedDay(DAY);
    takeOne(mixer);
    takeOne(boom);
    await expect.poll(() => String(ids(boom)) === String(ids(mixer)) && ids(mixer).length, WITHIN).toBe(6);
    const before = await reported(mixer);
    const genuine = [...mixer.shelf.batches.values()][0]!.bytes;
    const kinds = await flood(held, genuine, EACH);
    const all = Object.values(kinds).flat();
    const began = performance.now();
    await pour(all, held.keys);
    // While it comes down on them, each says something, and the other gets it.
    takeOne(mixer);
    takeOne(boom);
    await expect.poll(() => [ids(mixer).length, ids(boom).length], WITHIN).toEqual([10, 10]);
    const passedMs = performance.now() - began;
    expect(ids(mixer)).toEqual(ids(boom));
    expect(await reported(mixer)).toBe(await reported(boom));
    expect(await reported(mixer)).not.toBe(before);
    expect(await reported(mixer)).not.toContain('FLOOD');
    const { count, last } = refusedHere.value!;
    expect(count).toBeGreaterThanOrEqual(2 * EACH);
    expect(refusedWords({ count, last })).toContain(SEALED_SENTENCES[last]);
    // A phone that was away reads all of it, and has the same day.
    await boom.close();
    takeOne(mixer);
    await boom.open(() => server.base);
    await expect.poll(() => ids(boom).length, WITHIN).toBe(12);
    expect(await reported(boom)).toBe(await reported(mixer));
    noteFault('flood on the log', `${all.length} messages, ${count} refused, ${Math.round(passedMs)} ms`, 0);
  });

  test('names each kind: garbage, an altered batch, and more of a stranger than may wait', async () => {
    const day = 'day-kinds';
    const { mixer, boom, held } = await sharedDay(day);
    takeOne(mixer);
    await expect.poll(() => ids(boom).length, WITHIN).toBe(ids(mixer).length);
    const genuine = [...mixer.shelf.batches.values()].at(-1)!.bytes;
    const kinds = await flood(held, genuine, 1);
    /** Both phones name what they refuse, each in its own time. */
    const isNamed = async (messages: readonly Message[], as: string): Promise<void> => {
      await pour(messages, held.keys);
      await expect.poll(() => refusedHere.value?.last, WITHIN).toBe(as);
    };
    await isNamed(kinds.garbage, 'sealed-garbage');
    await isNamed(kinds.altered, 'sealed-forged');
    // What nobody admitted may be admitted yet, so it waits: 8 MB of it and no more.
    const large = await largeBatch(held);
    await isNamed(
      Array.from({ length: 100 }, (_, at) => alteredOf(large, at)),
      'sealed-too-many',
    );
    takeOne(mixer);
    await expect.poll(() => String(ids(boom)) === String(ids(mixer)) && ids(mixer).length, WITHIN).toBe(6);
  });

  test('of one writer fills that writer’s share of the log and no other’s', async () => {
    const day = 'day-share';
    const most = 50;
    const keeper = await asKeeper(server.websocket, PASSWORDS.HUB_KEEPER);
    const manager = await jetstreamManager(keeper, { checkAPI: false });
    await manager.streams.update('SAID', { max_msgs_per_subject: most });
    const { mixer, boom, held } = await sharedDay(day);
    const subject = subjectOf(held.keys, 'nobody');
    await pour(
      Array.from({ length: 4 * most }, () => ({ writer: 'nobody', bytes: new Uint8Array(100) })),
      held.keys,
    );
    const { state } = await manager.streams.info('SAID', { subjects_filter: subject });
    expect(state.subjects).toEqual({ [subject]: most });
    const log = await openLog(server.base, PHONE, held.keys.name);
    if (!log.ok) throw new Error(log.problem.code);
    const given = await log.value.give({ writer: 'nobody', number: 1, bytes: new Uint8Array(9) }, 0);
    expect(given).toEqual({ ok: false, problem: { code: 'live-full' } });
    log.value.close();
    takeOne(mixer);
    await expect.poll(() => String(ids(boom)) === String(ids(mixer)) && ids(mixer).length, WITHIN).toBe(4);
    await keeper.close();
  });

  test('of subscriptions ends at the server', async () => {
    const connection = await connect();
    const said: string[] = [];
    void (async () => {
      for await (const status of connection.status())
        if (status.type === 'error') said.push(status.error.message);
    })();
    for (let at = 0; at < 120; at += 1) connection.subscribe(`_INBOX.flood.${at}`);
    await expect.poll(() => said.join('\n'), WITHIN).toMatch(/maximum subscriptions exceeded/i);
  });
});
