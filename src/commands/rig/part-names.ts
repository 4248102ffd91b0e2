import type { Day, Part, PartId } from '../../day/model.ts';
import { recorderOfPart } from '../../day/recorder-of-part.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { PartType } from '../../facts/kinds/part-described.ts';
import { fail, type Problem, type Result } from '../../shared/result.ts';

/** The longest name of a part; a track's name must be readable on the recorder's screen. */
export const LONGEST_NAME = 60;
const LONGEST_ID = 64;

/** A part that is to be named; without an id it is a new one. */
type Named = Pick<Part, 'type' | 'name' | 'recorder'> & { readonly id?: PartId };

/** What is wrong with a part's name, or null. Two of one type may not share one, but on two recorders. */
export function nameProblem(day: Day, part: Named): Result<never, Problem> | null {
  const name = part.name.trim();
  if (name === '') return fail({ code: 'name-empty' });
  if (name.length > LONGEST_NAME) return fail({ code: 'name-too-long', longest: LONGEST_NAME });
  const taken = alike(day, part).some((one) => one.name === name && one.id !== part.id);
  // The first recorder has its name in the head of the day.
  const isFirst = part.type === 'recorder' && recordersOf(day)[0]!.name === name;
  return taken || isFirst ? fail({ code: 'name-taken', name }) : null;
}

/** The parts of one type on one recorder. */
const alike = (day: Day, { type, recorder }: Pick<Part, 'type' | 'recorder'>): Part[] =>
  [...day.rig.byId.values()].filter(
    (part) => part.type === type && recorderOfPart(part) === recorderOfPart({ recorder }),
  );

/** The first `count` names `word 1`, `word 2` and so on that are free for this type. */
export function freeNames(
  day: Day,
  type: PartType,
  word: string,
  count: number,
  recorder?: PartId,
): string[] {
  const taken = new Set(alike(day, { type, recorder }).map(({ name }) => name));
  const names: string[] = [];
  for (let number = 1; names.length < count; number += 1) {
    const name = `${word} ${number}`.trim();
    if (!taken.has(name)) names.push(name);
  }
  return names;
}

/** An id derived from another, such as `lead-near-out3`; one that would be too long is replaced. */
export const idAfter = (prefix: string, id: string): string =>
  prefix.length + 1 + id.length > LONGEST_ID ? id : `${prefix}-${id}`;
