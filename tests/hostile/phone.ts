import { appStore } from '../../src/app/app-store.ts';
import type { Journal } from '../../src/app/ports.ts';
import { safekeeping } from '../../src/app/safekeeping.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { memoryJournal } from '../../src/storage/memory-journal.ts';
import { MORNING } from '../day/say.ts';

/** A phone that holds these facts of one day already, and everything that its journal holds of these days. */
export async function phoneWith(known: readonly Envelope[]) {
  const journal: Journal = memoryJournal('phoneb');
  const [first] = known;
  if (first) {
    await journal.append(known, {
      id: first.day,
      production: 'Harbour Lights',
      label: '',
      date: '',
      sample: false,
      takes: 0,
      facts: known.length,
      lastAt: 0,
    });
  }
  const app = appStore({
    journal,
    clock: { now: () => ({ atMs: MORNING, zone: 120 }) },
    window: 'win01',
    neighbours: { tell: () => {}, listen: () => () => {} },
    newDayId: () => 'day-new',
    safekeeping: safekeeping(undefined),
  });
  const held = async (): Promise<string> => {
    const days = await journal.days();
    const facts = await Promise.all(days.map(({ id }) => journal.read(id)));
    return JSON.stringify([days, facts]);
  };
  return { app, journal, held };
}
