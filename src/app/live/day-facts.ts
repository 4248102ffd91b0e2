import { admit } from '../../facts/day-file/admit.ts';
import { isReadable } from '../../facts/fact.ts';
import type { Envelope } from '../../facts/kinds/envelope.ts';
import { byId } from '../../facts/merge-facts.ts';
import { isSameFact } from '../../facts/stored.ts';
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
  /** Adds what is not here yet, and resolves when it is on the disk. What is here under the same id stays. */
  add(facts: readonly Envelope[]): Promise<Result<Added>>;
  /** Calls back at every change, whoever made it; returns a function that stops it. */
  listen(onChange: () => void): () => void;
}

export interface Added {
  readonly count: number;
  /** Entries that are here under the same id with other content. */
  readonly twice: readonly FactId[];
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
  const otherThanHere = async (known: readonly Envelope[]): Promise<FactId[]> => {
    // The disk is asked only if there is something: it is read whole.
    if (known.length === 0) return [];
    const here = new Map((await app.heldFacts(id)).map((fact) => [fact.id, fact]));
    const isOther = (fact: Envelope): boolean => {
      const own = here.get(fact.id);
      return own !== undefined && !isSameFact(own, fact);
    };
    return known.filter(isOther).map((fact) => fact.id);
  };
  return {
    async without(isKnown) {
      if ([...idsNow()].every(isKnown)) return [];
      return (await app.heldFacts(id)).filter((fact) => !isKnown(fact.id)).sort(byId);
    },
    has: (fact) => idsNow().has(fact),
    async add(facts) {
      if (!facts.every((fact) => isReadable(fact) && fact.day === id)) return fail({ code: 'codes-damaged' });
      const ids = idsNow();
      const twice = await otherThanHere(facts.filter((fact) => ids.has(fact.id)));
      const coming = new Map<FactId, Envelope>();
      for (const fact of facts) {
        const first = coming.get(fact.id);
        if (first && !isSameFact(first, fact)) twice.push(fact.id);
        if (!first && !ids.has(fact.id)) coming.set(fact.id, fact);
      }
      const fresh = [...coming.values()];
      if (fresh.length > 0) {
        const { facts: here, unknown } = store.day.peek();
        const file = { day: id, title: '', facts: [], warnings: [], stored: fresh };
        const held = { stored: [...here, ...unknown], unsure: new Set<FactId>() };
        const admitted = admit(held, file, app.parts.clock.now().atMs);
        if (!admitted.ok) return admitted;
        store.addForeign(readAll(fresh).facts, fresh);
      }
      await store.flushed();
      return ok({ count: fresh.length, twice });
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
