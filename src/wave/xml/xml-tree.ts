import { XMLValidator } from 'fast-xml-parser';
import type { XmlNode } from './xml-node.ts';
import { closeInto, openElement, walkXml } from './xml-tags.ts';

/**
 * The tree of a well-formed document, or undefined; never throws. The library checks it, and our own walk
 * builds what we need several times faster than a general parser would.
 */
export function parseXml(text: string): XmlNode | undefined {
  if (!isWellFormed(text)) return undefined;
  const open = [openElement('')];
  walkXml(text, {
    start: (name) => open.push(openElement(name)),
    end: () => {
      if (open.length > 1) closeInto(open);
    },
    text: (piece) => {
      open.at(-1)!.text += piece;
    },
  });
  const [root] = open;
  return open.length === 1 && root!.children.length === 1 ? root!.children[0] : undefined;
}

function isWellFormed(text: string): boolean {
  try {
    return XMLValidator.validate(text) === true;
  } catch {
    return false;
  }
}
