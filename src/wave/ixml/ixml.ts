import type { Warn } from '../warning.ts';
import { textOf, type XmlNode } from '../xml/xml-node.ts';
import { recoverXml } from '../xml/xml-recovery.ts';
import { parseXml } from '../xml/xml-tree.ts';
import {
  type IXmlFileSet,
  type IXmlSyncPoint,
  type IXmlTrack,
  readFileSet,
  readSyncPoints,
  readTracks,
} from './ixml-lists.ts';
import { type IXmlBext, readBextMirror } from './ixml-objects.ts';
import { type IXmlSpeed, readSpeed } from './ixml-speed.ts';
import { readIXmlText } from './ixml-text.ts';
import { IXmlValues } from './ixml-values.ts';
import { readTakeTypes } from './take-types.ts';

/** The iXML chunk (iXML 3.01, object details); everything in it is optional, texts are trimmed. */
export interface IXml {
  /** Byte position of the chunk. */
  readonly at: number;
  readonly wellFormed: boolean;
  readonly project: string | undefined;
  readonly scene: string | undefined;
  readonly take: string | undefined;
  readonly tape: string | undefined;
  readonly note: string | undefined;
  /** Words of TAKE_TYPE and the older flags combined, without DEFAULT; empty for an ordinary take. */
  readonly takeTypes: readonly string[];
  /** Missing means not circled. */
  readonly circled: boolean;
  /** Samples recorded before the button was pressed, in the form used up to version 1.3. */
  readonly preRecordSamples: number | undefined;
  readonly speed: IXmlSpeed;
  readonly tracks: readonly IXmlTrack[];
  readonly syncPoints: readonly IXmlSyncPoint[];
  readonly fileSet: IXmlFileSet | undefined;
  readonly bext: IXmlBext | undefined;
}

/** Most bytes of iXML read from one file. */
export const IXML_MOST_BYTES = 4 * 1024 * 1024;
/** A document with more tags is not parsed as a whole. */
const MOST_TAGS = 60_000;

/** Reads an iXML payload, even if not well-formed; undefined if it holds no element at all. */
export function readIXml(payload: Uint8Array, at: number, warn: Warn): IXml | undefined {
  const { text, encoding } = readIXmlText(payload);
  if (encoding === 'windows-1252') warn({ code: 'ixml-text-not-utf8', at, encoding });
  if (text === '') {
    warn({ code: 'ixml-empty', at });
    return undefined;
  }
  const root = treeOf(text, at, warn);
  const wellFormed = root !== undefined;
  const tree = root ?? recoverXml(text);
  if (!wellFormed && tree.children.length === 0) {
    warn({ code: 'ixml-empty', at });
    return undefined;
  }
  return describeTree(tree, wellFormed, at, warn);
}

/** The whole document as a tree, or undefined with a warning. */
function treeOf(text: string, at: number, warn: Warn): XmlNode | undefined {
  if (/<!DOCTYPE/i.test(text)) {
    warn({ code: 'ixml-doctype-ignored', at });
    return undefined;
  }
  if (hasMoreTagsThan(MOST_TAGS, text)) {
    warn({ code: 'ixml-too-many-elements', at, most: MOST_TAGS });
    return undefined;
  }
  const root = parseXml(text);
  if (root?.name === 'BWFXML') return root;
  warn({ code: 'ixml-ill-formed', at });
  return undefined;
}

function hasMoreTagsThan(most: number, text: string): boolean {
  let at = -1;
  for (let count = 0; count <= most; count += 1) {
    at = text.indexOf('<', at + 1);
    if (at < 0) return false;
  }
  return true;
}

function describeTree(root: XmlNode, wellFormed: boolean, at: number, warn: Warn): IXml {
  const values = new IXmlValues(at, warn);
  const { tracks, announced } = readTracks(root, values);
  if (announced !== undefined && announced !== tracks.length)
    warn({ code: 'track-count-differs', at, announced, found: tracks.length });
  return {
    at,
    wellFormed,
    project: textOf(root, 'PROJECT'),
    scene: textOf(root, 'SCENE'),
    take: textOf(root, 'TAKE'),
    tape: textOf(root, 'TAPE'),
    note: textOf(root, 'NOTE'),
    takeTypes: readTakeTypes(root, values),
    circled: values.flag(root, 'CIRCLED') ?? false,
    preRecordSamples: values.whole(root, 'PRE_RECORD_SAMPLECOUNT'),
    speed: readSpeed(root, values),
    tracks,
    syncPoints: readSyncPoints(root, values),
    fileSet: readFileSet(root, values),
    bext: readBextMirror(root, values),
  };
}
