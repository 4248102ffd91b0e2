import { describe, expect, test } from 'vitest';
import { readInvitation } from '../../../src/app/live/join-codes.ts';
import {
  codeToAsk,
  codeToJoin,
  letIn,
  membersHere,
  putOff,
  readLiveCode,
} from '../../../src/app/live/phone-live.ts';
import { takeApart } from '../../../src/exchange/sealed/sealed-bytes.ts';
import { take } from '../../day/say.ts';
import { asked, DAY, give, phone, sealerOf, shared } from './joined-phones.ts';

const keyNumberOf = ({ bytes }: { readonly bytes: Uint8Array }): number => {
  const read = takeApart(bytes);
  if (!read.ok) throw new Error(read.problem.code);
  return read.value.keyNumber;
};

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
    expect(await membersHere(boom.app, DAY)).toMatchObject({ lacksKey: true });
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'onlooker'));
    expect(await (await sealerOf(boom)).lacksKey()).toBe(false);
    expect(await membersHere(boom.app, DAY)).toMatchObject({ lacksKey: false });
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
