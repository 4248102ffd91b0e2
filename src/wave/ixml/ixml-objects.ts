import { childOf, textOf, type XmlNode } from '../xml/xml-node.ts';
import type { IXmlValues } from './ixml-values.ts';

/** The copy of bext inside iXML; texts as written. */
export interface IXmlBext {
  readonly description: string | undefined;
  readonly originator: string | undefined;
  readonly originatorReference: string | undefined;
  readonly originationDate: string | undefined;
  readonly originationTime: string | undefined;
  readonly timeReference: number | undefined;
}

export function readBextMirror(root: XmlNode, values: IXmlValues): IXmlBext | undefined {
  const bext = childOf(root, 'BEXT');
  if (!bext) return undefined;
  return {
    description: textOf(bext, 'BWF_DESCRIPTION'),
    originator: textOf(bext, 'BWF_ORIGINATOR'),
    originatorReference: textOf(bext, 'BWF_ORIGINATOR_REFERENCE'),
    originationDate: textOf(bext, 'BWF_ORIGINATION_DATE'),
    originationTime: textOf(bext, 'BWF_ORIGINATION_TIME'),
    timeReference: values.count(bext, 'BWF_TIME_REFERENCE_HIGH', 'BWF_TIME_REFERENCE_LOW'),
  };
}
