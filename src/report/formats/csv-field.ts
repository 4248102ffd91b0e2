/**
 * What a spreadsheet would run as a formula (OWASP, "CSV Injection": `= + - @` TAB CR LF; OWASP ASVS 5.0,
 * 1.2.10 adds NUL), also after spaces and in full-width form. A leading single quote is included, so that
 * removing the guard is unambiguous.
 */
const FORMULA = /^\s*[=+\-@＝＋－＠\t\r\n\0]|^[\t\r\n\0']/;

/**
 * What a spreadsheet would turn into another number, a date or a truth value: `007`, `1E2`, `3-4`, `21/33`,
 * `3 Mar`. From memory, as no standard defines it. A plain number is safe.
 */
const CONVERTED: readonly RegExp[] = [
  /^0\d+$/,
  /^\d+(\.\d+)?e[+-]?\d+$/i,
  /^\d{16,}$/,
  /^\d{1,4}[-/.]\d{1,4}([-/.]\d{1,4})?$/,
  /^\d{1,4}[- /.]?(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[- /.]?\d*$/i,
  /^(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[- /.]?\d+$/i,
  /^(true|false)$/i,
];

/** Puts a single quote before what a spreadsheet would run. The writer quotes the field. */
export const guardFormula = (value: string): string => (FORMULA.test(value) ? `'${value}` : value);

/** The same for names of scenes, slates, rolls and tracks, which must not become numbers or dates either. */
export const guardName = (value: string): string =>
  FORMULA.test(value) || isConverted(value) ? `'${value}` : value;

/** Nothing longer is read as a number or a date. */
const LONGEST = 40;

const isConverted = (value: string): boolean =>
  value.length <= LONGEST && CONVERTED.some((pattern) => pattern.test(value.trim()));

/** Removes either guard: `unguard(guardName(text))` is `text`. */
export const unguard = (value: string): string => (value.startsWith("'") ? value.slice(1) : value);
