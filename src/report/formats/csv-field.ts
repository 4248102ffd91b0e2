/**
 * What a spreadsheet would run as a formula (OWASP, "CSV Injection": `= + - @` TAB CR LF; OWASP ASVS 5.0,
 * 1.2.10 adds NUL), also after spaces and in full-width form. Quotes before it count too, so that removing
 * the guard is unambiguous.
 */
const FORMULA = /^'*\s*[=+\-@＝＋－＠\t\r\n\0]/;

/**
 * Puts a single quote before what a spreadsheet would run, and before nothing else: a roll `001` or a scene
 * `3-4` must reach an editing system as it is. The writer quotes the field.
 */
export const guardFormula = (value: string): string => (FORMULA.test(value) ? `'${value}` : value);

/** Removes the guard: `unguard(guardFormula(text))` is `text`. */
export const unguard = (value: string): string =>
  value.startsWith("'") && FORMULA.test(value.slice(1)) ? value.slice(1) : value;
