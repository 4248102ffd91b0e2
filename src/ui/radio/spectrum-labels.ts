import type { Analysis } from '../../radio/intermodulation/analysis.ts';

/** Longer names are cut in the picture; the list below it has them whole. */
const MOST_LETTERS = 12;

/** `shortName('Dr Alexandra Brandão')` → `'Dr Alexandr…'` */
export function shortName(name: string): string {
  const letters = [...name];
  if (letters.length <= MOST_LETTERS) return name;
  return `${letters
    .slice(0, MOST_LETTERS - 1)
    .join('')
    .trimEnd()}…`;
}

/**
 * The analysis with carriers named for the picture: pack, whoever wears it, and how often it is hit, as in
 * `A3 Ines ×2`. The number of hits is there because a colour must not say it alone.
 */
export const labelled = (analysis: Analysis, wearerOf: (id: string) => string | undefined): Analysis => ({
  ...analysis,
  carriers: analysis.carriers.map((carrier, at) => {
    const wearer = wearerOf(carrier.id);
    const hits = analysis.hitsOnCarrier[at] ?? 0;
    const name = [
      shortName(carrier.name),
      wearer === undefined ? '' : shortName(wearer),
      hits > 0 ? `×${hits}` : '',
    ]
      .filter((word) => word !== '')
      .join(' ');
    return { ...carrier, name };
  }),
});
