import { plain } from '../cast-in-order.ts';
import { type Mic, micListed, micsKnownOf } from '../chain/mics.ts';
import type { Day, Voice } from '../model.ts';
import { dateOfDay } from './same-production.ts';

/** What was said of a mic on a body, and on which pack it was. */
export interface KnownMic {
  /** The name of the pack; empty for a mic on its own lead. */
  readonly pack: string;
  readonly mic: Omit<Mic, 'carried'>;
}

interface Performer {
  readonly number: string;
  readonly part: string;
  readonly person: string;
}

/** A cast number of one day. */
interface CastOnDay extends Performer {
  readonly mics: readonly KnownMic[];
  /** Nobody confirmed them on that day: they are of a day before. */
  readonly carried: boolean;
}

/** The cast of one day by number, and how its mics were last. */
export interface DayKnown {
  /** ISO. */
  readonly date: string;
  readonly cast: readonly CastOnDay[];
}

/** A part of the production as the latest of its earlier days has it. */
export interface KnownPerformer extends Performer {
  /** The latest day that had the part. */
  readonly date: string;
  readonly mics: readonly KnownMic[];
  /** The day the mics are of; empty where there are none. */
  readonly micsDate: string;
}

/** The parts that earlier days know, the latest first. */
export type Season = readonly KnownPerformer[];

const key = (text: string): string => plain(text).replace(/\s+/g, '');
const isAlike = (a: string, b: string): boolean => key(a) === key(b);

/** What a later day can know of this one. */
export const knownOfDay = (day: Day): DayKnown => ({
  date: dateOfDay(day.header.date, day.lastAt),
  cast: [...day.voices.values()]
    .filter(
      ({ kind, number, part, struck }) => kind === 'performer' && !struck && number !== '' && part !== '',
    )
    .map((voice) => castOnDay(day, voice)),
});

function castOnDay(day: Day, { id, number, part, person }: Voice): CastOnDay {
  const known = [...micsKnownOf(day.tail, id)];
  const mics = known.map(([pack, { carried: _, ...mic }]): KnownMic => {
    return { pack: pack === null ? '' : (day.rig.byId.get(pack)?.name ?? ''), mic };
  });
  return { number, part, person, mics: eachOnce(mics), carried: known.every(([, mic]) => mic.carried) };
}

/** A mic that went from pack to pack is one; where it was last is what counts. */
function eachOnce(mics: readonly KnownMic[]): KnownMic[] {
  const said = ({ mic }: KnownMic): string => JSON.stringify([micListed(mic), mic.rubs]);
  return [...new Map(mics.map((one) => [said(one), one])).values()];
}

/** What all these days together know; of each thing the latest that was said. */
export function seasonOf(days: readonly DayKnown[]): Season {
  const latestFirst = [...days].sort((a, b) => b.date.localeCompare(a.date));
  const said = new Map<string, (CastOnDay & { readonly date: string })[]>();
  for (const { date, cast } of latestFirst)
    for (const one of cast) {
      const name = `${key(one.number)} ${key(one.part)}`;
      said.set(name, [...(said.get(name) ?? []), { ...one, date }]);
    }
  return [...said.values()].map((all): KnownPerformer => {
    const [{ number, part, date }] = all as [(typeof all)[number]];
    const withMics = all.filter(({ mics }) => mics.length > 0);
    const mics = withMics.find(({ carried }) => !carried) ?? withMics[0];
    const person = all.find((one) => one.person !== '')?.person ?? '';
    return { number, part, person, date, mics: mics?.mics ?? [], micsDate: mics?.date ?? '' };
  });
}

/**
 * What earlier days know of somebody, by cast number. A number that now belongs to another part is another one;
 * whoever had a number and is named without the part is the same.
 */
export function knownBefore(season: Season, { number, part, person }: Performer): KnownPerformer | undefined {
  if (number === '') return undefined;
  const same = season.filter((one) => isAlike(one.number, number));
  if (part === '' && person === '') return same[0];
  return (
    same.find((one) => isAlike(one.part, part)) ??
    same.find((one) => one.person !== '' && [part, person].some((name) => isAlike(one.person, name)))
  );
}
