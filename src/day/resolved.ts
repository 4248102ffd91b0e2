import type { Fact, FactOf } from '../facts/fact.ts';
import type { FactId } from '../shared/ids.ts';
import { writesOf } from './links.ts';
import type { Write } from './model.ts';

type Resolution = FactOf<'conflict-resolved'>;

/**
 * What facts write of links about which phones differed, once it was said what is true: the true word stands where the
 * first of them stood, and takes from there on are right. Asked for in the order of the line, once for each fact.
 */
export class Resolver {
  readonly #of = new Map<FactId, Map<string, Resolution>>();
  readonly #standing = new Map<FactId, Fact>();
  readonly #begun = new Set<Resolution>();

  /** `resolutions` in the order in which they were said, the last one on a link holding; `known` without what is taken back. */
  constructor(resolutions: readonly Resolution[], known: readonly Fact[], takenBack: ReadonlySet<FactId>) {
    const wanted = new Set(resolutions.map(({ stands }) => stands));
    for (const fact of known) {
      if (wanted.has(fact.id) && !takenBack.has(fact.id)) this.#standing.set(fact.id, fact);
    }
    for (const resolution of resolutions) {
      for (const id of resolution.among) {
        const links = this.#of.get(id) ?? new Map<string, Resolution>();
        this.#of.set(id, links.set(resolution.link, resolution));
      }
    }
  }

  /** What a fact writes; undefined where it writes what it says. */
  writesOf(fact: Fact): readonly Write[] | undefined {
    const links = this.#of.get(fact.id);
    return links && writesOf(fact).flatMap((write) => this.#resolved(write, links.get(write[0])));
  }

  #resolved(write: Write, resolution: Resolution | undefined): Write[] {
    const said = resolution?.stands ? this.#standing.get(resolution.stands) : undefined;
    const held = said && writesOf(said).find(([name]) => name === write[0]);
    if (!resolution || !said || !held) return [write];
    if (this.#begun.has(resolution)) return [];
    this.#begun.add(resolution);
    return [[held[0], held[1], said]];
  }
}
