import type * as z from 'zod/mini';

// A day of 200 takes is a thousand facts, and the parser takes most of the time to open it. Nearly all of them are
// right, and that is quicker to see than why one is not. The parser stays the judge of whatever is not seen to be right.

/** True only for values that the shape accepts; false also where this cannot tell. */
export type QuickCheck = (value: unknown) => boolean;

interface Def {
  readonly type?: string;
  readonly check?: string;
  readonly [detail: string]: unknown;
}

const never: QuickCheck = () => false;
const every =
  (checks: readonly QuickCheck[]): QuickCheck =>
  (value) => {
    for (const check of checks) if (!check(value)) return false;
    return true;
  };

const defOf = (shape: unknown): Def => (shape as { _zod: { def: Def } })._zod.def;

/** Reads a shape once and gives the check for it: `quickCheck(z.boolean())(true)` is true. */
export const quickCheck = (shape: z.ZodMiniType): QuickCheck => checkOf(shape);

function checkOf(shape: unknown): QuickCheck {
  const def = defOf(shape);
  const kind = KINDS[def.type ?? ''];
  // A change of the value on the way, such as a default, would be lost here.
  if (!kind) return never;
  const own = def.check ? [valueCheck(def)] : [];
  const checks = (def.checks as unknown[] | undefined)?.map((check) => valueCheck(defOf(check))) ?? [];
  const all = [...own, ...checks];
  return all.length === 0 ? kind(def) : every([kind(def), ...all]);
}

const KINDS: Readonly<Record<string, (def: Def) => QuickCheck>> = {
  string: () => (value) => typeof value === 'string',
  boolean: () => (value) => typeof value === 'boolean',
  number: () => (value) => Number.isFinite(value),
  enum: ({ entries }) => oneOf(Object.values(entries as object)),
  literal: ({ values }) => oneOf(values as unknown[]),
  optional: ({ innerType }) => orElse(undefined, checkOf(innerType)),
  nullable: ({ innerType }) => orElse(null, checkOf(innerType)),
  array: ({ element }) => {
    const item = checkOf(element);
    return (value) => Array.isArray(value) && value.every(item);
  },
  object: ({ shape, catchall }) => (catchall ? never : fieldsCheck(shape as object)),
  record: ({ keyType, valueType }) => {
    const [key, item] = [checkOf(keyType), checkOf(valueType)];
    return (value) =>
      isPlain(value) && Object.entries(value).every(([name, field]) => key(name) && item(field));
  },
  union: ({ options }) => {
    const checks = (options as unknown[]).map(checkOf);
    return (value) => checks.some((check) => check(value));
  },
};

function oneOf(values: readonly unknown[]): QuickCheck {
  const known = new Set(values);
  return (value) => known.has(value);
}

const orElse =
  (absent: null | undefined, check: QuickCheck): QuickCheck =>
  (value) =>
    value === absent || check(value);

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

function fieldsCheck(shape: object): QuickCheck {
  const fields = Object.entries(shape).map(([name, field]) => ({ name, check: checkOf(field) }));
  return (value) => {
    if (!isPlain(value)) return false;
    for (const { name, check } of fields) if (!check(value[name])) return false;
    return true;
  };
}

/** A bound on a value whose type has been seen to. */
function valueCheck(def: Def): QuickCheck {
  switch (def.check) {
    case 'max_length':
      return (value) => (value as { length: number }).length <= (def.maximum as number);
    case 'min_length':
      return (value) => (value as { length: number }).length >= (def.minimum as number);
    case 'greater_than':
      return (value) => (value as number) > (def.value as number) || isEnd(def, value);
    case 'less_than':
      return (value) => (value as number) < (def.value as number) || isEnd(def, value);
    case 'number_format':
      return def.format === 'safeint' ? Number.isSafeInteger : never;
    case 'string_format':
      return def.format === 'regex' ? patternCheck(def.pattern as RegExp) : never;
    case 'custom':
      return typeof def.fn === 'function' ? (value) => (def.fn as QuickCheck)(value) === true : never;
    default:
      return never;
  }
}

const isEnd = (def: Def, value: unknown): boolean => def.inclusive === true && value === def.value;

const patternCheck = (pattern: RegExp): QuickCheck =>
  pattern.global || pattern.sticky ? never : (value) => pattern.test(value as string);
