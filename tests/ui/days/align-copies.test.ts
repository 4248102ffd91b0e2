import { describe, expect, test, vi } from 'vitest';
import { appStore } from '../../../src/app/app-store.ts';
import type { Journal } from '../../../src/app/ports.ts';
import { safekeeping } from '../../../src/app/safekeeping.ts';
import type { Envelope } from '../../../src/facts/kinds/envelope.ts';
import { memoryJournal } from '../../../src/storage/memory-journal.ts';
import { MORNING, speaker, take } from '../../day/say.ts';

/** The modules as a window has them that was just opened. */
async function freshModules() {
  vi.resetModules();
  const { alignCopies } = await import('../../../src/ui/days/align-copies.ts');
  const { route } = await import('../../../src/ui/frame/route.ts');
  const { trouble } = await import('../../../src/ui/kit/messages.ts');
  return { alignCopies, route, trouble };
}

const takesOf = (day: string, count: number): Envelope[] => {
  const phone = speaker();
  for (let number = 1; number <= count; number += 1) phone.say(take('24', 1, number));
  return phone.facts.map((fact) => ({ ...fact, day }));
};

/** A phone whose database has nothing of what its copies hold: each of these days with so many takes. */
function phoneWith(
  copied: Record<string, number>,
  begun: boolean,
  isFull = false,
  damaged: Record<string, number> = {},
) {
  const inner = memoryJournal('phonea');
  const asked: string[] = [];
  const journal: Journal = {
    ...inner,
    state: { database: 'phonea', kept: true, begun },
    append: async (...what) => {
      if (isFull) throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
      return inner.append(...what);
    },
    mend: async (...what) => {
      if (isFull) throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
      return inner.mend(...what);
    },
  };
  const app = appStore({
    journal,
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    newDayId: () => 'new',
    safekeeping: safekeeping(undefined),
  });
  const copies = {
    finishForgetting: async () => {},
    days: async () => Object.keys(copied),
    align: async (day: string) => {
      asked.push(day);
      const stored = new Set((await inner.read(day)).map((fact) => (fact as Envelope).id));
      const whole = takesOf(day, copied[day]!).filter(({ id }) => !stored.has(id));
      return { whole, unchecked: [], damaged: damaged[day] ?? 0 };
    },
  };
  return { app, journal, copies, lookAgain: () => {}, asked };
}

describe('the copies beside the database, after a start', () => {
  test('of a lost database give back the day at the address first, and the rest behind the first screen', async () => {
    const { alignCopies, route, trouble } = await freshModules();
    route.value = { at: 'day', day: 'older', tab: 'now' } as typeof route.value;
    const phone = phoneWith({ newest: 2, older: 3, oldest: 4 }, true);
    await alignCopies(phone, 1);
    expect(phone.asked).toEqual(['older']);
    expect(await phone.journal.read('older')).toHaveLength(3);
    expect(trouble.value?.text).toBe(
      'The browser lost its database and started a new one. Days come back from the second copy, newest first.',
    );
    await alignCopies(phone);
    expect(phone.asked.slice(1)).toEqual(['older', 'newest', 'oldest']);
    expect(phone.app.days.value).toHaveLength(3);
    expect(trouble.value?.text).toBe(
      'The browser lost its database and started a new one. Restored from the second copy: 9 entries of 3 days: all checked one by one.',
    );
  });

  test('say nothing where nothing was missing, the first start of all too', async () => {
    const { alignCopies, route, trouble } = await freshModules();
    route.value = { at: 'days' } as typeof route.value;
    await alignCopies(phoneWith({}, true), 1);
    await alignCopies(phoneWith({}, true));
    await alignCopies(phoneWith({ today: 0 }, false));
    expect(trouble.value).toBe(null);
  });

  test('say what a kill had left in them alone', async () => {
    const { alignCopies, trouble } = await freshModules();
    await alignCopies(phoneWith({ today: 1 }, false));
    expect(trouble.value?.text).toBe(
      '1 entry was in the second copy only, as after a crash, and came back. Look at the last take.',
    );
  });

  test('say what finds no room, and go on with the next day', async () => {
    const { alignCopies, trouble } = await freshModules();
    const phone = phoneWith({ today: 2, yesterday: 1 }, false, true);
    await alignCopies(phone);
    expect(phone.asked).toEqual(['today', 'yesterday']);
    expect(trouble.value?.text).toBe(
      '3 entries are in the second copy only, as after a crash. 3 of them are not saved yet: the phone is full. They are tried again at the next start.',
    );
    // Looked at again, they are still three.
    await alignCopies(phone);
    expect(trouble.value?.text).toMatch(/^3 entries/);
  });

  test('say what was damaged in them, and do not call it checked', async () => {
    const { alignCopies, trouble } = await freshModules();
    await alignCopies(phoneWith({ today: 2 }, true, false, { today: 1 }));
    expect(trouble.value?.text).toBe(
      'The browser lost its database and started a new one. Restored from the second copy: 2 entries of 1 day: all checked one by one. 1 entry was damaged in the copy and could not be restored. Import a day file kept elsewhere: it repairs the day.',
    );
    await alignCopies(phoneWith({ yesterday: 0 }, false, false, { yesterday: 2 }));
    expect(trouble.value?.text).toContain('3 entries were damaged in the copy and could not be restored.');
  });

  test('of a lost database are spoken of once, and when all is back: put away, it stays away meanwhile', async () => {
    const { alignCopies, trouble } = await freshModules();
    const phone = phoneWith({ today: 2, yesterday: 1, before: 1 }, true);
    await alignCopies(phone, 1);
    trouble.value = null;
    await alignCopies(phone, 2);
    expect(await phone.journal.read('yesterday')).toHaveLength(1);
    expect(trouble.value).toBe(null);
  });
});
