import { childOf, childrenOf, textOf, type XmlNode } from '../xml/xml-node.ts';
import type { IXmlValues } from './ixml-values.ts';

export interface IXmlTrack {
  /** Number of the channel on the machine, from 1. */
  readonly channelIndex: number | undefined;
  /** Place in this file's interleave, from 1. */
  readonly interleaveIndex: number | undefined;
  readonly name: string | undefined;
  readonly function: string | undefined;
}

/** The tracks in file order; TRACK_COUNT is only compared, as it may be missing or wrong. */
export function readTracks(
  root: XmlNode,
  values: IXmlValues,
): { tracks: readonly IXmlTrack[]; announced: number | undefined } {
  const list = childOf(root, 'TRACK_LIST');
  const tracks = [...childrenOf(list, 'TRACK'), ...childrenOf(root, 'TRACK')].map((track) => ({
    channelIndex: values.whole(track, 'CHANNEL_INDEX'),
    interleaveIndex: values.whole(track, 'INTERLEAVE_INDEX'),
    name: textOf(track, 'NAME'),
    function: textOf(track, 'FUNCTION'),
  }));
  return { tracks, announced: values.whole(list, 'TRACK_COUNT') };
}

export interface IXmlSyncPoint {
  /** A word of the iXML list, or any other. */
  readonly function: string | undefined;
  readonly samples: number | undefined;
}

export const readSyncPoints = (root: XmlNode, values: IXmlValues): readonly IXmlSyncPoint[] =>
  [...childrenOf(childOf(root, 'SYNC_POINT_LIST'), 'SYNC_POINT'), ...childrenOf(root, 'SYNC_POINT')].map(
    (point) => ({
      function: textOf(point, 'SYNC_POINT_FUNCTION'),
      samples: values.count(point, 'SYNC_POINT_HIGH', 'SYNC_POINT_LOW'),
    }),
  );

export interface IXmlFileSet {
  readonly totalFiles: number | undefined;
  readonly familyUid: string | undefined;
  /** 1, 2 ... for mono files, A, B ... for several multichannel ones. */
  readonly index: string | undefined;
}

export function readFileSet(root: XmlNode, values: IXmlValues): IXmlFileSet | undefined {
  const set = childOf(root, 'FILE_SET');
  if (!set) return undefined;
  return {
    totalFiles: values.whole(set, 'TOTAL_FILES'),
    familyUid: textOf(set, 'FAMILY_UID'),
    index: textOf(set, 'FILE_SET_INDEX'),
  };
}
