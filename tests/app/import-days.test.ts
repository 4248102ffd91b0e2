import { describe, expect, test } from 'vitest';
import { type DayImport, importDays } from '../../src/app/import/import-days.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { speaker, take } from '../day/say.ts';
import { phone } from './one-phone.ts';

function dayOf(takes: number): readonly Envelope[] {
  const one = speaker('phoneb');
  for (let number = 1; number <= takes; number += 1) one.say(take('24', 1, number));
  return one.facts;
}
const textOf = (facts: readonly Envelope[]): string => writeDayFile('day-1', 'Harbour Lights', facts);
const fileOf = (text: string, name = 'day.txt'): File => new File([text], name);

async function brought(result: ReturnType<typeof importDays>): Promise<DayImport> {
  const days = await result;
  if (!days.ok) throw new Error(days.problem.code);
  return days.value;
}

describe('the door for day files', () => {
  test('shows what a file would change, and changes it only when it is imported', async () => {
    const { app, journal } = phone();
    const days = await brought(importDays(app, { how: 'opened', files: [fileOf(textOf(dayOf(3)))] }));
    expect(await days.preview()).toMatchObject([{ day: 'day-1', isNew: true, fresh: 3 }]);
    expect(await journal.read('day-1')).toEqual([]);
    expect(await days.importAll()).toMatchObject({
      ok: true,
      value: { days: ['day-1'], fresh: 3, verified: 3 },
    });
    expect(await journal.read('day-1')).toHaveLength(3);
  });

  test('takes a pasted text for a file, and says why it cannot be one', async () => {
    const { app } = phone();
    const days = await brought(importDays(app, { how: 'pasted', text: textOf(dayOf(2)) }));
    expect(days.reads).toMatchObject([{ file: { day: 'day-1' } }]);
    expect(await importDays(app, { how: 'pasted', text: 'Dear all' })).toMatchObject({ ok: false });
  });

  test('fails where nothing can be read, but tells of each of several that were chosen', async () => {
    const { app } = phone();
    const unread = [fileOf('Dear all', 'one.txt'), fileOf('Dear all', 'two.txt')];
    const days = await brought(importDays(app, { how: 'chosen', files: unread }));
    expect(days.reads.map(({ name, damage }) => [name, damage !== undefined])).toEqual([
      ['one.txt', true],
      ['two.txt', true],
    ]);
    expect(await importDays(app, { how: 'chosen', files: unread.slice(1) })).toMatchObject({ ok: false });
    expect(await importDays(app, { how: 'opened', files: unread })).toMatchObject({ ok: false });
  });

  test('does not read a file that is larger than any day', async () => {
    const { app } = phone();
    const huge = Object.defineProperty(fileOf(textOf(dayOf(1))), 'size', { value: 65 * 1024 * 1024 });
    expect(await importDays(app, { how: 'chosen', files: [huge] })).toMatchObject({
      problem: { code: 'day-file-too-large' },
    });
  });

  test('only what was shared waits, and can be thrown away', async () => {
    const { app } = phone();
    const files = [fileOf(textOf(dayOf(1)))];
    expect((await brought(importDays(app, { how: 'shared', files }))).discard).toBeDefined();
    expect((await brought(importDays(app, { how: 'opened', files }))).discard).toBeUndefined();
  });

  test('a file that contradicts the phone stays out until it is said which holds', async () => {
    const { app } = phone();
    const facts = dayOf(2);
    await (await brought(importDays(app, { how: 'chosen', files: [fileOf(textOf(facts))] }))).importAll();
    const other = facts.map((fact, at) => (at === 0 ? { ...fact, at: fact.at - 60_000 } : fact));
    const days = await brought(importDays(app, { how: 'chosen', files: [fileOf(textOf(other))] }));
    expect(await days.preview()).toMatchObject([{ disputes: [{ here: { id: facts[0]!.id } }] }]);
    expect(await days.importAll()).toMatchObject({ ok: false });
    expect(await days.importAll('file')).toMatchObject({ ok: true, value: { fresh: 1 } });
  });
});
