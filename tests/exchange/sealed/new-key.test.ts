import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { newAgreementKey, openedBy, sealedTo } from '../../../src/exchange/sealed/agreement.ts';
import { bytesOfHex, hexOf } from '../../../src/exchange/sealed/bytes.ts';
import { newestKey, withKey } from '../../../src/exchange/sealed/day-keys.ts';
import { openSealed, type SealedBatch, sealBatch } from '../../../src/exchange/sealed/seal.ts';
import { takeApart } from '../../../src/exchange/sealed/sealed-bytes.ts';
import type { Draft, FactOf } from '../../../src/facts/fact.ts';
import { MOST_KEYS } from '../../../src/facts/kinds/writer-admitted.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { databaseOf } from '../../../src/shared/ids.ts';
import { take } from '../../day/say.ts';
import { ORDERS_OF_THREE } from '../../day/three-phones.ts';
import { nodeCrypto, withoutEd25519 } from './crypto.ts';
import { DAY, NOON, parts, SealedPhone, sharedDay } from './sealed-phone.ts';

const SECRET = bytesOfHex('5e'.repeat(32));
const keyNumberOf = ({ bytes }: Pick<SealedBatch, 'bytes'>): number => {
  const read = takeApart(bytes);
  if (!read.ok) throw new Error(read.problem.code);
  return read.value.keyNumber;
};

describe('what is sealed to one phone', () => {
  // RFC 7748, section 6.1: Bob's private key (in PKCS 8, RFC 8410), Alice's public one, and what they agree on.
  test('is agreed on as RFC 7748 says', async () => {
    const bob =
      '302e020100300506032b656e042204205dab087e624a8a4b79e17f8b83800ee66f3bb1292618b6fd1c2f8b27ff88e0eb';
    const alice = '8520f0098930a754748b7ddcb43ef75a0dbf3a0d26381af4eba4a98eaa9b4e6a';
    const { subtle } = crypto;
    const own = await subtle.importKey('pkcs8', bytesOfHex(bob), 'X25519', false, ['deriveBits']);
    const other = await subtle.importKey('raw', bytesOfHex(alice), 'X25519', true, []);
    const shared = await subtle.deriveBits({ name: 'X25519', public: other }, own, 256);
    expect(hexOf(new Uint8Array(shared))).toBe(
      '4a5d9d5ba4ce2de1728e3bf480350f25e07e21c947d19e3376f09b3c1e161742',
    );
  });

  test.each([
    ['X25519', nodeCrypto, 64],
    ['P-256 where the platform has no X25519', withoutEd25519, 130],
  ])('by %s is opened by that phone alone, and only for what it was meant for', async (_, crypto, digits) => {
    const [own, other] = [await newAgreementKey(crypto), await newAgreementKey(crypto)];
    expect(own.publicKey).toHaveLength(digits);
    const box = (await sealedTo(crypto, own.publicKey, 'key 2', SECRET))!;
    expect(await openedBy(crypto, own, 'key 2', box)).toEqual(SECRET);
    expect(await openedBy(crypto, own, 'key 3', box)).toBeNull();
    expect(await openedBy(crypto, other, 'key 2', box)).toBeNull();
    for (const at of [3, digits + 1, box.length - 1]) {
      const digit = box[at] === '0' ? '1' : '0';
      expect(await openedBy(crypto, own, 'key 2', box.slice(0, at) + digit + box.slice(at + 1))).toBeNull();
    }
    expect(await openedBy(crypto, own, 'key 2', box.slice(0, 10))).toBeNull();
  });

  test('is another every time, and is not made where the platform does not know the kind', async () => {
    const own = await newAgreementKey(nodeCrypto);
    const twice = await Promise.all([1, 2].map(() => sealedTo(nodeCrypto, own.publicKey, 'key 2', SECRET)));
    expect(twice[0]).not.toBe(twice[1]);
    expect(await sealedTo(withoutEd25519, own.publicKey, 'key 2', SECRET)).toBeNull();
  });

  test('to a key that agrees on nothing is not made', async () => {
    expect(await sealedTo(nodeCrypto, '00'.repeat(32), 'key 2', SECRET)).toBeNull();
  });
});

/** An owner and two writers who know of each other; the owner then removes the first. */
async function afterRemoval(how: Parameters<typeof sharedDay>[0] = {}) {
  const { owner, all } = await sharedDay(how);
  const [, removed, stays] = all as [SealedPhone, SealedPhone, SealedPhone];
  for (const phone of [removed, stays]) await phone.exchange(owner);
  const before = await stays.tell(take('24', 1, 1));
  for (const phone of [owner, removed]) await phone.takeIn(before.bytes);
  const removal = await owner.remove(removed);
  return { owner, removed, stays, before, removal };
}

/** Every key that a phone has, or finds in what was given to whomever, is tried on a batch. */
async function couldRead(phone: SealedPhone, batch: SealedBatch): Promise<boolean> {
  const read = takeApart(batch.bytes);
  if (!read.ok) throw new Error(read.problem.code);
  let keys = await phone.keysNow();
  let found = MOST_KEYS;
  for (const { number, boxes } of (await phone.writers()).newKeys)
    for (const [writer, box] of Object.entries(boxes)) {
      const about = `key ${number} of ${keys.name} to ${writer}`;
      const secret = await openedBy(nodeCrypto, phone.agreement!, about, box);
      found += 1;
      if (secret) keys = await withKey(nodeCrypto, keys, found, secret);
    }
  for (const number of [1, ...(keys.later ?? []).map((key) => key.number)]) {
    const opened = await openSealed(parts, keys, DAY, { ...read.value, keyNumber: number });
    if (opened.ok) return true;
  }
  return false;
}

describe('after a removal', () => {
  test('what follows is sealed with a new key, which whoever stays was given', async () => {
    const { owner, stays, removal, before } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    const said = await stays.tell(take('24', 1, 2));
    expect(await owner.takeIn(said.bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
    const answer = await owner.tell(take('24', 1, 3));
    expect(await stays.takeIn(answer.bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
    expect([before, removal, said, answer].map(keyNumberOf)).toEqual([1, 1, 2, 2]);
    const [one, other] = [await owner.keysNow(), await stays.keysNow()];
    expect(one.later![0]!.secret).toEqual(other.later![0]!.secret);
  });

  test('it is given by P-256 to phones whose platform has no X25519', async () => {
    const { owner, removed, stays, removal } = await afterRemoval({ crypto: withoutEd25519 });
    for (const phone of [removed, stays]) await phone.takeIn(removal.bytes);
    const said = await owner.tell(take('24', 1, 2));
    expect(await stays.takeIn(said.bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
    expect(await couldRead(removed, said)).toBe(false);
  });

  test('servers call the day what they called it before', async () => {
    const { owner, stays, removal } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    const said = await owner.tell(take('24', 1, 2));
    const read = takeApart(said.bytes);
    expect(read).toMatchObject({ ok: true, value: { day: owner.keys.name } });
    expect((await stays.keysNow()).name).toBe(owner.keys.name);
  });

  test('the removed phone reads nothing of it, with everything that it has, and what was before as before', async () => {
    const { owner, removed, stays, removal, before } = await afterRemoval();
    for (const phone of [stays, removed]) await phone.takeIn(removal.bytes);
    const said = [await owner.tell(take('24', 1, 2)), await stays.tell(take('24', 1, 3))];
    const had = removed.facts.length;
    for (const batch of said) {
      expect(await removed.takeIn(batch.bytes)).toMatchObject({
        ok: true,
        value: { because: 'sealed-key-missing' },
      });
      expect(await couldRead(removed, batch)).toBe(false);
    }
    expect(removed.facts).toHaveLength(had);
    expect(await couldRead(removed, before)).toBe(true);
    expect(await couldRead(stays, said[0]!)).toBe(true);
  });

  test('the new key is the day’s for whoever is removed next, too', async () => {
    const { owner, removed, stays, removal } = await afterRemoval({ phones: 4 });
    await stays.takeIn(removal.bytes);
    const second = await owner.remove(stays);
    expect(keyNumberOf(second)).toBe(2);
    const third = await owner.tell(take('24', 1, 2));
    expect(keyNumberOf(third)).toBe(3);
    for (const phone of [removed, stays]) {
      await phone.takeIn(second.bytes);
      await phone.takeIn(third.bytes);
      expect(await couldRead(phone, third)).toBe(false);
    }
  });

  test('a batch that comes before the removal does waits for it', async () => {
    const { owner, all } = await sharedDay({ phones: 4 });
    const [, removed, one, other] = all as [SealedPhone, SealedPhone, SealedPhone, SealedPhone];
    for (const phone of [removed, one, other]) await phone.exchange(owner);
    const removal = await owner.remove(removed);
    await one.takeIn(removal.bytes);
    const said = await one.tell(take('24', 1, 2));
    expect(await other.takeIn(said.bytes)).toMatchObject({
      ok: true,
      value: { because: 'sealed-key-missing' },
    });
    expect(await other.takeIn(removal.bytes)).toMatchObject({ value: { opened: [{}, {}] } });
    expect(other.facts).toContainEqual(one.facts.at(-1));
  });

  test('the number of the key is bound to the batch', async () => {
    const { owner, stays, removal } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    const { bytes } = await owner.tell(take('24', 1, 2));
    const before = stays.facts.length;
    for (let at = 0; at < bytes.length; at += 1) {
      const changed = bytes.slice();
      changed[at]! ^= 1 << (at % 8);
      const taken = await stays.takeIn(changed);
      if (taken.ok) expect(taken.value).toHaveProperty('waits');
    }
    expect(stays.facts).toHaveLength(before);
    expect(await stays.takeIn(bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
    const first = Uint8Array.of(2, 0, 1, ...bytes.subarray(3));
    expect(await stays.takeIn(first)).toEqual({ ok: false, problem: { code: 'sealed-garbage' } });
  });

  test('what the removed phone seals with the old key counts nowhere', async () => {
    const { owner, removed, stays, removal } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    const late = await removed.tell(take('25', 1, 1));
    for (const phone of [owner, stays])
      expect(await phone.takeIn(late.bytes)).toEqual({ ok: false, problem: { code: 'sealed-by-removed' } });
  });

  test('a key that the owner did not give is none', async () => {
    const { owner, removed, stays, removal } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    const forged = await stays.remove(owner);
    expect(await owner.takeIn(forged.bytes)).toEqual({ ok: false, problem: { code: 'sealed-not-its-own' } });
    expect((await owner.writers()).keyNumber).toBe(2);
    // The signature is over the boxes: with others it is not the owner’s word.
    const said = owner.facts.at(-1) as FactOf<'writer-removed'>;
    const boxes = { [removed.key.writer]: Object.values(said.newKey!.boxes)[0]! };
    const other = new SealedPhone(3, owner.keys, stays.key, owner.key.publicKey, stays.agreement);
    await other.exchange(owner, (all) => all.filter(({ bytes }) => bytes !== removal.bytes));
    const changed = { ...said, newKey: { number: 2, boxes } };
    const end = other.endOf(owner.key.writer);
    const { bytes } = await sealBatch(parts, owner.keys, owner.key, end, [changed], 1);
    expect(await other.takeIn(bytes)).toEqual({ ok: false, problem: { code: 'sealed-not-its-own' } });
  });

  test('a key whose number is not the next is none, and the removal counts', async () => {
    const { owner, stays } = await afterRemoval();
    const { writer } = stays.key;
    const newKey = { number: 7, boxes: { [owner.key.writer]: '0a'.repeat(80) } };
    await owner.state({ kind: 'writer-removed', writer, database: 'phonec', counted: 1, upTo: 9, newKey });
    const { keyNumber, byName } = await owner.writers();
    expect([keyNumber, byName.get(writer)!.role]).toEqual([2, 'removed']);
  });

  test('a phone that was let in before phones could be given keys is given none, and joins again for it', async () => {
    const { owner, all } = await sharedDay({ phones: 3, isOld: true });
    const [, removed, old] = all as [SealedPhone, SealedPhone, SealedPhone];
    const now = new SealedPhone(
      0,
      owner.keys,
      owner.key,
      owner.key.publicKey,
      await newAgreementKey(nodeCrypto),
    );
    await now.exchange(owner);
    for (const phone of [removed, old]) await phone.exchange(now);
    const removal = await now.remove(removed);
    await old.takeIn(removal.bytes);
    const said = await now.tell(take('24', 1, 2));
    expect(await old.takeIn(said.bytes)).toMatchObject({
      ok: true,
      value: { because: 'sealed-key-missing' },
    });
    expect(newestKey(await old.keysNow())).toBe(1);
    const { secret } = (await now.keysNow()).later![0]!;
    const keys = await withKey(nodeCrypto, old.keys, 2, new Uint8Array(secret));
    const again = new SealedPhone(2, keys, old.key, owner.key.publicKey, await newAgreementKey(nodeCrypto));
    await again.exchange(now);
    expect(again.facts).toContainEqual(now.facts.at(-1));
  });

  test('a day handed over: the new owner gives the next key, and the one before reads on', async () => {
    const { owner, removed, stays, removal } = await afterRemoval();
    await stays.takeIn(removal.bytes);
    await stays.takeIn((await owner.passOnTo(stays)).bytes);
    const again = await stays.admit(removed);
    await owner.takeIn(again.bytes);
    const second = await stays.remove(removed);
    await owner.takeIn(second.bytes);
    const said = await stays.tell(take('24', 1, 2));
    expect(keyNumberOf(said)).toBe(3);
    expect(await owner.takeIn(said.bytes)).toMatchObject({ ok: true, value: { opened: [{}] } });
  });
});

const reportOfPhone = ({ facts }: SealedPhone): string => reportText(reportOf(foldDay(DAY, facts), []));

/** The same in another order, which the seed decides. */
function shuffled<T>(all: readonly T[], seed: number): T[] {
  const left = [...all];
  let state = seed + 1;
  return all.map(() => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return left.splice(state % left.length, 1)[0]!;
  });
}

type Step =
  | { readonly deed: 'say'; readonly who: number; readonly number: number }
  | { readonly deed: 'meet'; readonly who: number; readonly with: number; readonly seed: number };

describe('a removal on one island while others write', () => {
  const who = fc.integer({ min: 0, max: 3 });
  const steps: fc.Arbitrary<Step[]> = fc.array(
    fc.oneof(
      fc.record({ deed: fc.constant('say' as const), who, number: fc.integer({ min: 1, max: 6 }) }),
      fc.record({ deed: fc.constant('meet' as const), who, with: who, seed: fc.nat() }),
    ),
    { minLength: 2, maxLength: 14 },
  );

  test('all who stay come to one day, and the removed one reads nothing sealed after the removal was heard', async () => {
    await fc.assert(
      fc.asyncProperty(
        steps,
        fc.nat({ max: 100 }),
        fc.constantFrom(...ORDERS_OF_THREE),
        fc.nat(),
        async (told, when, order, seed) => {
          const { owner, all } = await sharedDay({ phones: 4 });
          for (const phone of all.slice(1)) await phone.exchange(owner);
          const removed = all[3]!;
          const hasHeard = (phone: SealedPhone) => phone.facts.some(({ kind }) => kind === 'writer-removed');
          const after: SealedBatch[] = [];
          const at = when % told.length;
          for (const [nth, step] of told.entries()) {
            if (nth === at) await owner.remove(removed);
            const phone = all[step.who]!;
            if (step.deed === 'meet')
              await phone.exchange(all[step.with]!, (batches) => shuffled(batches, step.seed));
            else {
              const batch = await phone.tell(take('24', 1, step.number) as Draft, NOON + nth * 60_000);
              if (hasHeard(phone) && phone !== removed) after.push(batch);
            }
          }
          // To and fro until nobody lacks anything, beginning with whichever.
          const stay = [owner, all[1]!, all[2]!];
          for (let round = 0; round < 2; round += 1)
            for (const reader of order)
              for (const giver of order)
                if (reader !== giver)
                  await stay[reader]!.exchange(stay[giver]!, (batches) => shuffled(batches, seed));
          await removed.exchange(owner, (batches) => shuffled(batches, seed));
          // What one of them had of the removed phone and the owner had not counts on none.
          const [first, ...others] = stay.map(({ facts }) => foldDay(DAY, facts).takeOrder);
          for (const other of others) expect(other).toEqual(first);
          expect(new Set(stay.map(reportOfPhone)).size).toBe(1);
          for (const batch of after) expect(await couldRead(removed, batch)).toBe(false);
          const said = stay[0]!.facts.filter(({ id }) => databaseOf(id) !== removed.database).length;
          const read = removed.facts.filter(({ id }) => databaseOf(id) !== removed.database).length;
          expect(read).toBe(said - after.length);
        },
      ),
      { numRuns: 25 },
    );
  });
});
