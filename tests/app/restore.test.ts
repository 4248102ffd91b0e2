import { describe, expect, test } from 'vitest';
import { outlineOf } from '../../src/app/day-outline.ts';
import type { DayOutline } from '../../src/app/ports.ts';
import { restoreFacts } from '../../src/app/restore.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { speaker, take } from '../day/say.ts';

/** A journal with the first facts of a day of three takes. */
async function journalWith(known: number) {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { production: 'Harbour', date: '2026-10-07' } });
  for (const number of [1, 2, 3]) phone.say(take('24', 1, number));
  const journal = memoryJournal('phonea');
  const outline: DayOutline = { ...outlineOf(phone.day(), { at: 5, facts: 2 }), takes: 0, facts: known };
  if (known > 0) await journal.append(phone.facts.slice(0, known), outline);
  return { journal, facts: phone.facts };
}

describe('facts that only the copy beside the database has', () => {
  test('are kept, and the list of days tells of them and of the copy that had left the phone', async () => {
    const { journal, facts } = await journalWith(2);
    expect(await restoreFacts(journal, 'day-1', facts.slice(1))).toEqual({ fresh: 2, checked: 2 });
    expect(await journal.read('day-1')).toEqual(facts);
    expect(await journal.days()).toMatchObject([
      { production: 'Harbour', takes: 3, facts: 4, copiedAt: 5, copiedFacts: 2 },
    ]);
  });

  test('bring back a day of which the database has nothing', async () => {
    const { journal, facts } = await journalWith(0);
    expect(await restoreFacts(journal, 'day-1', facts)).toEqual({ fresh: 4, checked: 4 });
    expect(await journal.days()).toMatchObject([{ production: 'Harbour', takes: 3, copiedAt: undefined }]);
  });

  test('change nothing where they are known already', async () => {
    const { journal, facts } = await journalWith(4);
    const before = await journal.days();
    expect(await restoreFacts(journal, 'day-1', facts)).toEqual({ fresh: 0, checked: 0 });
    expect(await journal.days()).toEqual(before);
  });

  test('stay out, all of them, where one contradicts what can be read', async () => {
    const { journal, facts } = await journalWith(3);
    const other = { ...facts[2]!, at: 1 };
    expect(await restoreFacts(journal, 'day-1', [other, facts[3]!])).toEqual({ fresh: 0, checked: 0 });
    expect(await journal.read('day-1')).toEqual(facts.slice(0, 3));
  });

  test('mend what the database says else, where the copy is whole by its check', async () => {
    const { journal, facts } = await journalWith(4);
    const flipped = {
      ...facts[0]!,
      fields: { production: 'Harbor', date: '2026-10-07' },
    } as (typeof facts)[0];
    await journal.mend([flipped], (await journal.days())[0]!);
    expect(await restoreFacts(journal, 'day-1', facts, 'whole')).toEqual({ fresh: 1, checked: 1 });
    expect(new Set(await journal.read('day-1'))).toEqual(new Set(facts));
    expect(await journal.days()).toMatchObject([{ production: 'Harbour', takes: 3, facts: 4 }]);
  });

  test('are unsure where the copy has no check for them, until a whole one says the same', async () => {
    const { journal, facts } = await journalWith(2);
    await restoreFacts(journal, 'day-1', facts.slice(2));
    expect(await journal.days()).toMatchObject([{ unsure: facts.slice(2).map(({ id }) => id) }]);
    const [, , third] = facts;
    const changed = { ...third!, at: third!.at + 1 };
    await journal.mend([changed], (await journal.days())[0]!);
    await restoreFacts(journal, 'day-1', [third!], 'whole');
    expect(await journal.days()).toMatchObject([{ unsure: [facts[3]!.id] }]);
  });

  test('are left out where they cannot be read themselves', async () => {
    const { journal, facts } = await journalWith(3);
    const broken = { ...facts[2]!, id: facts[2]!.id.replace(/.$/, 'z'), fields: 'none' } as (typeof facts)[0];
    expect(await restoreFacts(journal, 'day-1', [broken, facts[3]!])).toEqual({ fresh: 1, checked: 1 });
    expect(await journal.read('day-1')).toEqual(facts);
  });

  test('count as seen only where the journal has them afterwards, as they were said', async () => {
    const { journal, facts } = await journalWith(2);
    const forgetful = { ...journal, append: async () => 0 };
    expect(await restoreFacts(forgetful, 'day-1', facts)).toEqual({ fresh: 2, checked: 0 });
  });
});
