import type { HeaderFields } from '../../facts/kinds/day-described.ts';
import type { PartFields } from '../../facts/kinds/part-described.ts';
import type { TakeFields } from '../../facts/kinds/take-logged.ts';
import type { VoiceFields } from '../../facts/kinds/voice-described.ts';
import type { FactId } from '../../shared/ids.ts';
import { framesToMs } from '../../time/timecode.ts';
import { linkOver } from '../chain/links.ts';
import type { Day, Fact, Link, Stamp } from '../model.ts';

/** Phones that did not know of each other described one thing differently; the later one holds for now. */
export interface FieldConflict {
  readonly kind: 'field-conflict';
  readonly of: 'day' | 'voice' | 'part' | 'take';
  /** The voice, part or take; empty for the day. */
  readonly id: string;
  readonly field: string;
  /** The value in force until it is changed, then the others. */
  readonly by: readonly FactId[];
}

type Register = Pick<FieldConflict, 'of' | 'id' | 'field'> & { readonly value: unknown };

/** Two thumbs that cut one take are slightly apart, which is not worth reporting. */
const SAME_LENGTH_MS = 3000;

/** Fields that depend on the tap, not the take. */
const OF_THE_TAP = ['rolledAt', 'cutAt', 'start'] as const satisfies readonly (keyof TakeFields)[];
const isOfTheTap = (field: string): boolean => (OF_THE_TAP as readonly string[]).includes(field);

/** All fields on which phones can differ. */
export type DescribedField =
  | keyof (HeaderFields & VoiceFields & PartFields)
  | Exclude<keyof TakeFields, 'circled' | 'noGood' | (typeof OF_THE_TAP)[number]>
  | 'mark';

/** Facts about the whole day or one take on which phones differ at the end of the day. */
export function fieldConflicts(day: Day): FieldConflict[] {
  const { order } = day;
  if (!order) return [];
  const registers = new Map<string, { register: Register; link: Link }>();
  const facts = day.facts.filter(({ id }) => !day.takenBack.has(id));
  facts.sort((a, b) => order.timeOf(a.id) - order.timeOf(b.id));
  for (const fact of facts) {
    for (const register of registersOf(fact)) {
      const name = `${register.of} ${register.id} ${register.field}`;
      const link = linkOver(registers.get(name)?.link, register.value, fact);
      registers.set(name, { register, link });
    }
  }
  return [...registers.values()].flatMap(({ register: { of, id, field }, link }): FieldConflict[] => {
    if (of === 'take' && !day.takes.has(id)) return [];
    const rivals = (link.rivals ?? []).filter((rival) => !isAlike(field, link.value, rival.value));
    if (rivals.length === 0) return [];
    return [{ kind: 'field-conflict', of, id, field, by: [link.by, ...rivals.map(({ by }) => by)] }];
  });
}

function isAlike(field: string, one: unknown, other: unknown): boolean {
  if (field !== 'length' || !one || !other) return false;
  const [a, b] = [one as Stamp, other as Stamp];
  return Math.abs(framesToMs(a.frames, a.rate) - framesToMs(b.frames, b.rate)) <= SAME_LENGTH_MS;
}

/** A fact's fields that can only have one value. */
export function registersOf(fact: Fact): Register[] {
  switch (fact.kind) {
    case 'day-described':
      return fieldsOf('day', '', fact.fields);
    case 'voice-described':
      return fieldsOf('voice', fact.voice, fact.fields);
    case 'part-described':
      return fieldsOf('part', fact.part, fact.fields);
    case 'rig-laid':
      return fact.parts.flatMap(({ part, fields }) => fieldsOf('part', part, fields));
    case 'take-described': {
      const { circled, noGood, ...fields } = fact.fields;
      const marks = circled !== undefined || noGood !== undefined;
      const mark = { of: 'take' as const, id: fact.take, field: 'mark', value: markOf(circled, noGood) };
      const rest = fieldsOf('take', fact.take, fields).filter(({ field }) => !isOfTheTap(field));
      return marks ? [mark, ...rest] : rest;
    }
    default:
      return [];
  }
}

/** Circled and NG are two values of one mark. */
const markOf = (circled = false, noGood = false): string =>
  circled ? 'circled' : noGood ? 'no good' : 'none';

const fieldsOf = (of: Register['of'], id: string, fields: object): Register[] =>
  Object.entries(fields)
    .filter(([, value]) => value !== undefined)
    .map(([field, value]) => ({ of, id, field, value }));
