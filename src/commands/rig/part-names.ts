import type { Day, PartId } from '../../day/model.ts';
import { recordersOf } from '../../day/recorders/rolling.ts';
import type { PartType } from '../../facts/kinds/part-described.ts';
import type { Open } from '../../shared/open-word.ts';
import { fail, type Problem, type Result } from '../../shared/result.ts';

/** The longest name of a part; a track's name must be readable on the recorder's screen. */
export const LONGEST_NAME = 60;
const LONGEST_ID = 64;

/** What is wrong with a name for a part of this type, or null. Two of one type may not share a name. */
export function nameProblem(
  day: Day,
  type: Open<PartType>,
  typed: string,
  self?: PartId,
): Result<never, Problem> | null {
  const name = typed.trim();
  if (name === '') return fail({ code: 'name-empty' });
  if (name.length > LONGEST_NAME) return fail({ code: 'name-too-long', longest: LONGEST_NAME });
  const taken = [...day.rig.byId.values()].some(
    (part) => part.type === type && part.name === name && part.id !== self,
  );
  // The first recorder has its name in the head of the day.
  const isFirst = type === 'recorder' && recordersOf(day)[0]!.name === name;
  return taken || isFirst ? fail({ code: 'name-taken', name }) : null;
}

/** The first `count` names `word 1`, `word 2` and so on that are free for this type. */
export function freeNames(day: Day, type: PartType, word: string, count: number): string[] {
  const taken = new Set(
    [...day.rig.byId.values()].filter((part) => part.type === type).map(({ name }) => name),
  );
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
