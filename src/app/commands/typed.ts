// What somebody typed, read before a command is given, so that a form can say at once what it did not understand.
export { readMetres, readNumber, readNumbers } from '../../commands/typed-number.ts';
export { formatMhz, parseMhz, parseMhzOrNone } from '../../facts/kinds/frequency.ts';
