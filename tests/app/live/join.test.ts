import { describe, expect, test } from 'vitest';
import type { AppStore } from '../../../src/app/app-store.ts';
import { type DayStore, openDayStore } from '../../../src/app/day-store.ts';
import type { HeldKeys, Offer } from '../../../src/app/key-ring.ts';
import { BatchBook } from '../../../src/app/live/book.ts';
import { keysToShare } from '../../../src/app/live/join.ts';
import { readInvitation } from '../../../src/app/live/join-codes.ts';
import {
  codeToAsk,
  codeToJoin,
  letIn,
  membersHere,
  putOff,
  type Request,
  readLiveCode,
  spokenHere,
} from '../../../src/app/live/phone-live.ts';
import { platformParts } from '../../../src/app/live/platform-parts.ts';
import { refusedHere } from '../../../src/app/live/refusals.ts';
import { renewKey } from '../../../src/app/live/renew-key.ts';
import { sealedSealer } from '../../../src/app/live/sealed-sealer.ts';
import { onlookerDays } from '../../../src/app/onlooker-days.ts';
import { readAll } from '../../../src/app/read-stored.ts';
import type { Shelf } from '../../../src/app/shelf.ts';
import { takeApart } from '../../../src/exchange/sealed/sealed-bytes.ts';
import { databaseOf } from '../../../src/shared/ids.ts';
import { memoryJournal } from '../../../src/storage/memory-journal.ts';
import { refusedWords, SEALED_SENTENCES } from '../../../src/ui/words/sealed.ts';
import { MORNING, take } from '../../day/say.ts';
import { memoryShelf } from '../../live/live-phone.ts';

const DAY = 'day-1';
const PLACE = { path: '/live', user: 'phone', password: 'word' };

/** A phone with the day open, and all that a live day needs but a server. */
async function phone(database: string, name: string) {
  const ring = new Map<string, HeldKeys>();
  const onlooking = onlookerDays(undefined);
  const parts = {
    journal: memoryJournal(database),
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    holder: { read: () => ({ name, job: 'Utility' }), keep: () => {} },
    onlooking,
    live: {
      places: { of: () => PLACE, keep: () => {} },
      engine: async () => ({
        ring: {
          read: async (day: string) => ring.get(day),
          keep: async (day: string, held: HeldKeys) => void ring.set(day, held),
          find: async () => DAY,
        },
        shelf: memoryShelf(),
      }),
      start: () => {},
      stop: () => {},
      forget: async () => {},
    },
  };
  const store = await openDayStore(DAY, parts);
  const app = { parts, open: async () => store } as unknown as AppStore;
  return { app, store, ring, onlooking };
}

/** What one phone has goes to the other, as a server or a file would carry it. */
function give({ day: { value: from } }: DayStore, to: DayStore): void {
  const here = new Set(to.day.value.facts.map(({ id }) => id));
  const fresh = from.facts.filter(({ id }) => !here.has(id));
  to.addForeign(readAll(fresh).facts, fresh);
}

async function shared(offer: Offer) {
  const [mixer, boom] = [await phone('phonea', 'Mira Holm'), await phone('phoneb', 'Jon Berg')];
  const { ring } = await mixer.app.parts.live!.engine();
  await keysToShare(platformParts, ring, mixer.app, mixer.store);
  const code = await codeToJoin(mixer.app, DAY, offer);
  expect(await readLiveCode(boom.app, null, code)).toEqual({
    ok: true,
    value: { did: 'joined', day: DAY, offer, isLive: true },
  });
  give(mixer.store, boom.store);
  return { mixer, boom, code };
}

async function asked({ app }: { app: AppStore }, code: string): Promise<Request> {
  const read = await readLiveCode(app, DAY, code);
  if (!read?.ok || read.value.did !== 'asked') throw new Error(JSON.stringify(read));
  return read.value.request;
}

const roleOf = async ({ app }: { app: AppStore }) => (await membersHere(app, DAY))!.others[0]?.role;

describe('a phone joins to write', () => {
  test('by asking with the one-time word, and the owner sees the words that it shows', async () => {
    const { mixer, boom } = await shared('writer');
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isOwner: false, mayAsk: true });
    const request = await asked(mixer, await codeToAsk(boom.app, DAY));
    expect(request.asking).toMatchObject({ name: 'Jon Berg', job: 'Utility', database: 'phoneb' });
    expect(request.spoken).toMatch(/^[a-z]{5} [a-z]{5}$/);
    expect(request.spoken).toBe(await spokenHere(boom.app, DAY));
    expect(await roleOf(mixer)).toBeUndefined();
    expect((await letIn(mixer.app, DAY, request)).ok).toBe(true);
    give(mixer.store, boom.store);
    expect(await roleOf(mixer)).toBe('writer');
    expect(await membersHere(boom.app, DAY)).toMatchObject({ mayAsk: false });
  });

  test('with a photographed code alone it shows other words, and the word admits one phone only', async () => {
    const { mixer, boom, code } = await shared('writer');
    const thief = await phone('phonec', 'Jon Berg');
    await readLiveCode(thief.app, null, code);
    const one = await asked(mixer, await codeToAsk(boom.app, DAY));
    const other = await asked(mixer, await codeToAsk(thief.app, DAY));
    expect(other.spoken).not.toBe(one.spoken);
    await letIn(mixer.app, DAY, one);
    const USED = { ok: false, problem: { code: 'join-word-used' } };
    expect(await letIn(mixer.app, DAY, other)).toEqual(USED);
    expect(await readLiveCode(mixer.app, DAY, await codeToAsk(thief.app, DAY))).toEqual(USED);
    expect((await membersHere(mixer.app, DAY))!.others).toHaveLength(1);
  });

  test('only with the owner: another that shows a code lets nobody in', async () => {
    const { mixer, boom } = await shared('writer');
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    give(mixer.store, boom.store);
    const third = await phone('phonec', 'Ines Roth');
    await readLiveCode(third.app, null, await codeToJoin(boom.app, DAY, 'writer'));
    const request = await asked(boom, await codeToAsk(third.app, DAY));
    expect(await letIn(boom.app, DAY, request)).toEqual({ ok: false, problem: { code: 'live-not-owner' } });
  });

  test('and is put off the day: it reads only from then on', async () => {
    const { mixer, boom } = await shared('writer');
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    give(mixer.store, boom.store);
    expect(boom.store.readsOnly.value).toBeNull();
    const [member] = (await membersHere(mixer.app, DAY))!.others;
    expect((await putOff(mixer.app, DAY, member!)).ok).toBe(true);
    give(mixer.store, boom.store);
    expect(await roleOf(mixer)).toBe('removed');
    expect(boom.store.readsOnly.value).toBe('removed');
  });
});

describe('a phone joins to look on', () => {
  test('with a code without a word, no key to write with, and nothing to ask', async () => {
    const { boom, code } = await shared('onlooker');
    expect(readInvitation(code)).toMatchObject({ offer: 'onlooker', word: '' });
    expect(boom.ring.get(DAY)!.key).toBeNull();
    expect(boom.store.readsOnly.value).toBe('looks-on');
    expect(await codeToAsk(boom.app, DAY)).toBe('');
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isOwner: false, mayAsk: false });
  });

  test('and may be given a code to write later', async () => {
    const { mixer, boom } = await shared('onlooker');
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    give(mixer.store, boom.store);
    expect(boom.store.readsOnly.value).toBeNull();
  });
});

const keyNumberOf = ({ bytes }: { readonly bytes: Uint8Array }): number => {
  const read = takeApart(bytes);
  if (!read.ok) throw new Error(read.problem.code);
  return read.value.keyNumber;
};

/** The sealer of a phone that has not sealed anything yet. */
async function sealerOf({ ring, store, app }: Awaited<ReturnType<typeof phone>>) {
  const shelf = {
    read: async () => ({ batches: [], upTo: {} }),
    keep: async () => {},
    drop: async () => {},
    forget: async () => {},
  };
  const book = await BatchBook.open(shelf, DAY);
  return sealedSealer(platformParts, ring.get(DAY)!, store, app.parts.journal.state.database, book);
}

test('the phone that handed the day over still gives that it did, and one that looks on gives nothing', async () => {
  const { mixer, boom } = await shared('owner');
  await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
  const { facts } = mixer.store.day.peek();
  expect(facts.at(-1)!.kind).toBe('day-passed-on');
  const giving = await sealerOf(mixer);
  expect(await giving.maySeal(facts)).toEqual(facts);
  expect(await giving.isAdmitted()).toBe(true);
  const { boom: onlooker } = await shared('onlooker');
  expect((await sealerOf(onlooker)).writer).toBeNull();
});

test('what is refused is counted, with the sentence for the last of it', async () => {
  const { mixer } = await shared('writer');
  const sealer = await sealerOf(mixer);
  expect(refusedHere.value).toBeNull();
  expect(sealer.claimed(Uint8Array.of(1, 2, 3))).toBeNull();
  expect(sealer.claimed(new Uint8Array(10_000_000))).toBeNull();
  expect(refusedWords(refusedHere.value!)).toBe(
    '2 messages refused. The last: It is larger than any message of a day.',
  );
  expect(new Set(Object.values(SEALED_SENTENCES)).size).toBe(Object.keys(SEALED_SENTENCES).length);
});

test('a phone that was removed seals nothing more', async () => {
  const { mixer, boom } = await shared('writer');
  await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
  give(mixer.store, boom.store);
  boom.store.run(() => ({ ok: true, value: [take('24', 1, 1)] }));
  const own = boom.store.day.peek().facts.filter(({ id }) => databaseOf(id) === 'phoneb');
  expect(await (await sealerOf(boom)).maySeal(own)).toEqual(own);
  const [member] = (await membersHere(mixer.app, DAY))!.others;
  await putOff(mixer.app, DAY, member!);
  give(mixer.store, boom.store);
  expect(await (await sealerOf(boom)).maySeal(own)).toEqual([]);
});

describe('a removal makes a new key', () => {
  /** The mixer, Jon who stays, and Ines whom the mixer removed. */
  async function afterRemoval() {
    const { mixer, boom } = await shared('writer');
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    const ines = await phone('phonec', 'Ines Roth');
    await readLiveCode(ines.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(ines.app, DAY)));
    const shownBefore = await codeToJoin(mixer.app, DAY, 'writer');
    const leaving = (await membersHere(mixer.app, DAY))!.others.find(({ name }) => name === 'Ines Roth')!;
    expect(await putOff(mixer.app, DAY, leaving)).toEqual({ ok: true, value: { hasNewKey: true } });
    for (const one of [boom, ines]) give(mixer.store, one.store);
    return { mixer, boom, ines, shownBefore };
  }

  test('which whoever stays seals with, and the removed phone does not have', async () => {
    const { mixer, boom, ines } = await afterRemoval();
    const lacks = await Promise.all([mixer, boom, ines].map(async (one) => (await sealerOf(one)).lacksKey()));
    expect(lacks).toEqual([false, false, true]);
    boom.store.run(() => ({ ok: true, value: [take('24', 1, 1)] }));
    const sealer = await sealerOf(boom);
    const own = await sealer.maySeal(boom.store.day.peek().facts);
    expect(keyNumberOf(await sealer.seal(own))).toBe(2);
  });

  test('and what its owner says after the removal is no longer in the batch that the removed phone can open', async () => {
    const { mixer } = await afterRemoval();
    mixer.store.run(() => ({ ok: true, value: [take('24', 1, 1)] }));
    const sealer = await sealerOf(mixer);
    const all = await sealer.maySeal(mixer.store.day.peek().facts);
    const cut = all.findIndex((fact) => sealer.endsBatch(fact));
    expect(all.map(({ kind }) => kind).indexOf('writer-removed')).toBe(cut);
    const numbers = [
      await sealer.seal(all.slice(0, 1)),
      await sealer.seal(all.slice(1, cut + 1)),
      await sealer.seal(all.slice(cut + 1)),
    ].map(keyNumberOf);
    expect(numbers).toEqual([1, 1, 2]);
  });

  test('which is in every join code from then on, beside the first; one shown before lets nobody in', async () => {
    const { mixer, boom, shownBefore } = await afterRemoval();
    expect([...readInvitation(shownBefore)!.secrets.keys()]).toEqual([1]);
    const late = await phone('phoned', 'Late');
    await readLiveCode(late.app, null, shownBefore);
    const USED = { ok: false, problem: { code: 'join-word-used' } };
    expect(await readLiveCode(mixer.app, DAY, await codeToAsk(late.app, DAY))).toEqual(USED);
    for (const shows of [mixer, boom]) {
      const code = await codeToJoin(shows.app, DAY, 'onlooker');
      expect([...readInvitation(code)!.secrets.keys()]).toEqual([1, 2]);
      await readLiveCode(late.app, null, code);
    }
    give(mixer.store, late.store);
    expect(await (await sealerOf(late)).lacksKey()).toBe(false);
  });

  test('which a phone that looks on lacks until it scans a new code', async () => {
    const { mixer, boom } = await shared('onlooker');
    const ines = await phone('phonec', 'Ines Roth');
    await readLiveCode(ines.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(ines.app, DAY)));
    const [leaving] = (await membersHere(mixer.app, DAY))!.others;
    await putOff(mixer.app, DAY, leaving!);
    give(mixer.store, boom.store);
    expect(await (await sealerOf(boom)).lacksKey()).toBe(true);
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'onlooker'));
    expect(await (await sealerOf(boom)).lacksKey()).toBe(false);
    expect(boom.ring.get(DAY)!.key).toBeNull();
  });

  test('which a phone of an older version is not given: it says so, seals nothing, and may ask again', async () => {
    const { mixer, boom } = await shared('writer');
    const { agreement: _, ...older } = boom.ring.get(DAY)!;
    boom.ring.set(DAY, older);
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    const ines = await phone('phonec', 'Ines Roth');
    await readLiveCode(ines.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(ines.app, DAY)));
    const leaving = (await membersHere(mixer.app, DAY))!.others.find(({ name }) => name === 'Ines Roth')!;
    await putOff(mixer.app, DAY, leaving);
    give(mixer.store, boom.store);
    boom.store.run(() => ({ ok: true, value: [take('24', 1, 1)] }));
    const sealer = await sealerOf(boom);
    expect(await sealer.lacksKey()).toBe(true);
    expect(await sealer.maySeal(boom.store.day.peek().facts)).toEqual([]);
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    expect(await membersHere(boom.app, DAY)).toMatchObject({ mayAsk: true });
    expect(await (await sealerOf(boom)).lacksKey()).toBe(false);
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    give(mixer.store, boom.store);
    expect(await membersHere(boom.app, DAY)).toMatchObject({ mayAsk: false });
    expect((await membersHere(mixer.app, DAY))!.others[0]).toMatchObject({ agreement: expect.any(String) });
  });
});

describe('a phone under whose key a copy of it writes', () => {
  /** Jon's phone sealed two batches; a copy of it has used the number of the second. */
  async function copied() {
    const { mixer, boom } = await shared('writer');
    await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
    give(mixer.store, boom.store);
    const shelf = memoryShelf();
    const book = await BatchBook.open(shelf, DAY);
    const sealer = await sealedSealer(platformParts, boom.ring.get(DAY)!, boom.store, 'phoneb', book);
    for (const number of [1, 2]) {
      boom.store.run(() => ({ ok: true, value: [take('24', 1, number)] }));
      const said = boom.store.day.peek().facts.findLast(({ kind }) => kind === 'take-logged')!;
      await sealer.maySeal(boom.store.day.peek().facts);
      book.add(await sealer.seal([said]), [said.id], number === 1 ? 'SAID' : null);
    }
    await book.save();
    return { mixer, boom, shelf };
  }
  const renewed = async ({ app, store }: Awaited<ReturnType<typeof phone>>, shelf: Shelf) =>
    renewKey(platformParts, (await app.parts.live!.engine()).ring, shelf, store, 2, async () => {});

  test('stops writing under it, makes a new one, and says so until the owner lets that in', async () => {
    const { mixer, boom, shelf } = await copied();
    const before = boom.ring.get(DAY)!.key!.writer;
    expect(await renewed(boom, shelf)).toBe(true);
    expect(boom.ring.get(DAY)!.key!.writer).not.toBe(before);
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isRenewed: true, mayAsk: false });
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isRenewed: true, mayAsk: true });
    const request = await asked(mixer, await codeToAsk(boom.app, DAY));
    expect(request.isAgain).toBe(true);
    await letIn(mixer.app, DAY, request);
    give(mixer.store, boom.store);
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isRenewed: false, mayAsk: false });
  });

  test('seals anew what nobody takes any more, and reads the log again', async () => {
    const { boom, shelf } = await copied();
    await renewed(boom, shelf);
    expect([...shelf.batches.values()].map(({ number }) => number)).toEqual([1]);
    expect((await shelf.read(DAY)).upTo).toEqual({});
    const book = await BatchBook.open(shelf, DAY);
    const own = boom.store.day.peek().facts.filter(({ kind }) => kind === 'take-logged');
    expect(own.map(({ id }) => book.covers(id))).toEqual([true, false]);
  });

  test('keeps it where it owns the day: nobody else could let a new one in', async () => {
    const { mixer, shelf } = await copied();
    const before = mixer.ring.get(DAY)!;
    expect(await renewed(mixer, shelf)).toBe(false);
    expect(mixer.ring.get(DAY)).toBe(before);
    expect(shelf.batches.size).toBe(2);
  });
});

test('a day is handed over: the other phone owns it, and the first one reads on', async () => {
  const { mixer, boom } = await shared('owner');
  await letIn(mixer.app, DAY, await asked(mixer, await codeToAsk(boom.app, DAY)));
  give(mixer.store, boom.store);
  expect(await membersHere(boom.app, DAY)).toMatchObject({ isOwner: true, others: [{ role: 'onlooker' }] });
  expect(mixer.store.readsOnly.value).toBe('handed-over');
  expect(boom.store.readsOnly.value).toBeNull();
  expect((await membersHere(mixer.app, DAY))!.isOwner).toBe(false);
});

describe('a code is refused', () => {
  test.each([
    ['of another beginning', 'rollbook-jion'],
    ['without a key', 'rollbook-join day-1 writer'],
    [
      'to write without a word',
      `rollbook-join day-1 writer - ${'0f'.repeat(32)} ${'b7'.repeat(32)} rollbook-live /live phone word`,
    ],
    [
      'with a role that nobody has',
      `rollbook-join day-1 king - ${'0f'.repeat(32)} ${'b7'.repeat(32)} rollbook-live /live phone word`,
    ],
    [
      'that leads to another host',
      `rollbook-join day-1 onlooker - ${'0f'.repeat(32)} ${'b7'.repeat(32)} rollbook-live //elsewhere.example/live phone word`,
    ],
  ])('%s', (_, code) => {
    expect(readInvitation(code)).toBeNull();
  });
});
