import { joinWords } from '../riff/byte-view.ts';
import type { Warn } from '../warning.ts';
import { textOf, type XmlNode } from '../xml/xml-node.ts';

const MOST_WORD = 0xffff_ffff;

/** Reads the values of one iXML chunk; unreadable ones are undefined and reported once, by element. */
export class IXmlValues {
  readonly #at: number;
  readonly #warn: Warn;

  constructor(at: number, warn: Warn) {
    this.#at = at;
    this.#warn = warn;
  }

  /** A whole number from zero up; '1.0' counts as 1, as some writers write it. */
  whole(node: XmlNode | undefined, name: string): number | undefined {
    const text = textOf(node, name);
    if (text === undefined) return undefined;
    if (/^\d{1,15}(?:\.0*)?$/.test(text)) return Number.parseInt(text, 10);
    return this.#unreadable(name, text);
  }

  /** Two 32-bit words joined as numbers, never as digits; a missing high word is zero. */
  count(node: XmlNode | undefined, highName: string, lowName: string): number | undefined {
    const low = this.whole(node, lowName);
    const high = this.whole(node, highName);
    if (low === undefined) return undefined;
    if (low > MOST_WORD || (high ?? 0) > 0xffff) return this.#unreadable(lowName, `${high ?? 0} ${low}`);
    return joinWords(high ?? 0, low);
  }

  /** TRUE or FALSE in any case; undefined if missing or anything else. */
  flag(node: XmlNode | undefined, name: string): boolean | undefined {
    const text = textOf(node, name)?.toUpperCase();
    if (text === 'TRUE') return true;
    return text === 'FALSE' ? false : undefined;
  }

  unknownRate(name: string, text: string): undefined {
    this.#warn({ code: 'ixml-rate-unknown', at: this.#at, element: name, text: text.slice(0, 40) });
    return undefined;
  }

  #unreadable(name: string, text: string): undefined {
    this.#warn({ code: 'ixml-number-unreadable', at: this.#at, element: name, text: text.slice(0, 40) });
    return undefined;
  }
}
