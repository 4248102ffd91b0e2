import { describe, expect, test } from 'vitest';
import { dayKeysOf, newDaySecret } from '../../../src/exchange/sealed/day-keys.ts';
import { NO_BATCH, sealBatch } from '../../../src/exchange/sealed/seal.ts';
import { newWriterKey } from '../../../src/exchange/sealed/signing.ts';
import type { Fact } from '../../../src/facts/fact.ts';
import { take } from '../../day/say.ts';
import { nodeCrypto, withoutEd25519 } from './crypto.ts';
import { NOON, parts, SealedPhone, sharedDay } from './sealed-phone.ts';

const TAKE = take('24', 1, 1);
const refusal = (code: string) => ({ ok: false, problem: { code } });

/** A day of an owner and two writers who know of each other. */
async function day() {
  const { keys, owner, all } = await sharedDay();
  const [, one, two] = all as [SealedPhone, SealedPhone, SealedPhone];
  await one.exchange(owner);
  await two.exchange(owner);
  return { keys, owner, one, two };
}

/** What the other phone makes of it, and that nothing of it is on any screen. */
async function refused(by: SealedPhone, bytes: Uint8Array, code: string): Promise<void> {
  const before = by.facts.length;
  expect(await by.takeIn(bytes)).toEqual(refusal(code));
  expect(by.facts).toHaveLength(before);
}

describe('a sealed batch', () => {
  test('says nothing of what is in it', async () => {
    const { owner } = await day();
    const { bytes } = await owner.tell({ kind: 'phone-named', name: 'Jon Berg', job: 'Boom operator' });
    const text = Buffer.from(bytes).toString('latin1');
    for (const said of ['Jon', 'phone', 'day-1', owner.database]) expect(text).not.toContain(said);
  });

  test('is opened by whoever has the key of the day, and shows whose it is', async () => {
    const { one, two } = await day();
    const { bytes, writer } = await one.tell(TAKE);
    expect(await two.takeIn(bytes)).toMatchObject({ ok: true, value: { opened: [{ writer, number: 1 }] } });
    expect(two.facts.at(-1)).toEqual(one.facts.at(-1));
    expect((await two.writers()).byName.get(writer)).toMatchObject({ role: 'writer', database: 'phoneb' });
  });

  test('never has the nonce of another, nor its bytes', async () => {
    const { owner, one } = await day();
    const facts = one.facts.slice(0, 1);
    const twice = await Promise.all(
      [1, 2].map(() => sealBatch(parts, owner.keys, owner.key, NO_BATCH, facts, 1)),
    );
    expect(twice[0]!.bytes).not.toEqual(twice[1]!.bytes);
  });

  test('is signed with P-256 where the platform has no Ed25519, and checked all the same', async () => {
    const { owner, all } = await sharedDay({ phones: 2, crypto: withoutEd25519 });
    expect(owner.key.publicKey).toMatch(/^04[0-9a-f]{128}$/);
    await all[1]!.exchange(owner);
    expect(all[1]!.facts).toEqual(owner.facts);
  });

  test('of 32 bytes of Ed25519 is not believed where the platform cannot check it', async () => {
    const { keys, owner, one } = await day();
    const { bytes } = await owner.tell(TAKE);
    const old = { crypto: withoutEd25519, packing: parts.packing };
    const { Intake } = await import('../../../src/exchange/sealed/intake.ts');
    const intake = new Intake(old, {
      ...{ day: 'day-1', keys, firstOwner: owner.key.publicKey, facts: one.facts },
      ...{ ends: new Map(), hashOf: async () => undefined },
    });
    expect(await intake.take(bytes)).toEqual(refusal('sealed-unchecked'));
  });
});

describe('what is not of the day is refused by name, and nothing of it is kept', () => {
  test('another key of the day', async () => {
    const { owner, one, two } = await day();
    const other = await dayKeysOf(nodeCrypto, newDaySecret(nodeCrypto));
    const mixed = { name: owner.keys.name, sealing: other.sealing };
    one.say(TAKE, NOON);
    const { bytes } = await sealBatch(parts, mixed, one.key, NO_BATCH, one.facts.slice(-1), 1);
    await refused(two, bytes, 'sealed-wrong-key');
  });

  test('another day’s batch', async () => {
    const { one, two } = await day();
    one.say(TAKE, NOON);
    const other = await dayKeysOf(nodeCrypto, newDaySecret(nodeCrypto));
    const { bytes } = await sealBatch(parts, other, one.key, NO_BATCH, one.facts.slice(-1), 1);
    await refused(two, bytes, 'sealed-other-day');
  });

  test('a batch of this day that holds entries of another', async () => {
    const { owner, one } = await day();
    const strange = { ...owner.facts[0]!, day: 'day-2' } as Fact;
    await refused(one, (await owner.seal([strange])).bytes, 'sealed-garbage');
  });

  test('a replay', async () => {
    const { owner, one } = await day();
    const { bytes } = await owner.tell(TAKE);
    await one.takeIn(bytes);
    await refused(one, bytes, 'sealed-replayed');
  });

  test('a replay of one further back', async () => {
    const { owner, one } = await day();
    const first = await owner.tell(TAKE);
    const second = await owner.tell(TAKE);
    await one.takeIn(first.bytes);
    await one.takeIn(second.bytes);
    await refused(one, first.bytes, 'sealed-replayed');
  });

  test('one that is cut, wherever it is cut', async () => {
    const { owner, one } = await day();
    const { bytes } = await owner.tell(TAKE);
    for (let length = 1; length < bytes.length; length += 7)
      await refused(one, bytes.slice(0, length), 'sealed-cut');
    await refused(one, Uint8Array.of(...bytes, 0), 'sealed-garbage');
  });

  test('one with any bit changed', async () => {
    const { owner, one } = await day();
    const { bytes } = await owner.tell(TAKE);
    const before = one.facts.length;
    for (let at = 0; at < bytes.length; at += 1) {
      const changed = bytes.slice();
      changed[at]! ^= 1 << (at % 8);
      const taken = await one.takeIn(changed);
      if (taken.ok) expect(taken.value).toHaveProperty('waits');
    }
    expect(one.facts).toHaveLength(before);
    expect(await one.takeIn(bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
  });

  test('one by a key that nobody admitted waits, and is never opened', async () => {
    const { keys, owner, all } = await sharedDay({ phones: 3, admitted: 2 });
    const [, one, stranger] = all as [SealedPhone, SealedPhone, SealedPhone];
    await one.exchange(owner);
    const { bytes } = await stranger.tell(TAKE);
    const before = one.facts.length;
    expect(await one.takeIn(bytes)).toMatchObject({ ok: true, value: { because: 'sealed-foreign' } });
    await owner.tell(TAKE);
    await one.exchange(owner);
    expect(one.facts).toHaveLength(before + 1);
    expect(keys.name).toMatch(/^[0-9a-f]{32}$/);
  });

  test('one that is signed by another than it names', async () => {
    const { keys, owner, one, two } = await day();
    const thief = await newWriterKey(nodeCrypto);
    const { bytes } = await sealBatch(
      parts,
      keys,
      { ...thief, writer: owner.key.writer },
      owner.end,
      [two.say(TAKE, NOON)],
      1,
    );
    await refused(one, bytes, 'sealed-forged');
  });

  test('a reader that writes: it has the key of the day and is admitted to read', async () => {
    const { owner, all } = await sharedDay({ phones: 3, admitted: 2 });
    const [, one, reader] = all as [SealedPhone, SealedPhone, SealedPhone];
    await owner.admit(reader, 'onlooker');
    await one.exchange(owner);
    await reader.exchange(owner);
    await refused(one, (await reader.tell(TAKE)).bytes, 'sealed-by-onlooker');
  });

  test('a phone that was put off the day, while what it said before counts', async () => {
    const { owner, one, two } = await day();
    const before = await one.tell(TAKE);
    await owner.takeIn(before.bytes);
    const seenLate = await one.tell(take('24', 1, 2));
    await owner.remove(one);
    await two.exchange(owner);
    await refused(two, seenLate.bytes, 'sealed-by-removed');
    expect(two.facts).toContainEqual(one.facts.at(-2));
    expect(await owner.takeIn(seenLate.bytes)).toEqual(refusal('sealed-by-removed'));
  });

  test('a writer that lets others in, or puts them off', async () => {
    const { owner, one, two } = await day();
    const stranger = new SealedPhone(3, owner.keys, await newWriterKey(nodeCrypto), owner.key.publicKey);
    await refused(two, (await one.admit(stranger)).bytes, 'sealed-not-its-own');
    const { two: third, one: again } = await day();
    await refused(third, (await again.remove(third)).bytes, 'sealed-not-its-own');
  });

  test('a writer that speaks for another phone', async () => {
    const { one, two } = await day();
    const words = { ...one.say(TAKE, NOON), id: '0000zz-phonec00000' } as Fact;
    await refused(two, (await one.seal([words])).bytes, 'sealed-not-its-own');
  });

  test('the number of another batch with other bytes: a phone that was cloned', async () => {
    const { keys, one, two } = await day();
    const end = one.end;
    await two.takeIn((await one.tell(TAKE)).bytes);
    const other = await sealBatch(parts, keys, one.key, end, [one.say(take('24', 1, 7), NOON)], 1);
    await refused(two, other.bytes, 'sealed-number-twice');
  });

  test('a batch that follows another past', async () => {
    const { keys, one, two } = await day();
    await two.takeIn((await one.tell(TAKE)).bytes);
    const end = { number: 1, hash: 'ab'.repeat(32) };
    const other = await sealBatch(parts, keys, one.key, end, [one.say(TAKE, NOON)], 1);
    await refused(two, other.bytes, 'sealed-past-changed');
  });

  test('garbage, nothing, a newer form, and 10 MB', async () => {
    const { one } = await day();
    await refused(one, new TextEncoder().encode('{"rollbook":"day-file"}'), 'sealed-garbage');
    await refused(one, new Uint8Array(), 'sealed-garbage');
    await refused(one, Uint8Array.of(3, 3, 4), 'sealed-newer');
    await refused(one, new Uint8Array(10_000_000).fill(1), 'sealed-too-large');
  });

  test('text that swells when it is unpacked', async () => {
    const { owner, one } = await day();
    const fact = { ...owner.facts[0]!, kind: 'newer-kind', text: 'x'.repeat(5_000_000) } as unknown as Fact;
    const { bytes } = await owner.seal([fact]);
    expect(bytes.length).toBeLessThan(20_000);
    await refused(one, bytes, 'sealed-garbage');
  });

  test('a flood by a stranger: so much waits, and no more', async () => {
    const { owner, all } = await sharedDay({ phones: 3, admitted: 2 });
    const [, one, stranger] = all as [SealedPhone, SealedPhone, SealedPhone];
    await one.exchange(owner);
    const { bytes } = await stranger.tell(TAKE);
    const large = new Uint8Array(900_000);
    large.set(bytes.subarray(0, 69));
    new DataView(large.buffer).setUint32(69, large.length - 149);
    const answers: unknown[] = [];
    for (let count = 0; count < 10; count += 1) {
      large[100] = count;
      answers.push(await one.takeIn(large.slice()));
    }
    expect(answers[7]).toMatchObject({ ok: true, value: { because: 'sealed-foreign' } });
    expect(answers[9]).toEqual(refusal('sealed-too-many'));
    expect(await one.takeIn((await owner.tell(TAKE)).bytes)).toMatchObject({ value: { opened: [{}] } });
  });
});

describe('order', () => {
  test('a writer’s batches are opened in the order of their numbers, however they come', async () => {
    const { one, two } = await day();
    const sent = [await one.tell(TAKE), await one.tell(take('24', 1, 2)), await one.tell(take('24', 1, 3))];
    expect(await two.takeIn(sent[2]!.bytes)).toMatchObject({ value: { because: 'sealed-out-of-order' } });
    expect(await two.takeIn(sent[1]!.bytes)).toMatchObject({ value: { because: 'sealed-out-of-order' } });
    expect(await two.takeIn(sent[0]!.bytes)).toMatchObject({
      value: { opened: [{ number: 1 }, { number: 2 }, { number: 3 }] },
    });
  });

  test('what a phone said before its admission was heard is opened when it is', async () => {
    const { owner, all } = await sharedDay();
    const [, one, two] = all as [SealedPhone, SealedPhone, SealedPhone];
    await one.tell(TAKE);
    await two.exchange(one);
    expect(two.facts).toHaveLength(0);
    await two.exchange(owner);
    expect(two.facts).toContainEqual(one.facts[0]);
  });

  test('a second signature under the same P-256 batch is the same batch', async () => {
    const { owner, all } = await sharedDay({ phones: 2, crypto: withoutEd25519 });
    const one = all[1]!;
    await one.exchange(owner);
    const { bytes } = await owner.tell(TAKE);
    await one.takeIn(bytes);
    const order = 0xffffffff00000000ffffffffffffffffbce6faada7179e84f3b9cac2fc632551n;
    const half = BigInt(`0x${Buffer.from(bytes.subarray(-32)).toString('hex')}`);
    const other = bytes.slice();
    other.set(Buffer.from((order - half).toString(16).padStart(64, '0'), 'hex'), bytes.length - 32);
    expect(other).not.toEqual(bytes);
    await refused(one, other, 'sealed-replayed');
  });

  test('the day is handed over: the new owner admits, and the old one only reads', async () => {
    const { owner, one, two } = await day();
    await owner.passOnTo(one);
    for (const phone of [one, two]) await phone.exchange(owner);
    const fourth = new SealedPhone(3, owner.keys, await newWriterKey(nodeCrypto), owner.key.publicKey);
    await two.takeIn((await one.admit(fourth)).bytes);
    expect((await two.writers()).owner.writer).toBe(one.key.writer);
    await two.takeIn((await fourth.tell(TAKE)).bytes);
    expect(two.facts.at(-1)).toEqual(fourth.facts.at(-1));
    await refused(two, (await owner.tell(TAKE)).bytes, 'sealed-by-onlooker');
    // A phone that comes later hears all of it in one go.
    const late = new SealedPhone(3, owner.keys, await newWriterKey(nodeCrypto), owner.key.publicKey);
    await late.exchange(two);
    expect(late.facts.map(({ id }) => id).sort()).toEqual(two.facts.map(({ id }) => id).sort());
  });
});
