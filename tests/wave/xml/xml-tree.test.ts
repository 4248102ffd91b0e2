import fc from 'fast-check';
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import type { XmlNode } from '../../../src/wave/xml/xml-node.ts';
import { unescapeXml } from '../../../src/wave/xml/xml-node.ts';
import { parseXml } from '../../../src/wave/xml/xml-tree.ts';
import { SPECIFICATION_VALUES } from '../ixml-sample.ts';

const PARSER = new XMLParser({
  preserveOrder: true,
  ignoreDeclaration: true,
  parseTagValue: false,
  processEntities: false,
  cdataPropName: '#cdata',
});

type Ordered = Readonly<Record<string, unknown>>;

/** The same tree out of the independent parser. */
function nodeOf(item: Ordered): XmlNode | undefined {
  const name = Object.keys(item).find((key) => !key.startsWith('#') && key !== ':@');
  if (name === undefined) return undefined;
  const content = item[name] as readonly Ordered[];
  const text = content.map((part) =>
    typeof part['#text'] === 'string'
      ? unescapeXml(part['#text'])
      : ((part['#cdata'] as readonly Ordered[] | undefined) ?? [])
          .map((one) => String(one['#text'] ?? ''))
          .join(''),
  );
  return {
    name: name.toUpperCase(),
    text: text.join('').replaceAll(/\s/g, ''),
    children: content.map(nodeOf).filter((node) => node !== undefined),
  };
}

/** Blanks between pieces of mixed text are trimmed differently and mean nothing here. */
const squeezed = ({ name, text, children }: XmlNode): XmlNode => ({
  name,
  text: text.replaceAll(/\s/g, ''),
  children: children.map(squeezed),
});

const theirs = (text: string): XmlNode | undefined =>
  (PARSER.parse(text) as Ordered[]).map(nodeOf).find((node) => node !== undefined);

const name = fc.constantFrom('SCENE', 'TAKE', 'A', 'b.c-d', 'X_1');
const words = fc.string({ maxLength: 12 }).map((text) =>
  text
    .replaceAll(/[^ -~éß]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;'),
);
const { element } = fc.letrec<{ element: string; content: string }>((tie) => ({
  content: fc.oneof(
    { maxDepth: 4 },
    words,
    fc.constant('<!-- <SCENE>no</SCENE> -->'),
    fc.constant('<![CDATA[<b> & ]]>'),
    fc.constant('<EMPTY/>'),
    fc.constant('<WITH a="1 &gt; 2" b=\'/\'>x</WITH>'),
    tie('element'),
  ),
  element: fc
    .tuple(name, fc.array(tie('content'), { maxLength: 4 }))
    .map(([tag, content]) => `<${tag}>${content.join('')}</${tag}>`),
}));

describe('the tree of a document', () => {
  test('is the one a general XML parser builds, for 1,000 random documents (seed 7)', () => {
    fc.assert(
      fc.property(element, (text) => {
        expect(squeezed(parseXml(text)!)).toEqual(theirs(text));
      }),
      { numRuns: 1000, seed: 7 },
    );
  });

  test('is the same for the values of the iXML specification', () => {
    const text = `<?xml version="1.0"?>\n<BWFXML>${SPECIFICATION_VALUES}</BWFXML>`;
    expect(squeezed(parseXml(text)!)).toEqual(theirs(text));
  });

  test('keeps brackets inside quoted attributes out of the way', () => {
    expect(parseXml('<A x="1 > 2" y=\'</A>\'>text</A>')).toMatchObject({ name: 'A', text: 'text' });
  });

  test.each(['<A>', '<A></B>', '<A><B></A></B>', '<A/><B/>', 'plain', '', '<A>&</A', '<A x=1></A>'])(
    'is none for %o',
    (text) => {
      expect(parseXml(text)).toBeUndefined();
    },
  );
});
