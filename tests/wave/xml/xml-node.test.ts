import { describe, expect, test } from 'vitest';
import { childOf, childrenOf, textOf, unescapeXml, type XmlNode } from '../../../src/wave/xml/xml-node.ts';

const leaf = (name: string, text = ''): XmlNode => ({ name, text, children: [] });

describe('references (XML 1.0, sections 2.2, 4.1 and 4.6)', () => {
  test.each([
    ['&amp;&lt;&gt;&quot;&apos;', '&<>"\''],
    ['&AMP;&Lt;', '&<'],
    ['&#65;&#x42;&#X43;', 'ABC'],
    ['&#9;&#10;&#13;', '\t\n\r'],
    ['&#8;&#11;&#12;&#31;', '&#8;&#11;&#12;&#31;'],
    ['&#32;', ' '],
    ['&#xD7FF;&#xE000;', '\ud7ff\ue000'],
    ['&#xD800;&#xDFFF;', '&#xD800;&#xDFFF;'],
    ['&#x10FFFF;', '\u{10ffff}'],
    ['&#x110000;&#1114112;', '&#x110000;&#1114112;'],
    ['&other;&#;&', '&other;&#;&'],
    ['&amp;lt;', '&lt;'],
  ])('%s is %j', (written, read) => {
    expect(unescapeXml(written)).toBe(read);
  });
});

describe('an element', () => {
  const node: XmlNode = {
    name: 'A',
    text: '',
    children: [leaf('B'), leaf('B', 'one'), leaf('C'), leaf('B', 'two')],
  };

  test('gives its first child of a name, all of them, and the first text there is', () => {
    expect(childOf(node, 'B')).toBe(node.children[0]);
    expect(childrenOf(node, 'B')).toEqual([leaf('B'), leaf('B', 'one'), leaf('B', 'two')]);
    expect(textOf(node, 'B')).toBe('one');
  });

  test('that is not there has neither', () => {
    expect([childOf(node, 'D'), textOf(node, 'C'), childOf(undefined, 'B'), textOf(undefined, 'B')]).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(childrenOf(undefined, 'B')).toEqual([]);
  });
});
