import { unescapeXml } from './xml-node.ts';

/** Callbacks of a walk over XML text, in order. Names are in capitals. */
export interface XmlVisitor {
  start(name: string): void;
  end(name: string): void;
  text(text: string): void;
}

// CDATA, comment, instruction, start or end tag. Any other `<` is text. Quoted attribute values may hold
// brackets. Only one space is matched before the attributes, or a long run of spaces would be tried at every
// length.
const MARKUP =
  /<!\[CDATA\[([\s\S]*?)(?:\]\]>|$)|<!--[\s\S]*?(?:-->|$)|<\?[^<>]*\?>|<(\/?)([A-Za-z_][\w.:-]*)(?:\s(?:"[^"]*"|'[^']*'|[^<>"'])*?)?(\/?)>/g;

/** Walks over text once, well-formed or not; text comes unescaped, in pieces. */
export function walkXml(text: string, visitor: XmlVisitor): void {
  let from = 0;
  for (const match of text.matchAll(MARKUP)) {
    const [all, literal, slash, name, empty] = match;
    if (match.index > from) visitor.text(unescapeXml(text.slice(from, match.index)));
    from = match.index + all.length;
    if (literal !== undefined) visitor.text(literal);
    if (name === undefined) continue;
    const capitals = name.toUpperCase();
    if (slash) visitor.end(capitals);
    else visitor.start(capitals);
    if (empty) visitor.end(capitals);
  }
  if (from < text.length) visitor.text(unescapeXml(text.slice(from)));
}

export interface OpenElement {
  readonly name: string;
  text: string;
  readonly children: { name: string; text: string; children: OpenElement['children'] }[];
}

export const openElement = (name: string): OpenElement => ({ name, text: '', children: [] });

/** Ends the innermost element and adds it to its parent. */
export function closeInto(open: OpenElement[]): void {
  const { name, text, children } = open.pop()!;
  open.at(-1)!.children.push({ name, text: text.trim(), children });
}
