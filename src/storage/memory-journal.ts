import { type DayOutline, FactIdTwice, type Journal, type NotKept } from '../app/ports.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { isSameFact } from '../facts/stored.ts';

/** A journal that lasts as long as the window: for tests, and for browsers that refuse storage. */
export function memoryJournal(database: string, because: NotKept = 'refused'): Journal {
  const facts = new Map<string, Envelope>();
  const days = new Map<string, DayOutline>();
  const key = (day: string, id: string): string => `${day}\n${id}`;
  return {
    state: { database, kept: false, because },
    days: async () => [...days.values()],
    read: async (day) => [...facts.values()].filter((fact) => fact.day === day),
    async append(said, outline) {
      const differs = (fact: Envelope): boolean => {
        const known = facts.get(key(fact.day, fact.id));
        return known !== undefined && !isSameFact(known, fact);
      };
      const twice = said.find(differs);
      if (twice) throw new FactIdTwice(twice.id);
      for (const fact of said) facts.set(key(fact.day, fact.id), fact);
      days.set(outline.id, outline);
      return 0;
    },
    async mend(whole, outline) {
      for (const fact of whole) facts.set(key(fact.day, fact.id), fact);
      days.set(outline.id, outline);
    },
    async describe(outline) {
      days.set(outline.id, outline);
    },
    async erase(day) {
      for (const [name, fact] of facts) if (fact.day === day) facts.delete(name);
      days.delete(day);
    },
  };
}
