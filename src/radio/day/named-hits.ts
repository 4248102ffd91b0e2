import type { Analysis, EdgeHit } from '../intermodulation/analysis.ts';
import type { Hit } from '../intermodulation/hit.ts';
import type { DayPlan, PlanCarrier } from './day-plan.ts';

/** A hit with the carriers it concerns. */
export interface NamedHit {
  readonly hit: Hit;
  readonly sources: readonly PlanCarrier[];
  readonly victim: PlanCarrier;
}

/** Hits on worn packs come first, then nearest first. */
export function namedHits({ hits }: Analysis, plan: DayPlan): NamedHit[] {
  const byId = new Map(plan.all.map((carrier) => [carrier.id, carrier]));
  return hits
    .map((hit) => ({
      hit,
      sources: hit.sourceIds.map((id) => byId.get(id)!),
      victim: byId.get(hit.victimId)!,
    }))
    .sort(
      (a, b) =>
        Number(b.victim.voice !== null) - Number(a.victim.voice !== null) ||
        a.hit.distanceKhz - b.hit.distanceKhz,
    );
}

/** How many hits the plan has, and how many carriers are in or too close to occupied spectrum. */
export function hitCount({ counts, edgeHits }: Analysis): { readonly hits: number; readonly edges: number } {
  return {
    hits: Object.values(counts).reduce((sum, count) => sum + count, 0),
    edges: new Set(edgeHits.map(({ carrierId }: EdgeHit) => carrierId)).size,
  };
}

/** All other carriers, which a search for new frequencies must respect. */
export const carriersWithout = (plan: DayPlan, packs: readonly string[]): DayPlan['carriers'] =>
  plan.carriers.filter(({ id }) => !packs.includes(id));
