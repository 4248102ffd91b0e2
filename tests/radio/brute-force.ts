import type { Carrier, Guards } from '../../src/radio/carrier.ts';

/** The plainest way to find every hit: each product against each victim. Shares no code with the room it checks. */
export function bruteForce(carriers: readonly Carrier[], guards: Guards, includeOwn = false): string[] {
  const found: string[] = [];
  const on = carriers.filter((carrier) => carrier.transmitting);
  const hit = (family: string, sources: Carrier[], product: number, guard: number): void => {
    for (const victim of carriers) {
      if (!victim.victim || (!includeOwn && sources.includes(victim))) continue;
      const distance = Math.abs(product - victim.khz);
      if (distance < guard)
        found.push(
          line(
            family,
            sources.map(({ id }) => id),
            product,
            victim.id,
            distance,
          ),
        );
    }
  };
  carriers.forEach((a, i) => {
    for (const b of carriers.slice(i + 1)) {
      const distance = Math.abs(a.khz - b.khz);
      const spacing = Math.max(a.spacingKhz ?? guards.carrierKhz, b.spacingKhz ?? guards.carrierKhz);
      if (distance >= spacing) continue;
      if (a.transmitting && b.victim) found.push(line('spacing', [a.id], a.khz, b.id, distance));
      else if (b.transmitting && a.victim) found.push(line('spacing', [b.id], b.khz, a.id, distance));
    }
  });
  for (const a of on)
    for (const b of on) {
      if (a === b) continue;
      hit('two-tone-third', [a, b], 2 * a.khz - b.khz, guards.twoToneThirdKhz);
      hit('two-tone-fifth', [a, b], 3 * a.khz - 2 * b.khz, guards.twoToneFifthKhz);
      if (on.indexOf(a) > on.indexOf(b)) continue;
      for (const c of on)
        if (c !== a && c !== b)
          hit('three-tone-third', [a, b, c], a.khz + b.khz - c.khz, guards.threeToneThirdKhz);
    }
  return found.sort();
}

export const line = (
  family: string,
  sources: readonly string[],
  product: number,
  victim: string,
  distance: number,
): string => `${family} ${sources.join(',')} ${product} on ${victim} by ${distance}`;
