import type { CallSheet } from '../../callsheet/call-sheet.ts';
import type { SheetPerformer } from '../../callsheet/cast/cast-entry.ts';
import { type NumbersOnly, numbersOnly } from '../../callsheet/cast/numbers-only.ts';
import { holderOf, numberOrder } from '../../day/cast-in-order.ts';
import type { Day } from '../../day/model.ts';
import { plainName } from '../../day/scenes-in-order.ts';
import { type KnownPerformer, knownBefore, type Season } from '../../day/season/season.ts';

/** A performer of a call sheet; what its cast number stands for may be known from earlier days. */
export interface SeasonPerformer extends SheetPerformer {
  readonly known?: KnownPerformer;
}

/** The sheet with what earlier days of the production know of the cast numbers on it. */
export interface SeasonSheet extends CallSheet {
  readonly cast: readonly SeasonPerformer[];
}

/**
 * Gives every cast number of a sheet that is new to the day the part and performer it had before, wherever the
 * sheet leaves them out: in its list, in its scenes, and in lines of nothing but numbers. `isOpen` is false for
 * lines that a person has answered by hand.
 */
export function withSeason(
  sheet: CallSheet,
  day: Day,
  season: Season,
  isOpen: (line: number) => boolean = () => true,
): SeasonSheet {
  // A row without a line was carried and then mended by hand.
  const listed = sheet.cast.map((entry) => (entry.line < 0 ? entry : filled(entry, day, season)));
  const taken = new Set(listed.map(({ number }) => plainName(number)));
  const knownOf = newNumbers(day, season);
  const more: SeasonPerformer[] = [];
  const isFresh = (number: string): boolean => !taken.has(plainName(number)) && knownOf(number) !== undefined;
  const isThere = (number: string): boolean =>
    taken.has(plainName(number)) || holderOf(day, number) !== undefined;
  const add = (number: string, from: Partial<SheetPerformer> = {}): void => {
    const known = knownOf(number);
    if (!known || !isFresh(number)) return;
    taken.add(plainName(number));
    const line = lineOf(season, known);
    if (isOpen(line)) more.push(withKnown({ ...NOT_ON_SHEET, number, line, ...from }, known));
  };

  /** Only a line of which every number stands for somebody is no longer unread. */
  const isRead = ({ numbers, times }: NumbersOnly): boolean =>
    numbers.some(isFresh) &&
    numbers.every((number) => isFresh(number) || (times.onSet === '' && isThere(number)));
  const unread = sheet.unread.filter(({ line, text, why }) => {
    const found = why === 'no-name' ? numbersOnly(text) : null;
    if (!found || !isRead(found)) return true;
    const { pickUp, onSet, how } = found.times;
    const timed = onSet === '' ? {} : { pickUp, onSet, how: { ...(pickUp && { pickUp: how }), onSet: how } };
    for (const number of found.numbers) add(number, { ...timed, more: [line] });
    return false;
  });
  for (const { cast } of sheet.scenes) for (const number of cast) add(number);
  const isOnLine = ({ line }: SeasonPerformer): boolean => line > 0;
  const others = [...listed.filter((one) => !isOnLine(one)), ...more].sort((a, b) =>
    numberOrder(a.number, b.number),
  );
  return { ...sheet, unread, cast: [...listed.filter(isOnLine), ...others] };
}

const NOT_ON_SHEET = { part: '', person: '', pickUp: '', onSet: '', more: [], sure: true, how: {} } as const;

/** What is known of a number that the cast of the day has not; each is looked up once. */
function newNumbers(day: Day, season: Season): (number: string) => KnownPerformer | undefined {
  const found = new Map<string, KnownPerformer | undefined>();
  return (number) => {
    if (!found.has(number))
      found.set(
        number,
        holderOf(day, number) ? undefined : knownBefore(season, { number, part: '', person: '' }),
      );
    return found.get(number);
  };
}

/** A number of no line of its own has one before the first, the same as long as it is asked. */
const lineOf = (season: Season, known: KnownPerformer): number => -1 - season.indexOf(known);

function filled(entry: SheetPerformer, day: Day, season: Season): SeasonPerformer {
  if (holderOf(day, entry.number)) return entry;
  const known = knownBefore(season, entry);
  return known ? withKnown(entry, known) : entry;
}

/** What the sheet says stands; a single name that is the performer's is no part. */
function withKnown(entry: SheetPerformer, known: KnownPerformer): SeasonPerformer {
  const isPerson = entry.person === '' && plainName(entry.part) === plainName(known.person);
  const { part, person } = isPerson ? { part: '', person: entry.part } : entry;
  const how = {
    ...entry.how,
    ...(isPerson && { person: entry.how.part }),
    ...(part === '' && { part: 'carried' as const }),
    ...(person === '' && known.person !== '' && { person: 'carried' as const }),
  };
  return { ...entry, part: part || known.part, person: person || known.person, how, known };
}
