/** One element: its own text, trimmed and unescaped, and its children. Names are in capitals, as in iXML. */
export interface XmlNode {
  readonly name: string;
  readonly text: string;
  readonly children: readonly XmlNode[];
}

export const childOf = (node: XmlNode | undefined, name: string): XmlNode | undefined =>
  node?.children.find((child) => child.name === name);

export const childrenOf = (node: XmlNode | undefined, name: string): readonly XmlNode[] =>
  node?.children.filter((child) => child.name === name) ?? [];

/** Text of the first non-empty child with that name; undefined if there is none. */
export const textOf = (node: XmlNode | undefined, name: string): string | undefined =>
  node?.children.find((child) => child.name === name && child.text !== '')?.text;

const PREDEFINED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/**
 * The five predefined entities and character references (XML 1.0, sections 4.1 and 4.6); entities that a
 * document defines stay as written.
 */
export const unescapeXml = (text: string): string =>
  text.includes('&')
    ? text.replaceAll(
        /&(?:#(\d{1,7})|#x([\da-f]{1,6})|(amp|lt|gt|quot|apos));/gi,
        (all, digits, hex, name) =>
          name ? (PREDEFINED[name.toLowerCase()] ?? all) : characterOf(digits ?? hex, digits ? 10 : 16, all),
      )
    : text;

function characterOf(digits: string, radix: number, otherwise: string): string {
  const code = Number.parseInt(digits, radix);
  const allowed =
    code >= 0x20 ? code <= 0x10ffff && (code < 0xd800 || code > 0xdfff) : [9, 10, 13].includes(code);
  return allowed ? String.fromCodePoint(code) : otherwise;
}
