import { describe, expect, test } from 'vitest';
import { BatchBook } from '../../../src/app/live/book.ts';
import { codeToAsk, codeToJoin, letIn, membersHere, readLiveCode } from '../../../src/app/live/phone-live.ts';
import { platformParts } from '../../../src/app/live/platform-parts.ts';
import { renewKey } from '../../../src/app/live/renew-key.ts';
import { sealedSealer } from '../../../src/app/live/sealed-sealer.ts';
import type { Shelf } from '../../../src/app/shelf.ts';
import { take } from '../../day/say.ts';
import { memoryShelf } from '../../live/live-phone.ts';
import { asked, DAY, give, type phone, shared } from './joined-phones.ts';

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
