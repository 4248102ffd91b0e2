import { jetstreamManager } from '@nats-io/jetstream';
import { wsconnect } from '@nats-io/nats-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import type { LogConnection, LogMessage, LogPlace } from '../../src/app/live/log.ts';
import { openLog } from '../../src/live/log.ts';
import { type LogServer, PASSWORDS, startNode } from './servers.ts';

globalThis.WebSocket ??= WebSocket as unknown as typeof globalThis.WebSocket;

const PHONE: LogPlace = { path: '/live', user: 'phone', password: PASSWORDS.HUB_PHONE };
const ONLOOKER: LogPlace = { path: '/live', user: 'onlooker', password: PASSWORDS.HUB_ONLOOKER };
const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const batch = (number: number, writer = 'mira') => ({
  writer,
  number,
  bytes: bytesOf(`${writer} ${number}`),
});

let server: LogServer;
const open: LogConnection[] = [];
const connect = async (day: string, place = PHONE): Promise<LogConnection> => {
  const log = await openLog(server.base, place, day);
  if (!log.ok) throw new Error(log.problem.code);
  open.push(log.value);
  return log.value;
};
/** Everything that the log has of its day after a message, as soon as all of it is here. */
const readAfter = async (log: LogConnection, after: number, count: number): Promise<LogMessage[]> => {
  const heard: LogMessage[] = [];
  const reading = await log.read(log.streams[0]!, after, (message) => heard.push(message));
  expect(reading.ok).toBe(true);
  await expect.poll(() => heard.length).toBe(count);
  return heard;
};

beforeAll(async () => {
  server = await startNode();
});
afterAll(async () => {
  for (const log of open) log.close();
  await server.remove();
});

describe('the log of a day', () => {
  test('gives what was said, in order, from where a phone left off, and a batch twice only once', async () => {
    const log = await connect('order');
    expect(await log.give(batch(1), 0)).toEqual({ ok: true, value: true });
    expect(await log.give(batch(1), 0)).toEqual({ ok: true, value: false });
    expect(await log.give(batch(2), 0)).toEqual({ ok: true, value: true });
    const heard = await readAfter(log, 0, 2);
    expect(heard.map(({ writer, bytes }) => [writer, new TextDecoder().decode(bytes)])).toEqual([
      ['mira', 'mira 1'],
      ['mira', 'mira 2'],
    ]);
    const [later] = await readAfter(await connect('order'), heard[0]!.sequence, 1);
    expect(new TextDecoder().decode(later!.bytes)).toBe('mira 2');
  });

  test('has what was acknowledged after the server was killed, under the same stream', async () => {
    const log = await connect('killed');
    const given = await Promise.all(Array.from({ length: 200 }, (_, at) => log.give(batch(at + 1), 0)));
    expect(given.every(({ ok }) => ok)).toBe(true);
    await server.kill();
    expect(await log.ended).toEqual({ code: 'live-gone' });
    expect(await openLog(server.base, PHONE, 'killed')).toEqual({
      ok: false,
      problem: { code: 'live-gone' },
    });
    await server.start();
    const again = await connect('killed');
    expect(again.streams[0]!.id).toBe(log.streams[0]!.id);
    await readAfter(again, 0, 200);
  });

  test('names a wrong password and a message that is too large', async () => {
    const wrong = { ...PHONE, password: 'nobody' };
    expect(await openLog(server.base, wrong, 'day')).toEqual({
      ok: false,
      problem: { code: 'live-password' },
    });
    const log = await connect('large');
    const large = { ...batch(1), bytes: new Uint8Array(10 * 1024 * 1024) };
    expect(await log.give(large, 0)).toEqual({ ok: false, problem: { code: 'live-too-large' } });
  });

  test('takes nothing from an onlooker, who reads', async () => {
    const [phone, onlooker] = [await connect('looked'), await connect('looked', ONLOOKER)];
    await phone.give(batch(1), 0);
    await readAfter(onlooker, 0, 1);
    expect(await onlooker.give(batch(1, 'onlooker'), 0)).toEqual({
      ok: false,
      problem: { code: 'live-not-allowed' },
    });
  });

  test('lets no phone purge, delete or change it, nor read all days at once', async () => {
    await (await connect('kept')).give(batch(1), 0);
    const connection = await wsconnect({
      servers: server.websocket,
      user: 'phone',
      pass: PASSWORDS.HUB_PHONE,
      reconnect: false,
    });
    const { streams, consumers } = await jetstreamManager(connection, { checkAPI: false, timeout: 500 });
    const tried = {
      purge: () => streams.purge('SAID'),
      delete: () => streams.delete('SAID'),
      update: () => streams.update('SAID', { max_msgs: 1 }),
      'delete a message': () => streams.deleteMessage('SAID', 1),
      'another stream': () => streams.add({ name: 'MINE', subjects: ['days.hub.kept.*'] }),
      'all days': () => consumers.add('SAID', { ack_policy: 'none', filter_subject: '>' }),
      'send on': () =>
        consumers.add('SAID', {
          durable_name: 'on',
          deliver_subject: 'days.hub.a.b',
          filter_subject: 'days.*.*.*',
        }),
    };
    for (const [what, work] of Object.entries(tried)) {
      const refused = await work().then(
        () => 'allowed',
        (error: Error) => (error.cause instanceof Error ? error.cause.name : error.name),
      );
      // What would come back into the log is refused by the server itself.
      const why = what === 'send on' ? 'JetStreamApiError' : 'PermissionViolationError';
      expect([what, refused]).toEqual([what, why]);
    }
    await connection.close();
    await readAfter(await connect('kept'), 0, 1);
  });
});
