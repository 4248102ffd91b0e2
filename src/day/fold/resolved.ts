import type { Fact, FactOf } from '../../facts/fact.ts';
import type { FactId } from '../../shared/ids.ts';
import { writesOf } from '../chain/links.ts';
import { saidOfLink } from '../chain/said-of-link.ts';
import type { Write } from '../model.ts';

type Resolution = FactOf<'conflict-resolved'>;

/**
 * What facts write of links about which phones differed, once it was said what is true: the true word stands where the
 * first of them stood, with all that goes with it (a lead with its socket, a pack with who had it), and takes from there
 * on are right. The others say nothing of it. Asked for in the order of the line, once for each fact.
 */
export class Resolver {
  readonly #of = new Map<FactId, Resolution[]>();
  readonly #stands = new Map<FactId, Fact>();
  readonly #begun = new Set<Resolution>();

  /** `resolutions` in the order in which they were said, the last one on a link holding; `known` are all facts. */
  constructor(resolutions: readonly Resolution[], known: readonly Fact[], takenBack: ReadonlySet<FactId>) {
    const wanted = new Set(resolutions.map(({ stands }) => stands));
    for (const fact of known) {
      if (wanted.has(fact.id) && !takenBack.has(fact.id)) this.#stands.set(fact.id, fact);
    }
    for (const resolution of resolutions) {
      // Without the true word, or where all of them happened, every word stands as it was said.
      for (const id of resolution.among) {
        const others = (this.#of.get(id) ?? []).filter(({ link }) => link !== resolution.link);
        const decides = resolution.stands !== null && this.#stands.has(resolution.stands);
        this.#of.set(id, decides ? [...others, resolution] : others);
      }
    }
  }

  /** What a fact writes, `names` being the links before it; undefined where it writes what it says. */
  writesOf(fact: Fact, names: Iterable<string>): readonly Write[] | undefined {
    const resolutions = this.#of.get(fact.id) ?? [];
    if (resolutions.length === 0) return undefined;
    const silent = new Set(resolutions.flatMap(({ link }) => writesWith(fact, link).map(([name]) => name)));
    const own = writesOf(fact, names).filter(([name]) => !silent.has(name));
    return [...own, ...resolutions.flatMap((resolution) => this.#begin(resolution))];
  }

  /** The true word, at the first of the words that it was among. */
  #begin(resolution: Resolution): Write[] {
    if (this.#begun.has(resolution)) return [];
    this.#begun.add(resolution);
    const said = this.#stands.get(resolution.stands!)!;
    return writesWith(said, resolution.link).map(([name, value]) => [name, value, said]);
  }
}

/** All that a fact writes by what it says of one link. */
function writesWith(fact: Fact, link: string): readonly Write[] {
  const saying = saidOfLink(fact, link);
  return saying ? writesOf({ ...fact, ...saying } as Fact, [link]) : [];
}
