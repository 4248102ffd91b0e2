import { IXML_LEAVES, IXML_OBJECTS, IXML_PARENT } from './ixml-elements.ts';
import type { XmlNode } from './xml-node.ts';
import { closeInto, type OpenElement, openElement, walkXml, type XmlVisitor } from './xml-tags.ts';

/** More elements than any list of tracks and sync points has; the rest is ignored. */
const MOST_NODES = 20_000;

/**
 * Builds a tree from whatever iXML elements can be recognised in text that is not well-formed: stray `<` and
 * `&` are text, an element without an end tag ends at the next known element, unknown elements are skipped.
 */
export function recoverXml(text: string): XmlNode {
  const recovery = new Recovery();
  walkXml(text, recovery);
  return recovery.finish();
}

class Recovery implements XmlVisitor {
  readonly #open: OpenElement[] = [openElement('BWFXML')];
  #count = 0;

  text(text: string): void {
    this.#top().text += text;
  }

  start(name: string): void {
    if (name === 'BWFXML' || this.#count >= MOST_NODES) return;
    const parent = IXML_PARENT.get(name);
    const inUser = this.#open.some((element) => element.name === 'USER');
    if (!parent && !IXML_LEAVES.has(name) && !inUser) return;
    if (parent) this.#closeTo(parent);
    else if (!IXML_OBJECTS.has(this.#top().name)) closeInto(this.#open);
    this.#count += 1;
    this.#open.push(openElement(name));
  }

  end(name: string): void {
    const depth = this.#open.findLastIndex((element) => element.name === name);
    if (depth < 1) return;
    while (this.#open.length > depth) closeInto(this.#open);
  }

  finish(): XmlNode {
    this.#closeTo('BWFXML');
    return { name: 'BWFXML', text: '', children: this.#top().children };
  }

  #closeTo(parent: string): void {
    const depth = Math.max(
      0,
      this.#open.findLastIndex((element) => element.name === parent),
    );
    while (this.#open.length > depth + 1) closeInto(this.#open);
  }

  #top(): OpenElement {
    return this.#open.at(-1)!;
  }
}
