import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { cutTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { openLog } from '../../src/live/log.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { DAY, LivePhone, ONLOOKER, PHONE } from './live-phone.ts';
import { plainSealer } from './plain-sealer.ts';
import { type LogServer, startNode } from './servers.ts';

let server: LogServer;
let truck: LogServer;
const phones: LivePhone[] = [];
beforeAll(async () => {
  [server, truck] = await Promise.all([startNode(), startNode()]);
});
afterEach(async () => {
  await Promise.all(phones.splice(0).map((phone) => phone.close()));
});
afterAll(() => Promise.all([server, truck].map((one) => one?.remove())));

const office = (): string => server.base;
const inTruck = (): string => truck.base;
/** A name of its own for each test's day, on servers that all tests share. */
let days = 0;
const newDay = (): string => {
  days += 1;
  return `day${days}`;
};

async function phone(name: string, day: string, base: (() => string) | null = office): Promise<LivePhone> {
  const made = new LivePhone({ database: name, sealer: ({ all }) => plainSealer(day, name, all) });
  phones.push(made);
  if (base) await made.open(base);
  return made;
}

const takeOne = ({ store }: LivePhone): void => {
  for (const command of [rollTake, cutTake]) expect(store.run((day, now) => command(day, now)).ok).toBe(true);
};
const ids = ({ store }: LivePhone): string[] =>
  store.day
    .peek()
    .facts.map(({ id }) => id)
    .sort();
/** The whole day as the editors get it, from what is on the disk. */
const reported = async ({ journal }: LivePhone): Promise<string> =>
  reportText(reportOf(foldDay(DAY, (await journal.read(DAY)) as never), []));

/** Every phone has as many facts, all in step with a server. */
const inStep = async (all: readonly LivePhone[], facts: number): Promise<void> => {
  await expect
    .poll(() => all.map((one) => [ids(one).length, one.isLive]), { timeout: 20_000 })
    .toEqual(all.map(() => [facts, true]));
  expect(new Set(await Promise.all(all.map(reported))).size).toBe(1);
};

describe('a live day', () => {
  test('is the same on two phones, whatever each says, after the server was killed and started again', async () => {
    const day = newDay();
    const [mixer, boom] = [await phone('phonea', day), await phone('phoneb', day)];
    takeOne(mixer);
    await inStep([mixer, boom], 2);
    takeOne(boom);
    await inStep([mixer, boom], 4);
    await server.kill();
    await expect.poll(() => [mixer.state, boom.state]).toMatchObject([{ is: 'alone' }, { is: 'alone' }]);
    takeOne(mixer);
    takeOne(boom);
    expect([ids(mixer).length, ids(boom).length]).toEqual([6, 6]);
    await server.start();
    await inStep([mixer, boom], 8);
  });

  test('is said to be on the server whole only when the server has acknowledged it', async () => {
    const mixer = await phone('phonea', newDay());
    await expect.poll(() => mixer.isLive).toBe(true);
    const owed = (): boolean | undefined => (mixer.state?.is === 'live' ? mixer.state.owes : undefined);
    await expect.poll(owed).toBe(false);
    for (let nth = 1; nth <= 5; nth += 1) {
      takeOne(mixer);
      expect(owed()).toBe(true);
      await expect.poll(owed).toBe(false);
      const kept = [...mixer.shelf.batches.values()];
      expect(kept.flatMap((batch) => batch.ids)).toHaveLength(2 * nth);
      expect(kept.every(({ on }) => on.length > 0)).toBe(true);
    }
  });

  test('goes on from where the phone was closed, with what it said while it was alone', async () => {
    const day = newDay();
    const [mixer, boom] = [await phone('phonea', day), await phone('phoneb', day)];
    takeOne(mixer);
    await inStep([mixer, boom], 2);
    await boom.close();
    takeOne(mixer);
    await expect.poll(() => mixer.shelf.batches.size).toBe(2);
    // Nobody answers here: it says something, and is closed again before anybody does.
    await boom.open(() => 'http://127.0.0.1:9/');
    takeOne(boom);
    await boom.store.flushed();
    await boom.close();
    await boom.open(office);
    await inStep([mixer, boom], 6);
  });

  test('heals two islands through a phone that visits both, whoever wrote it', async () => {
    const day = newDay();
    const [mixer, boom, utility] = [
      await phone('phonea', day),
      await phone('phoneb', day, inTruck),
      await phone('phonec', day),
    ];
    takeOne(mixer);
    takeOne(boom);
    await inStep([mixer, utility], 2);
    await inStep([boom], 2);
    await mixer.close();
    await utility.close();
    await utility.open(inTruck);
    // What the mixer said is in the truck now, and the mixer never was there.
    await inStep([utility, boom], 4);
    await mixer.open(office);
    await utility.close();
    await utility.open(office);
    await inStep([utility, mixer], 4);
  });

  test('puts into batches what was taken in from a file', async () => {
    const day = newDay();
    const [mixer, boom] = [await phone('phonea', day, null), await phone('phoneb', day)];
    await mixer.open(() => 'http://127.0.0.1:9/');
    takeOne(mixer);
    await mixer.store.flushed();
    await mixer.close();
    const kept = (await mixer.journal.read(DAY)) as never[];
    boom.store.addForeign(kept, kept);
    const utility = await phone('phonec', day);
    await inStep([boom, utility], 2);
  });

  test('is filled again by its phones when an operator deleted the log', async () => {
    const day = newDay();
    const own = await startNode();
    const [mixer, boom] = [
      await phone('phonea', day, () => own.base),
      await phone('phoneb', day, () => own.base),
    ];
    takeOne(mixer);
    takeOne(boom);
    await inStep([mixer, boom], 4);
    await own.loseLog();
    await expect.poll(() => mixer.state).toEqual({ is: 'alone', problem: { code: 'live-no-log' } });
    await own.makeLog();
    await inStep([mixer, boom], 4);
    const utility = await phone('phonec', day, () => own.base);
    await inStep([utility], 4);
    await Promise.all(phones.splice(0).map((one) => one.close()));
    await own.remove();
  });

  test('refuses garbage, a stranger and another subject, and goes on', async () => {
    const day = newDay();
    const log = await openLog(server.base, PHONE, day);
    if (!log.ok) throw new Error(log.problem.code);
    const give = (writer: string, number: number, text: string) =>
      log.value.give({ writer, number, bytes: new TextEncoder().encode(text) }, 0);
    await give('phonea', 1, 'garbage');
    await give('phonea', 2, JSON.stringify({ writer: 'phoneb', number: 1, facts: [] }));
    await give('phonez', 1, JSON.stringify({ writer: 'phonez', number: 1, facts: [{ id: 'no fact' }] }));
    const [mixer, boom] = [await phone('phonea', day), await phone('phoneb', day)];
    takeOne(mixer);
    // The server knows the message ids of its first batches already, by what a stranger put there.
    await inStep([mixer, boom], 2);
    log.value.close();
  });

  test('gives nothing of an onlooker, and shows it everything', async () => {
    const day = newDay();
    const mixer = await phone('phonea', day);
    const onlooker = new LivePhone({
      database: 'phoneo',
      sealer: ({ all }) => plainSealer(day, null, all),
      place: ONLOOKER,
    });
    phones.push(onlooker);
    await onlooker.open(office);
    takeOne(mixer);
    await inStep([mixer, onlooker], 2);
    takeOne(onlooker);
    await onlooker.store.flushed();
    takeOne(mixer);
    await expect.poll(() => ids(onlooker).length).toBe(6);
    expect(ids(mixer).length).toBe(4);
  });

  test('says that a server which is full keeps nothing more, and gives it when there is room', async () => {
    const day = newDay();
    const own = await startNode();
    const mixer = await phone('phonea', day, () => own.base);
    takeOne(mixer);
    await inStep([mixer], 2);
    await own.limitTo(1);
    takeOne(mixer);
    await expect.poll(() => mixer.states).toContainEqual({ is: 'alone', problem: { code: 'live-full' } });
    await own.limitTo(1024 ** 3);
    const boom = await phone('phoneb', day, () => own.base);
    await inStep([mixer, boom], 4);
    await Promise.all(phones.splice(0).map((one) => one.close()));
    await own.remove();
  });
});
