import { expect, test } from 'vitest';
import { BatchBook } from '../../../src/app/live/book.ts';
import type { DayFacts } from '../../../src/app/live/day-facts.ts';
import type { LogConnection, LogMessage } from '../../../src/app/live/log.ts';
import { runSession } from '../../../src/app/live/session.ts';
import { ok, type Problem } from '../../../src/shared/result.ts';
import { memoryShelf } from '../../live/live-phone.ts';
import { plainSealer } from '../../live/plain-sealer.ts';

const DAY = 'day-session';
/** More than a session takes from its last step to its sleep. */
const MOMENTS = 60;
const STREAM = { id: 'SAID 1', name: 'SAID', origin: 'hub', last: 0 };

const message = (number: number): LogMessage => ({
  stream: STREAM.id,
  sequence: number,
  writer: 'boom',
  bytes: new TextEncoder().encode(JSON.stringify({ writer: 'boom', number, facts: [] })),
  left: 0,
});
const rest = (): Promise<void> => new Promise((done) => setTimeout(done, 2));

test('a message is taken whenever it comes, also in the moments in which the session falls asleep', async () => {
  const book = await BatchBook.open(memoryShelf(), DAY);
  let hear: (one: LogMessage) => void = () => {};
  let end: (problem: Problem) => void = () => {};
  const log: LogConnection = {
    streams: [STREAM],
    ended: new Promise((done) => {
      end = done;
    }),
    read: async (_stream, _after, heard) => {
      hear = heard;
      return ok(0);
    },
    give: async () => ok(true),
    close: () => {},
  };
  const facts: DayFacts = {
    without: async () => [],
    has: () => true,
    add: async (added) => ok({ count: added.length, twice: [] }),
    listen: () => () => {},
  };
  const sealer = plainSealer(DAY, 'mixer', []);
  const session = runSession(log, { sealer, book, facts, tell: () => {}, onKeyTwice: () => {} });
  await rest();
  const late: number[] = [];
  for (let moment = 0; moment < MOMENTS; moment += 1) {
    hear(message(moment * 2 + 1));
    for (let passed = 0; passed < moment; passed += 1) await Promise.resolve();
    hear(message(moment * 2 + 2));
    await rest();
    if (book.all.length !== moment * 2 + 2) late.push(moment);
  }
  expect(late).toEqual([]);
  end({ code: 'live-gone' });
  expect(await session).toEqual({ code: 'live-gone' });
});
