import { beforeEach, describe, expect, test } from 'vitest';
import { appStore } from '../../../src/app/app-store.ts';
import { BatchBook } from '../../../src/app/live/book.ts';
import { dayFacts } from '../../../src/app/live/day-facts.ts';
import { Incoming } from '../../../src/app/live/incoming.ts';
import { forgetRefusals, refusedHere } from '../../../src/app/live/refusals.ts';
import { safekeeping } from '../../../src/app/safekeeping.ts';
import type { Envelope } from '../../../src/facts/kinds/envelope.ts';
import { memoryJournal } from '../../../src/storage/memory-journal.ts';
import { MORNING } from '../../day/say.ts';
import { memoryShelf } from '../../live/live-phone.ts';
import { plainSealer } from '../../live/plain-sealer.ts';

const DAY = 'day-1';

/** The messages of a log come to the phone whose key is `phonea`. */
async function phone() {
  const app = appStore({
    journal: memoryJournal('phonea'),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    newDayId: () => DAY,
    safekeeping: safekeeping(undefined),
  });
  const store = await app.open(DAY);
  const book = await BatchBook.open(memoryShelf(), DAY);
  const incoming = new Incoming(plainSealer('name', 'phonea', []), book, dayFacts(app, store));
  return { store, book, incoming };
}

const noted = (id: string, text: string): Envelope =>
  ({ id, day: DAY, v: 1, at: MORNING, zone: 120, kind: 'phone-named', name: text, job: '' }) as never;

let last = 0;
const message = (writer: string, number: number, facts: readonly Envelope[], stream = 'SAID') => {
  last += 1;
  const bytes = new TextEncoder().encode(JSON.stringify({ writer, number, facts }));
  return { stream, sequence: last, writer, bytes, left: 0 };
};

beforeEach(() => {
  last = 0;
  forgetRefusals();
});

describe('an entry with other words under its number', () => {
  const [one, other] = [noted('000001-phoneb00000', 'Jon'), noted('000001-phoneb00000', 'Ines')];

  test('is named, the first stands, and what else is in its batch is taken', async () => {
    const { store, incoming } = await phone();
    const more = noted('000002-phoneb00000', 'Dora');
    await incoming.take([message('phoneb', 1, [one]), message('phonec', 1, [other, more])]);
    expect(store.day.peek().facts.map((fact) => 'name' in fact && fact.name)).toEqual(['Jon', 'Dora']);
    expect(refusedHere.value).toEqual({ count: 1, last: 'sealed-entry-twice' });
    expect([incoming.refused, incoming.keyTwiceFrom]).toEqual([1, null]);
  });

  test('is named, too, when the entry was here long before', async () => {
    const { incoming } = await phone();
    await incoming.take([message('phoneb', 1, [one])]);
    await incoming.take([message('phoneb', 2, [one])]);
    expect(refusedHere.value).toBeNull();
    await incoming.take([message('phoneb', 3, [other])]);
    expect(refusedHere.value).toEqual({ count: 1, last: 'sealed-entry-twice' });
  });

  test('under this phone’s own key means that another phone writes as this one', async () => {
    const { incoming } = await phone();
    await incoming.take([message('phoneb', 1, [one]), message('phonea', 1, [other])]);
    expect(incoming.keyTwiceFrom).toBe(1);
  });
});

describe('what has to wait', () => {
  const [first, second] = [noted('000001-phoneb00000', 'Jon'), noted('000002-phoneb00000', 'Jon B')];

  test('waits at the door alone, and the log is not noted as read beyond it', async () => {
    const { store, book, incoming } = await phone();
    const early = [message('phoneb', 2, [second]), message('phoneb', 2, [second], 'HEARD')];
    await incoming.take(early);
    expect(store.day.peek().facts).toHaveLength(0);
    expect([book.upTo('SAID'), book.upTo('HEARD')]).toEqual([0, 1]);
    await incoming.take([message('phoneb', 1, [first])]);
    expect(store.day.peek().facts).toHaveLength(2);
    expect(book.upTo('SAID')).toBe(3);
    expect(book.find({ writer: 'phoneb', number: 2 })!.on).toEqual(['SAID', 'HEARD']);
  });
});
