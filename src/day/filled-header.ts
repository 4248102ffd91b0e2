import type { Header } from './model.ts';
import { EMPTY_HEADER } from './standing.ts';

export type FilledHeader = { readonly [Field in keyof Header]: NonNullable<Header[Field]> };

/** The header with every field there: what was said of it, else what it starts with. */
export function filledHeader(header: Header): FilledHeader {
  const said = Object.entries(header).filter(([, value]) => value !== undefined && value !== null);
  return { ...EMPTY_HEADER, ...Object.fromEntries(said) } as FilledHeader;
}
