// Parses what the user typed before the command runs, so that a form can point out errors at once.
export { rateOfTake, readTypedTake, type TypedTake, typedFrom } from '../../commands/line/typed-take.ts';
export { readMetres, readNumber, readNumbers } from '../../commands/typed-number.ts';
export { formatMhz, parseMhz, parseMhzOrNone } from '../../radio/mhz-text.ts';
