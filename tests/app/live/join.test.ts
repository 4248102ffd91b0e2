import { describe, expect, test } from 'vitest';
import type { AppStore } from '../../../src/app/app-store.ts';
import { readInvitation } from '../../../src/app/live/join-codes.ts';
import {
  codeToAsk,
  codeToJoin,
  letIn,
  membersHere,
  putOff,
  readLiveCode,
  spokenHere,
} from '../../../src/app/live/phone-live.ts';
import { refusedHere } from '../../../src/app/live/refusals.ts';
import { databaseOf } from '../../../src/shared/ids.ts';
import { refusedWords, SEALED_SENTENCES } from '../../../src/ui/words/sealed.ts';
import { take } from '../../day/say.ts';
import { asked, DAY, give, phone, sealerOf, shared } from './joined-phones.ts';

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
