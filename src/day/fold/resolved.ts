import type { Fact, FactOf } from '../../facts/fact.ts';
import type { FactId } from '../../shared/ids.ts';
import { writesOf } from '../chain/links.ts';
import { saidOfLink } from '../chain/said-of-link.ts';
import type { Write } from '../model.ts';

type Resolution = FactOf<'conflict-resolved'>;

/**
 * What facts write to links once a conflict between phones is resolved: the chosen value replaces the first
 * of the conflicting ones, with all that belongs to it (a lead's socket, who had a pack), so takes from there
 * on are right. The others no longer write this link. Call in line order, once per fact.
 */
export class Resolver {
  readonly #of = new Map<FactId, Resolution[]>();
  readonly #stands = new Map<FactId, Fact>();
  readonly #begun = new Set<Resolution>();

  /** `resolutions` in recorded order, the last one on a link wins; `known` are all facts. */
  constructor(resolutions: readonly Resolution[], known: readonly Fact[], takenBack: ReadonlySet<FactId>) {
    const wanted = new Set(resolutions.map(({ stands }) => stands));
    for (const fact of known) {
      if (wanted.has(fact.id) && !takenBack.has(fact.id)) this.#stands.set(fact.id, fact);
    }
    for (const resolution of resolutions) {
      // Without a chosen value, or if all of them happened, every fact counts as recorded.
      for (const id of resolution.among) {
        const others = (this.#of.get(id) ?? []).filter(({ link }) => link !== resolution.link);
        const decides = resolution.stands !== null && this.#stands.has(resolution.stands);
        this.#of.set(id, decides ? [...others, resolution] : others);
      }
    }
  }

  /** What a fact writes, with `names` the keys before it; undefined if it writes its own content. */
  writesOf(fact: Fact, names: Iterable<string>): readonly Write[] | undefined {
    const resolutions = this.#of.get(fact.id) ?? [];
    if (resolutions.length === 0) return undefined;
    const silent = new Set(resolutions.flatMap(({ link }) => writesWith(fact, link).map(([name]) => name)));
    const own = writesOf(fact, names).filter(([name]) => !silent.has(name));
    return [...own, ...resolutions.flatMap((resolution) => this.#begin(resolution))];
  }

  /** The chosen value, at the first of the facts it was chosen from. */
  #begin(resolution: Resolution): Write[] {
    if (this.#begun.has(resolution)) return [];
    this.#begun.add(resolution);
    const said = this.#stands.get(resolution.stands!)!;
    return writesWith(said, resolution.link).map(([name, value]) => [name, value, said]);
  }
}

/** All that a fact writes along with one link. */
function writesWith(fact: Fact, link: string): readonly Write[] {
  const saying = saidOfLink(fact, link);
  return saying ? writesOf({ ...fact, ...saying } as Fact, [link]) : [];
}
