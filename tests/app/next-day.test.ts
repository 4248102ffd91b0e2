import { describe, expect, test } from 'vitest';
import { isInDoubt } from '../../src/app/in-doubt.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { inDoubtWords } from '../../src/ui/words/in-doubt.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { phone } from './one-phone.ts';

const say = (number: number) => () => ({ ok: true as const, value: [take('24', 1, number)] });

describe('tomorrow from today', () => {
  const head = { kind: 'day-described' as const, fields: { production: 'Salt Road', label: 'Day 3 of 40' } };

  test('is one day after a double tap, and after a second tap on the same day', async () => {
    const { app, journal } = phone();
    const today = await app.start(() => ({ ok: true, value: [head] }));
    if (!today.ok) throw new Error('not started');
    const both = await Promise.all([app.startFrom(today.value), app.startFrom(today.value)]);
    const later = await app.startFrom(today.value);
    expect(new Set([...both, later].map((one) => one.ok && one.value)).size).toBe(1);
    expect((await journal.days()).map(({ label }) => label).sort()).toEqual(['Day 3 of 40', 'Day 4 of 40']);
  });

  test('is another one where either day has gone on since', async () => {
    const { app } = phone();
    const today = await app.start(() => ({ ok: true, value: [head] }));
    if (!today.ok) throw new Error('not started');
    const first = await app.startFrom(today.value);
    (await app.open(today.value)).run(say(1));
    const second = await app.startFrom(today.value);
    expect(second).not.toEqual(first);
    if (second.ok) (await app.open(second.value)).run(say(1));
    expect(await app.startFrom(today.value)).not.toEqual(second);
  });

  test('is made anew where it was erased', async () => {
    const { app } = phone();
    const today = await app.start(() => ({ ok: true, value: [head] }));
    if (!today.ok) throw new Error('not started');
    const first = await app.startFrom(today.value);
    if (first.ok) await app.erase(first.value);
    const second = await app.startFrom(today.value);
    expect(second).toMatchObject({ ok: true });
    expect(second).not.toEqual(first);
  });
});

const HEAD: Draft = { kind: 'day-described', fields: { production: 'Salt Road', label: 'Day 3' } };

async function dayWith(...drafts: Draft[]) {
  const { app, journal, state } = phone();
  const today = await app.start(() => ({ ok: true, value: [HEAD, ...drafts] }));
  if (!today.ok) throw new Error('not started');
  const store = await app.open(today.value);
  await store.flushed();
  /** Facts of a colleague who knew of nothing here. */
  const arrive = (...said: Draft[]): void => {
    const facts = speaker('phoneb')
      .say(...said)
      .map((fact) => ({ ...fact, day: today.value }));
    store.addForeign(facts, facts);
  };
  const rigged = async (day: string) =>
    (await app.open(day)).day.value.rig.transmitters.map(({ name }) => name);
  return { app, journal, state, today: today.value, store, arrive, rigged };
}

/** What is asked before the next day is started; fails where it starts without a question. */
async function asked({ app, today }: Awaited<ReturnType<typeof dayWith>>): Promise<string[]> {
  const result = await app.startFrom(today);
  if (result.ok || !isInDoubt(result.problem)) throw new Error('nothing was asked');
  return inDoubtWords(result.problem);
}

describe('what is in doubt before the next day', () => {
  test('has what the phone holds unsaved', async () => {
    const { app, state, store, today, rigged } = await dayWith(...SMALL_RIG);
    state.full = true;
    store.run(() => ({
      ok: true,
      value: [{ kind: 'part-described', part: 'A4', fields: { type: 'transmitter', name: 'A4' } }],
    }));
    await expect.poll(() => store.saving.value.state).toBe('not-saved');
    const next = await app.startFrom(today);
    expect(next.ok && (await rigged(next.value))).toEqual(['A1', 'A2', 'A3', 'A4']);
  });

  test('a torn entry is told, and the next day is there only when that is accepted', async () => {
    const day = await dayWith(...SMALL_RIG);
    const { app, journal, today, rigged } = day;
    const [whole] = speaker('phonec').say(HEAD);
    const torn = { ...whole, day: today, kind: 'part-described', part: 7 };
    await journal.append([torn as never], day.store.outline());
    await day.store.refresh();
    expect(await asked(day)).toEqual(['1 entry of this day cannot be read. What it says is missing.']);
    expect((await journal.days()).length).toBe(1);
    const next = await app.startFrom(today, { evenInDoubt: true });
    expect(next.ok && (await rigged(next.value))).toEqual(['A1', 'A2', 'A3']);
    expect(await app.rigFrom(today)).toMatchObject({ ok: false, problem: { damaged: 1 } });
    expect(await app.rigFrom(today, { evenInDoubt: true })).toMatchObject({ ok: true });
  });

  test('an entry of a newer version is told', async () => {
    const day = await dayWith();
    const [whole] = speaker('phonec').say(HEAD);
    const newer = { ...whole, day: day.today, kind: 'from-next-year' };
    await day.journal.append([newer as never], day.store.outline());
    await day.store.refresh();
    expect(await asked(day)).toEqual([
      '1 entry of this day came from a newer version of the app. What it says is missing.',
    ]);
  });

  test('what phones differ in is named with the answer that goes along, and that one goes along', async () => {
    const day = await dayWith(...SMALL_RIG, ...SMALL_CAST);
    day.arrive({ kind: 'channels-tuned', tunings: [{ channel: 'near1', transmitter: 'A3' }] });
    day.arrive({ kind: 'part-described', part: 'A2', fields: { name: 'A9' } });
    const words = await asked(day);
    expect(words).toHaveLength(2);
    for (const text of words) expect(text).toMatch(/^Two phones differ.*, or .*\. The first carries over\.$/);
    const stands = day.store.day.value.tail.get('tuned:near1')?.value;
    const next = await day.app.startFrom(day.today, { evenInDoubt: true });
    if (!next.ok) throw new Error('not started');
    const tomorrow = (await day.app.open(next.value)).day.value;
    expect(tomorrow.tail.get('tuned:near1')?.value).toBe(stands);
    expect(await day.rigged(next.value)).toEqual(await day.rigged(day.today));
  });

  test('what phones differ in that does not go along is no question', async () => {
    const day = await dayWith(...SMALL_RIG, ...SMALL_CAST, {
      kind: 'transmitter-worn',
      transmitter: 'A1',
      voice: 'ines',
    });
    day.arrive({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
    day.arrive({ kind: 'day-described', fields: { remarks: 'Wind' } });
    expect(await day.app.startFrom(day.today)).toMatchObject({ ok: true });
  });
});
