import { formatMhz } from '../../app/commands/typed.ts';
import type { Day } from '../../day/model.ts';
import type { Guards } from '../../radio/carrier.ts';
import { spacingBetween } from '../../radio/carrier.ts';
import type { CleanPosition } from '../../radio/clean/clean-positions.ts';
import type { PlanCarrier } from '../../radio/day/day-plan.ts';
import type { NamedHit } from '../../radio/day/named-hits.ts';
import type { Family } from '../../radio/intermodulation/hit.ts';
import { countOf, nameOf } from '../words/chain.ts';

export const FAMILY_NAME: Record<Family, string> = {
  spacing: 'spacing',
  'two-tone-third': '3rd order, two carriers',
  'three-tone-third': '3rd order, three carriers',
  'two-tone-fifth': '5th order, two carriers',
};

export const FAMILY_FORMULA: Record<Family, string> = {
  spacing: 'A beside B',
  'two-tone-third': '2A − B',
  'three-tone-third': 'A + B − C',
  'two-tone-fifth': '3A − 2B',
};

const GUARD_OF: Record<Exclude<Family, 'spacing'>, keyof Guards> = {
  'two-tone-third': 'twoToneThirdKhz',
  'three-tone-third': 'threeToneThirdKhz',
  'two-tone-fifth': 'twoToneFifthKhz',
};

/** The sources of a hit in the order of its formula: `2 × A1 − A2`. */
function formula({ hit, sources }: NamedHit): string {
  const [a = '', b = '', c = ''] = sources.map(({ name }) => name);
  switch (hit.family) {
    case 'spacing':
      return a;
    case 'two-tone-third':
      return `2 × ${a} − ${b}`;
    case 'three-tone-third':
      return `${a} + ${b} − ${c}`;
    case 'two-tone-fifth':
      return `3 × ${a} − 2 × ${b}`;
  }
}

/** What hits, where, and how near: `2 × A1 − A2 falls on 470.900, 50 kHz away; the guard is 100`. */
export function hitWords(named: NamedHit, guards: Guards): string {
  const { hit, sources, victim } = named;
  const away = hit.distanceKhz;
  if (hit.family === 'spacing') {
    const [source] = sources;
    const wanted = spacingBetween(spacingOf(source), spacingOf(victim), guards);
    if (away === 0) return `on the same frequency as ${source?.name}`;
    return `${source?.name} is ${away} kHz away; ${wanted} is the minimum`;
  }
  const guard = guards[GUARD_OF[hit.family]];
  if (away === 0) return `${formula(named)} falls exactly on ${formatMhz(hit.productKhz)}`;
  return `${formula(named)} falls on ${formatMhz(hit.productKhz)}, ${away} kHz away; the minimum is ${guard}`;
}

const spacingOf = (carrier: PlanCarrier | undefined): { spacingKhz?: number } =>
  carrier?.spacingKhz === undefined ? {} : { spacingKhz: carrier.spacingKhz };

/** A carrier with its wearer: `A3 on Ines`. */
export const carrierWords = (day: Day, { name, voice }: PlanCarrier): string =>
  voice ? `${name} on ${nameOf(day, voice)}` : name;

/** How much room a free position has, and what limits it. */
export function roomWords({ marginKhz, limitedBy }: CleanPosition): string {
  if (limitedBy === 'nothing-near') return 'over 1 MHz beyond every minimum';
  const what = limitedBy === 'tv-edge' ? 'spectrum in use' : FAMILY_NAME[limitedBy];
  return marginKhz === 0 ? `exactly at the minimum: ${what}` : `${marginKhz} kHz beyond the minimum: ${what}`;
}

export const hitsWords = (hits: number): string => (hits === 0 ? 'clean' : countOf(hits, 'hit'));

export const rangeWords = (fromKhz: number, toKhz: number): string =>
  `${formatMhz(fromKhz)} to ${formatMhz(toKhz)}`;

/** Guards in one line: `carriers 400 kHz, 2A − B 100, A + B − C 50, 3A − 2B off, edges 200`. */
export function guardsWords(guards: Guards): string {
  const one = (khz: number): string => (khz === 0 ? 'off' : String(khz));
  return [
    `carriers ${one(guards.carrierKhz)} kHz`,
    `2A − B ${one(guards.twoToneThirdKhz)}`,
    `A + B − C ${one(guards.threeToneThirdKhz)}`,
    `3A − 2B ${one(guards.twoToneFifthKhz)}`,
    `edges ${one(guards.tvEdgeKhz)}`,
  ].join(', ');
}
