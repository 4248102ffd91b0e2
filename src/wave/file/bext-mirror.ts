import type { Bext } from '../chunks/bext.ts';
import type { IXml } from '../ixml/ixml.ts';
import type { Warn } from '../warning.ts';

/** Reports differences between bext and its copy inside iXML; the two must be equal if both exist. */
export function compareBextMirror(bext: Bext, ixml: IXml, warn: Warn): void {
  const mirror = ixml.bext;
  if (!mirror) return;
  const pairs: [field: string, kept: Comparable, other: Comparable][] = [
    ['bext.description', plain(bext.description), plain(mirror.description)],
    ['bext.originator', bext.originator, mirror.originator],
    ['bext.originatorReference', bext.originatorReference, mirror.originatorReference],
    ['bext.originationDate', digitsOf(bext.originationDate), digitsOf(mirror.originationDate)],
    ['bext.originationTime', digitsOf(bext.originationTime), digitsOf(mirror.originationTime)],
    ['bext.timeReference', bext.timeReference, mirror.timeReference],
  ];
  for (const [field, kept, other] of pairs) {
    if (kept === undefined || other === undefined || kept === other) continue;
    warn({ code: 'value-differs', at: ixml.at, field, kept, other, keptFrom: 'bext', otherFrom: 'ixml' });
  }
}

type Comparable = string | number | undefined;

/** Differences in line ends and padding mean nothing. */
const plain = (text: string | undefined): string | undefined => text?.replaceAll(/\s+/g, ' ').trim();
const digitsOf = (text: string | undefined): string | undefined => text?.replaceAll(/\D/g, '');
