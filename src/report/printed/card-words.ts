import type { CardLine } from '../card-line.ts';
import { isolated } from '../isolated.ts';
import { counted } from './figures.ts';

/** A colleague wants to know which; a card of another day would name them all. */
const MOST_NAMES = 12;

/**
 * The card check in one line: `'checked at 18:02 against 72 files: 71 takes with a file, 1 without (24B/3); 2
 * differences as logged, 5 as on the card, 0 open'`. An earlier version's as it was printed then.
 */
export function cardText(card: CardLine): string {
  const { takes, files, open } = card;
  if (!takes) return `checked against ${counted(files, 'file')}, ${open} open`;
  const found = [
    `${counted(takes.matched, 'take')} with a file`,
    `${card.without.length} without${named(card.without)}`,
    ...(card.unsure.length > 0 ? [`${card.unsure.length} with several that fit${named(card.unsure)}`] : []),
    ...(takes.unlogged > 0 ? [`${counted(takes.unlogged, 'recording')} without a take`] : []),
  ];
  return [
    `checked at ${timeOf(card)} against ${counted(files, 'file')}${takes.stopped ? ', stopped before the last' : ''}: ${found.join(', ')}`,
    `${counted(takes.asLogged, 'difference')} as logged, ${takes.asOnCard} as on the card, ${open} open`,
    ...card.has.map(
      ({ name, takes: count, only }) =>
        `${isolated(name)} ${counted(count, 'take')}${only.length > 0 ? `, ${only.length} on no other card${named(only)}` : ''}`,
    ),
    ...(takes.since > 0 ? [`${counted(takes.since, 'take')} logged since`] : []),
  ].join('; ');
}

const named = (names: readonly string[]): string => {
  const more = names.length - MOST_NAMES;
  const shown = names.slice(0, MOST_NAMES).join(', ');
  return names.length === 0 ? '' : ` (${shown}${more > 0 ? ` and ${more} more` : ''})`;
};

const timeOf = ({ atMs, zone }: CardLine): string =>
  new Date(atMs + zone * 60_000).toISOString().slice(11, 16);
