import { beforeEach, describe, expect, test } from 'vitest';
import { loadSampleFile } from '../../../sample-days/load.ts';
import { takeUpArrival } from '../../../src/app/import/arrivals.ts';
import { importDays } from '../../../src/app/import/import-days.ts';
import type { Offer } from '../../../src/app/key-ring.ts';
import {
  codeToAsk,
  codeToJoin,
  letIn,
  membersHere,
  putOff,
  readLiveCode,
  spokenHere,
} from '../../../src/app/live/phone-live.ts';
import { sealedFile } from '../../../src/app/sealed/sealed-giving.ts';
import { readSealedText, sealedText } from '../../../src/app/sealed/sealed-text.ts';
import { take } from '../../day/say.ts';
import {
  asOnPage,
  byCodes,
  DAY,
  factsOf,
  filmed,
  offered,
  type SharedPhone,
  say,
  sharedPhone,
} from './shared-phone.ts';

beforeEach(asOnPage);

const idsOf = async (phone: SharedPhone) => (await factsOf(phone)).map(({ id }) => id).sort();

/** Each reads the other's codes off its screen: to join, to ask, to be let in, and then the day. */
async function joins(owner: SharedPhone, phone: SharedPhone, offer: Offer): Promise<void> {
  const read = await readLiveCode(phone.app, null, await codeToJoin(owner.app, DAY, offer));
  expect(read).toEqual({ ok: true, value: { did: 'joined', day: DAY, offer, isLive: false } });
  if (offer !== 'onlooker') {
    const asked = await readLiveCode(owner.app, DAY, await codeToAsk(phone.app, DAY));
    if (!asked?.ok || asked.value.did !== 'asked') throw new Error(JSON.stringify(asked));
    expect(asked.value.request.spoken).toBe(await spokenHere(phone.app, DAY));
    expect((await letIn(owner.app, DAY, asked.value.request)).ok).toBe(true);
  }
  await byCodes(owner, phone);
}

async function mixerAnd(offer: Offer) {
  const mixer = sharedPhone('phonea', 'Mira Holm');
  const boom = sharedPhone('phoneb', 'Jon Berg');
  await say(mixer, take('24', 1, 1), take('24', 1, 2));
  await joins(mixer, boom, offer);
  expect(await idsOf(boom)).toEqual(await idsOf(mixer));
  return { mixer, boom };
}
const memberOf = async (phone: SharedPhone, name: string) =>
  (await membersHere(phone.app, DAY))!.others.find((one) => one.name === name)!;

describe('a phone joins by camera alone', () => {
  test('to write: what it says then counts on the owner’s phone, and the other way', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    await say(boom, take('24', 1, 3));
    await byCodes(boom, mixer);
    expect(await idsOf(mixer)).toEqual(await idsOf(boom));
    await say(mixer, take('24', 1, 4));
    await byCodes(mixer, boom);
    expect(await idsOf(mixer)).toEqual(await idsOf(boom));
    expect((await memberOf(mixer, 'Jon Berg')).role).toBe('writer');
    expect(await byCodes(mixer, boom)).toBeNull();
  });

  test('to look on: it reads the day, and what it would say is given to nobody', async () => {
    const { boom } = await mixerAnd('onlooker');
    expect((await boom.app.open(DAY)).readsOnly.value).toBe('looks-on');
    expect(boom.ring.get(DAY)!.key).toBeNull();
    // It hands on what it read.
    const third = sharedPhone('phonec', 'Ines Roth');
    await readLiveCode(third.app, null, await codeToJoin(boom.app, DAY, 'onlooker'));
    await byCodes(boom, third);
    expect(await idsOf(third)).toEqual(await idsOf(boom));
  });

  test('to take the day over: it lets others in, and the phone before reads on', async () => {
    const { mixer, boom } = await mixerAnd('owner');
    expect(await membersHere(boom.app, DAY)).toMatchObject({ isOwner: true });
    expect((await mixer.app.open(DAY)).readsOnly.value).toBe('handed-over');
    const third = sharedPhone('phonec', 'Ines Roth');
    await joins(boom, third, 'writer');
    await byCodes(boom, mixer);
    expect((await memberOf(mixer, 'Ines Roth')).role).toBe('writer');
  });
});

describe('codes of a shared day are sealed and checked', () => {
  test('a phone that never joined reads nothing of them', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const offer = await offered(mixer, sharedPhone('phonec', 'Nobody'));
    expect(offer).toMatchObject({ isSealed: true });
    const stranger = sharedPhone('phonec', 'Nobody');
    await (await filmed(offer)).finish();
    expect(await takeUpArrival(stranger.app)).toEqual({
      kind: 'nothing',
      problem: { code: 'sealed-not-joined' },
    });
    expect(await factsOf(boom)).not.toHaveLength(0);
  });

  test('what a removed phone says later counts nowhere, and it reads nothing of what follows', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const ines = sharedPhone('phonec', 'Ines Roth');
    await joins(mixer, ines, 'writer');
    await putOff(mixer.app, DAY, await memberOf(mixer, 'Jon Berg'));
    await say(boom, take('25', 1, 1));
    await say(mixer, take('24', 1, 3));
    const before = await idsOf(ines);
    // It does not know yet that it was removed, and gives what it said.
    const read = await byCodes(boom, ines);
    expect((await idsOf(ines)).length).toBeGreaterThan(before.length);
    expect(read!.reads[0]!.sealed!.refused).toEqual([]);
    await byCodes(mixer, ines);
    const { takeOrder } = (await ines.app.open(DAY)).day.peek();
    expect(takeOrder).toEqual((await mixer.app.open(DAY)).day.peek().takeOrder);
    // Once a phone knows of the removal, it refuses more.
    await say(boom, take('25', 1, 2));
    await (await filmed(await offered(boom, ines))).finish();
    expect(await takeUpArrival(ines.app)).toMatchObject({ problem: { code: 'sealed-nothing' } });
    await say(ines, take('24', 1, 4));
    // Everything that the others show is read by the removed phone: the removal, and nothing after it.
    await byCodes(ines, boom);
    expect((await boom.app.open(DAY)).readsOnly.value).toBe('removed');
    const last = (await factsOf(mixer)).findLast(({ kind }) => kind === 'take-logged')!;
    expect(await idsOf(boom)).not.toContain(last.id);
  });

  test('a removal that nobody signed is believed of no sealed code, and a day file is said to be unchecked', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const { writer, database } = await memberOf(mixer, 'Jon Berg');
    const forged = {
      ...{ kind: 'writer-removed' as const, writer, database, counted: 0, upTo: 0, number: 9 },
      ...{ owner: writer, signature: 'a9'.repeat(64) },
    };
    await say(boom, forged);
    const before = await idsOf(mixer);
    const offer = await offered(boom, mixer);
    await (await filmed(offer)).finish();
    expect(await takeUpArrival(mixer.app)).toMatchObject({ problem: { code: 'sealed-nothing' } });
    expect(await idsOf(mixer)).toEqual(before);
    const text = await boom.app.dayFile(DAY);
    const plain = await importDays(mixer.app, { how: 'pasted', text });
    if (!plain.ok) throw new Error(plain.problem.code);
    expect(await plain.value.preview()).toMatchObject([{ saysWhoWrites: true }]);
  });

  test('garbage, 10 MB of it, and a file that was cut', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    for (const text of [
      'rollbook-sealed\nAAAA',
      'rollbook-sealed\n%%%',
      `rollbook-sealed\n${'AQEB'.repeat(2_500_000)}`,
    ]) {
      const read = await importDays(mixer.app, { how: 'pasted', text });
      expect(read).toMatchObject({ ok: false, problem: { code: 'sealed-nothing' } });
    }
    await say(boom, take('24', 1, 3));
    const file = await sealedFile(boom.app, DAY);
    if (!file?.ok) throw new Error('no file');
    expect(file.value).not.toContain('Jon');
    const lines = file.value.split('\n');
    const cut = lines.slice(0, lines.length - 3).join('\n');
    const read = await importDays(mixer.app, { how: 'pasted', text: cut });
    // What is whole before the cut is here already.
    if (!read.ok) throw new Error(read.problem.code);
    expect(await read.value.preview()).toMatchObject([{ fresh: 0 }]);
    const whole = await importDays(mixer.app, { how: 'pasted', text: file.value });
    if (!whole.ok) throw new Error(whole.problem.code);
    expect(await whole.value.preview()).toMatchObject([{ fresh: 2, saysWhoWrites: false }]);
    expect((await whole.value.importAll()).ok).toBe(true);
    expect(await idsOf(mixer)).toEqual(await idsOf(boom));
  });

  test('a batch of another day among those of this one', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const other = sharedPhone('phonex', 'Other');
    await say(other, take('9', 1, 1));
    await codeToJoin(other.app, DAY, 'onlooker');
    await say(boom, take('24', 1, 3));
    const [theirs, ours] = [await sealedFile(other.app, DAY), await sealedFile(boom.app, DAY)];
    if (!theirs?.ok || !ours?.ok) throw new Error('no file');
    const { day, batches } = readSealedText(ours.value)!;
    const mixed = sealedText({ day, batches: [...readSealedText(theirs.value)!.batches, ...batches] });
    const read = await importDays(mixer.app, { how: 'pasted', text: mixed });
    if (!read.ok) throw new Error(read.problem.code);
    expect(read.value.reads[0]!.sealed!.refused).toEqual(['sealed-other-day']);
    expect((await read.value.importAll()).ok).toBe(true);
    expect(await idsOf(mixer)).toEqual(await idsOf(boom));
  });

  test('what a phone may not seal is left out, and it is said why', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const ines = sharedPhone('phonec', 'Ines Roth');
    await readLiveCode(ines.app, null, await codeToJoin(mixer.app, DAY, 'writer'));
    await byCodes(mixer, ines);
    await say(ines, take('24', 1, 3));
    expect(await offered(ines, boom)).toMatchObject({ entries: 0, leavesOut: 'not-admitted' });
    await joins(mixer, ines, 'writer');
    expect(await offered(ines, boom)).toMatchObject({ leavesOut: undefined });
    // A phone of an older version is given no key.
    const { agreement: _, ...older } = ines.ring.get(DAY)!;
    ines.ring.set(DAY, older);
    await putOff(mixer.app, DAY, await memberOf(mixer, 'Jon Berg'));
    await byCodes(mixer, ines);
    expect(await offered(ines, boom)).toMatchObject({ leavesOut: 'lacks-key' });
  });

  test('what one phone sealed goes on through another, sealed by the one who said it', async () => {
    const { mixer, boom } = await mixerAnd('writer');
    const ines = sharedPhone('phonec', 'Ines Roth');
    await joins(mixer, ines, 'writer');
    await say(boom, take('24', 1, 3));
    await byCodes(boom, mixer);
    await byCodes(mixer, ines);
    expect(await idsOf(ines)).toEqual(await idsOf(mixer));
    const writers = new Set([...ines.shelf.batches.values()].map(({ writer }) => writer));
    expect(writers.size).toBe(2);
  });
});

/** Pictures shown a second. */
const A_SECOND = 8;

describe('with every third picture lost, at 8 a second', () => {
  test('a shared day of 75 takes is over whole in less than 15 s, and 20 actions more in two codes and 3 s', async () => {
    const mixer = sharedPhone('phonea', 'Mira Holm');
    const boom = sharedPhone('phoneb', 'Jon Berg');
    const { stored } = loadSampleFile('full');
    expect(stored.filter(({ kind }) => kind === 'take-logged').length).toBeGreaterThanOrEqual(75);
    await say(
      mixer,
      ...stored.map(({ id: _, day: __, at: ___, zone: ____, batch: _____, ...draft }) => draft as never),
    );
    await readLiveCode(boom.app, null, await codeToJoin(mixer.app, DAY, 'onlooker'));
    const whole = await filmed(await offered(mixer, boom));
    expect(whole.pictures / A_SECOND).toBeLessThan(15);
    await whole.finish();
    const arrival = await takeUpArrival(boom.app);
    if (arrival.kind !== 'day-files') throw new Error(arrival.kind);
    await arrival.days.importAll();
    expect(await idsOf(boom)).toEqual(await idsOf(mixer));
    for (let number = 1; number <= 20; number += 1) await say(mixer, take('99', 1, number));
    const offer = await offered(mixer, boom);
    expect(offer.entries).toBe(20);
    expect(offer.series!.count).toBeLessThanOrEqual(2);
    expect((await filmed(offer)).pictures / A_SECOND).toBeLessThan(3);
  });
});
