import { appStore } from '../../src/app/app-store.ts';
import type { CardStore, Journal } from '../../src/app/ports.ts';
import { safekeeping } from '../../src/app/safekeeping.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING } from '../day/say.ts';

/** A phone that may have no room left. */
export function phone(cards?: CardStore) {
  const inner = memoryJournal('phonea');
  const state = { full: false };
  const journal: Journal = {
    ...inner,
    async append(...what) {
      if (state.full) throw Object.assign(new Error('full'), { name: 'QuotaExceededError' });
      return inner.append(...what);
    },
  };
  let days = 0;
  const app = appStore({
    journal,
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    cards,
    neighbours: { tell: () => {}, listen: () => () => {} },
    newDayId: () => {
      days += 1;
      return `day-${days}`;
    },
    safekeeping: safekeeping(undefined),
  });
  return { app, journal, state };
}
