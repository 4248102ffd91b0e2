/** A pack, and who wears it; `only`: it is pinned to somebody and goes on nobody else. */
export interface AheadPack {
  readonly id: string;
  readonly wornBy?: string;
  readonly only?: string;
}

/** How often packs must go onto somebody over several setups. */
export interface FewestFits {
  /** A way is known with so many. */
  readonly fits: number;
  /** Proven: there is none with fewer. */
  readonly bound: number;
}

/** States looked at before the exact count is given up for a bound: a count and no time, so the answer is the same. */
const MOST_STATES = 20_000;

/**
 * The fewest times that packs go onto somebody so that everybody in each setup wears one, setup by setup. Packs
 * that are all alike: taking those needed again last is best, so the count is exact. With pins every way is tried
 * while there are few; beyond that the count without pins is a bound. A setup never has more people than packs.
 */
export function fewestFits(packs: readonly AheadPack[], setups: readonly ReadonlySet<string>[]): FewestFits {
  const alike = fitsByFarthest(
    packs.map(({ id, wornBy }) => ({ id, ...(wornBy !== undefined && { wornBy }) })),
    setups,
  );
  if (packs.every(({ only }) => only === undefined)) return { fits: alike, bound: alike };
  const exact = fitsByTrying(packs, setups);
  if (exact !== null) return { fits: exact, bound: exact };
  return { fits: fitsByFarthest(packs, setups), bound: alike };
}

/** The setup from `from` on in which somebody is needed next. */
function nextNeed(voice: string | undefined, setups: readonly ReadonlySet<string>[], from: number): number {
  if (voice === undefined) return Number.POSITIVE_INFINITY;
  const at = setups.findIndex((setup, index) => index >= from && setup.has(voice));
  return at < 0 ? Number.MAX_SAFE_INTEGER : at;
}

/** Whoever needs a pack takes a free one, or that of whoever is needed again last. */
function fitsByFarthest(packs: readonly AheadPack[], setups: readonly ReadonlySet<string>[]): number {
  const worn = new Map(packs.map((pack) => [pack.id, pack.wornBy]));
  let fits = 0;
  for (const [at, setup] of setups.entries()) {
    const wearing = new Set(worn.values());
    for (const voice of setup) {
      if (wearing.has(voice)) continue;
      const [best] = packs
        .filter(({ id, only }) => (only ?? voice) === voice && !setup.has(worn.get(id) ?? ''))
        .sort(
          (a, b) =>
            Number(b.only === voice) - Number(a.only === voice) ||
            nextNeed(worn.get(b.id), setups, at) - nextNeed(worn.get(a.id), setups, at),
        );
      if (!best) continue;
      worn.set(best.id, voice);
      fits += 1;
    }
  }
  return fits;
}

/** Every way, setup by setup, as states of who wears what; null if there are too many. */
function fitsByTrying(packs: readonly AheadPack[], setups: readonly ReadonlySet<string>[]): number | null {
  let states = new Map<string, { worn: readonly (string | undefined)[]; fits: number }>();
  states.set('', { worn: packs.map(({ wornBy }) => wornBy), fits: 0 });
  for (const [at, setup] of setups.entries()) {
    const later = setups.slice(at + 1);
    const next = new Map<string, { worn: readonly (string | undefined)[]; fits: number }>();
    let most = 0;
    for (const { worn, fits } of states.values()) {
      for (const reached of waysInto(packs, worn, setup)) {
        const all = fits + reached.fits;
        // Who is needed by none of the setups to come is as good as nobody.
        const kept = reached.worn.map((voice) =>
          later.some((one) => voice !== undefined && one.has(voice)) ? voice : undefined,
        );
        const name = kept.map((voice) => voice ?? '').join('\n');
        if (all < (next.get(name)?.fits ?? Number.POSITIVE_INFINITY))
          next.set(name, { worn: kept, fits: all });
        most += 1;
        if (most > MOST_STATES) return null;
      }
    }
    states = next;
  }
  const [first = null, ...others] = [...states.values()].map(({ fits }) => fits);
  return first === null ? null : Math.min(first, ...others);
}

/** Every way to give all of a setup a pack from where they stand; those who wear one keep it or change. */
function* waysInto(
  packs: readonly AheadPack[],
  worn: readonly (string | undefined)[],
  setup: ReadonlySet<string>,
): Generator<{ worn: readonly (string | undefined)[]; fits: number }> {
  const missing = [...setup].filter((voice) => !worn.includes(voice));
  const place = function* (
    at: number,
    now: readonly (string | undefined)[],
    fits: number,
  ): Generator<{ worn: readonly (string | undefined)[]; fits: number }> {
    const voice = missing[at];
    if (voice === undefined) {
      yield { worn: now, fits };
      return;
    }
    for (const [index, { only }] of packs.entries()) {
      if ((only ?? voice) !== voice || setup.has(now[index] ?? '')) continue;
      yield* place(at + 1, now.with(index, voice), fits + 1);
    }
  };
  yield* place(0, worn, 0);
}
