import { afterAll, beforeAll, expect, test } from 'vitest';
import { openLog } from '../../src/live/log.ts';
import { type Cluster, startCluster, startTruck, type Truck } from './islands.ts';
import { PHONE } from './live-phone.ts';

let office: Cluster;
let truck: Truck;
beforeAll(async () => {
  office = await startCluster();
  truck = await startTruck(office);
}, 60_000);
afterAll(async () => {
  await truck?.remove();
  await office?.remove();
});

const connect = async (base: string) => {
  const log = await openLog(base, PHONE, 'island');
  if (!log.ok) throw new Error(log.problem.code);
  const heard: string[] = [];
  for (const stream of log.value.streams)
    await log.value.read(stream, 0, ({ writer, bytes }) =>
      heard.push(`${writer} ${new TextDecoder().decode(bytes)} ${stream.name}`),
    );
  const give = (writer: string, number: number) =>
    log.value.give({ writer, number, bytes: new TextEncoder().encode(`${number}`) }, 0);
  return { heard, give, close: log.value.close, streams: log.value.streams.map(({ name }) => name) };
};

test('truck and office hear each other, once each, and after the link was cut', async () => {
  const inOffice = await connect(`http://127.0.0.1:${office.door.port}/`);
  const inTruck = await connect(truck.server.base);
  expect([inOffice.streams, inTruck.streams]).toEqual([
    ['SAID', 'HEARD'],
    ['SAID', 'HEARD'],
  ]);
  expect(await inOffice.give('mira', 1)).toEqual({ ok: true, value: true });
  expect(await inTruck.give('jon', 1)).toEqual({ ok: true, value: true });
  const both = { timeout: 30_000 };
  await expect.poll(() => inTruck.heard.toSorted(), both).toEqual(['jon 1 SAID', 'mira 1 HEARD']);
  await expect.poll(() => inOffice.heard.toSorted(), both).toEqual(['jon 1 HEARD', 'mira 1 SAID']);
  truck.link.shut();
  // Each island goes on alone.
  expect(await inOffice.give('mira', 2)).toEqual({ ok: true, value: true });
  expect(await inTruck.give('jon', 2)).toEqual({ ok: true, value: true });
  // What a phone gave comes back to it a moment after it was acknowledged.
  await expect.poll(() => [inTruck.heard.length, inOffice.heard.length]).toEqual([3, 3]);
  truck.link.open();
  await expect.poll(() => inTruck.heard.length, { timeout: 45_000 }).toBe(4);
  await expect.poll(() => inOffice.heard.length, { timeout: 45_000 }).toBe(4);
  inOffice.close();
  inTruck.close();
});
