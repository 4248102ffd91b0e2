import { admit } from '../../facts/day-file/admit.ts';
import { isReadable } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import { byId } from '../../facts/merge-facts.ts';
import type { FactId } from '../../shared/ids.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import type { DayStore } from '../day-store.ts';
import { readAll } from '../read-stored.ts';

/** The facts of one day, as what is live reads and adds them. */
export interface DayFacts {
  /** Those that this test does not know, as stored, in order of ids. */
  without(isKnown: (id: FactId) => boolean): Promise<Envelope[]>;
  has(id: FactId): boolean;
  /** Adds what is not here yet, and resolves when it is on the disk. */
  add(facts: readonly Envelope[]): Promise<Result<number>>;
  /** Calls back at every change, whoever made it; returns a function that stops it. */
  listen(onChange: () => void): () => void;
}

export function dayFacts(app: Pick<AppStore, 'heldFacts' | 'parts'>, store: DayStore): DayFacts {
  const { id } = store.day.peek();
  let known: { readonly of: unknown; readonly ids: ReadonlySet<FactId> } | undefined;
  const idsNow = (): ReadonlySet<FactId> => {
    const day = store.day.peek();
    // The fold edits its lists in place, so their length says whether there is more.
    const of = `${day.facts.length} ${day.unknown.length}`;
    if (known?.of !== of) known = { of, ids: new Set([...day.facts, ...day.unknown].map((fact) => fact.id)) };
    return known.ids;
  };
  return {
    async without(isKnown) {
      // The disk is asked only if there is something: it is read whole.
      if ([...idsNow()].every(isKnown)) return [];
      return (await app.heldFacts(id)).filter((fact) => !isKnown(fact.id)).sort(byId);
    },
    has: (fact) => idsNow().has(fact),
    async add(facts) {
      if (!facts.every((fact) => isReadable(fact) && fact.day === id)) return fail({ code: 'codes-damaged' });
      const ids = idsNow();
      const fresh = [...new Map(facts.map((fact) => [fact.id, fact])).values()].filter(
        (fact) => !ids.has(fact.id),
      );
      if (fresh.length > 0) {
        const { facts: here, unknown } = store.day.peek();
        const file = { day: id, title: '', facts: [], warnings: [], stored: fresh };
        const held = { stored: [...here, ...unknown], unsure: new Set<FactId>() };
        const admitted = admit(held, file, app.parts.clock.now().atMs);
        if (!admitted.ok) return admitted;
        store.addForeign(readAll(fresh).facts, fresh);
      }
      await store.flushed();
      return ok(fresh.length);
    },
    listen: (onChange) => {
      let isFirst = true;
      return store.day.subscribe(() => {
        if (!isFirst) onChange();
        isFirst = false;
      });
    },
  };
}
