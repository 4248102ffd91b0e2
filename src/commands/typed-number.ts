import { fail, ok, type Result } from '../shared/result.ts';

/**
 * A typed figure, with a point or a comma; an empty field is null. `readNumber('76,2', 'metres')` → ok 76.2.
 * Fails with `number-unread`, which names the field.
 */
export function readNumber(typed: string, field: string): Result<number | null> {
  const text = typed.trim().replace(',', '.');
  if (text === '') return ok(null);
  const value = /^[+-]?\d{1,15}(\.\d*)?$|^[+-]?\.\d+$/.test(text) ? Number(text) : Number.NaN;
  return Number.isFinite(value) ? ok(value) : fail({ code: 'number-unread', field, typed });
}

/** Several figures at once: the first that could not be read, or all of them. */
export function readNumbers<Field extends string>(
  typed: Readonly<Record<Field, string>>,
): Result<Record<Field, number | null>> {
  const read: Partial<Record<Field, number | null>> = {};
  for (const field of Object.keys(typed) as Field[]) {
    const one = readNumber(typed[field], field);
    if (!one.ok) return one;
    read[field] = one.value;
  }
  return ok(read as Record<Field, number | null>);
}

const METRES_PER_FOOT = 0.3048;

/** A typed length, in metres unless feet: `readMetres('250 ft')` → ok 76.2; `readMetres('60')` → ok 60. */
export function readMetres(typed: string): Result<number | null> {
  const text = typed.trim().replace(/\s*(m|metres?|meters?)$/i, '');
  const feet = /^(.*?)\s*(ft|feet|foot|')$/i.exec(text);
  const read = readNumber(feet?.[1] ?? text, 'metres');
  if (!read.ok) return fail({ code: 'number-unread', field: 'metres', typed });
  if (!feet || read.value === null) return read;
  return ok(Math.round(read.value * METRES_PER_FOOT * 1e6) / 1e6);
}
