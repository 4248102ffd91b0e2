import { type ComponentChild, options, render } from 'preact';
import { vi } from 'vitest';

/** As much of a document as the renderer asks for, and no more: unit tests need no browser to read a screen. */
class SmallNode {
  readonly childNodes: SmallNode[] = [];
  readonly style: Record<string, string> = {};
  readonly attributes = new Map<string, string>();
  readonly #heard = new Map<string, (event: object) => void>();
  parentNode: SmallNode | null = null;
  readonly localName: string;
  data: string | undefined;

  constructor(localName: string, data?: string) {
    this.localName = localName;
    this.data = data;
  }
  readonly namespaceURI = 'http://www.w3.org/1999/xhtml';
  readonly ownerDocument = smallDocument;
  get nodeType(): number {
    return this.data === undefined ? 1 : 3;
  }
  get firstChild(): SmallNode | null {
    return this.childNodes[0] ?? null;
  }
  get nextSibling(): SmallNode | null {
    const all = this.parentNode?.childNodes ?? [];
    return all[all.indexOf(this) + 1] ?? null;
  }
  get textContent(): string {
    return this.data ?? this.childNodes.map(({ textContent }) => textContent).join('');
  }
  insertBefore(node: SmallNode, before: SmallNode | null): SmallNode {
    node.remove();
    const at = before ? this.childNodes.indexOf(before) : this.childNodes.length;
    this.childNodes.splice(at, 0, node);
    node.parentNode = this;
    return node;
  }
  appendChild(node: SmallNode): SmallNode {
    return this.insertBefore(node, null);
  }
  remove(): void {
    const all = this.parentNode?.childNodes;
    all?.splice(all.indexOf(this), 1);
    this.parentNode = null;
  }
  removeChild(node: SmallNode): void {
    node.remove();
  }
  setAttribute(name: string, value: unknown): void {
    this.attributes.set(name, String(value));
  }
  removeAttribute(name: string): void {
    this.attributes.delete(name);
  }
  addEventListener(type: string, hear: (event: object) => void): void {
    this.#heard.set(type, hear);
  }
  removeEventListener(type: string): void {
    this.#heard.delete(type);
  }
  /** Nothing is laid out here. */
  scrollIntoView(): void {}
  /** What a tap does: the renderer's one listener finds the handler. */
  tap(): void {
    this.#heard.get('click')?.call(this, { type: 'click', target: this, currentTarget: this });
  }
  all(localName: string): SmallNode[] {
    const below = this.childNodes.flatMap((one) => one.all(localName));
    return this.localName === localName ? [this, ...below] : below;
  }
}

const smallDocument = {
  createElementNS: (_: string, name: string) => new SmallNode(name),
  createElement: (name: string) => new SmallNode(name),
  createTextNode: (text: string) => new SmallNode('#text', String(text)),
};

export interface Shown {
  readonly root: SmallNode;
  /** Everything that was set in motion by then is drawn, effects included. */
  readonly settled: () => Promise<void>;
  readonly gone: () => void;
}

/** Draws into a document of its own; `gone` takes it away as leaving the screen does. */
export function show(what: ComponentChild): Shown {
  vi.stubGlobal('document', smallDocument);
  // Effects run with the next frame; here that is the next turn.
  options.requestAnimationFrame = (work) => setTimeout(work);
  const root = new SmallNode('body');
  const draw = (next: ComponentChild): void => render(next, root as unknown as Element);
  draw(what);
  return {
    root,
    settled: async () => {
      for (let turn = 0; turn < 5; turn += 1) await new Promise((done) => setTimeout(done));
    },
    gone: () => draw(null),
  };
}
