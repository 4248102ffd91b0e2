import type { IXmlValues } from './ixml-values.ts';
import { childOf, textOf, type XmlNode } from './xml-node.ts';

/** The copy of bext that iXML carries; texts as written. */
export interface IXmlBext {
  readonly description: string | undefined;
  readonly originator: string | undefined;
  readonly originatorReference: string | undefined;
  readonly originationDate: string | undefined;
  readonly originationTime: string | undefined;
  readonly timeReference: number | undefined;
  readonly version: number | undefined;
  readonly umid: string | undefined;
  readonly codingHistory: string | undefined;
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
    version: values.whole(bext, 'BWF_VERSION'),
    umid: textOf(bext, 'BWF_UMID'),
    codingHistory: textOf(bext, 'BWF_CODING_HISTORY'),
  };
}

/** Loudness as iXML writes it; the specification names no scale here, so the numbers are kept as written. */
export interface IXmlLoudness {
  readonly value: number | undefined;
  readonly range: number | undefined;
  readonly maxTruePeak: number | undefined;
  readonly maxMomentary: number | undefined;
  readonly maxShortTerm: number | undefined;
}

export function readLoudness(root: XmlNode, values: IXmlValues): IXmlLoudness | undefined {
  const loudness = childOf(root, 'LOUDNESS');
  if (!loudness) return undefined;
  return {
    value: values.decimal(loudness, 'LOUDNESS_VALUE'),
    range: values.decimal(loudness, 'LOUDNESS_RANGE'),
    maxTruePeak: values.decimal(loudness, 'MAX_TRUE_PEAK_LEVEL'),
    maxMomentary: values.decimal(loudness, 'MAX_MOMENTARY_LOUDNESS'),
    maxShortTerm: values.decimal(loudness, 'MAX_SHORT_TERM_LOUDNESS'),
  };
}

export interface IXmlHistory {
  readonly originalFilename: string | undefined;
  readonly parentFilename: string | undefined;
  readonly parentUid: string | undefined;
  readonly currentFilename: string | undefined;
}

export function readHistory(root: XmlNode): IXmlHistory | undefined {
  const history = childOf(root, 'HISTORY');
  if (!history) return undefined;
  return {
    originalFilename: textOf(history, 'ORIGINAL_FILENAME'),
    parentFilename: textOf(history, 'PARENT_FILENAME'),
    parentUid: textOf(history, 'PARENT_UID'),
    currentFilename: textOf(history, 'CURRENT_FILENAME'),
  };
}

export interface IXmlLocation {
  readonly name: string | undefined;
  readonly gps: string | undefined;
  readonly altitude: string | undefined;
  /** INT or EXT, and SUNRISE, MORNING, MIDDAY, DAY, AFTERNOON, EVENING, SUNSET or NIGHT; other words as written. */
  readonly type: string | undefined;
  readonly time: string | undefined;
}

export function readLocation(root: XmlNode): IXmlLocation | undefined {
  const location = childOf(root, 'LOCATION');
  if (!location) return undefined;
  return {
    name: textOf(location, 'LOCATION_NAME'),
    gps: textOf(location, 'LOCATION_GPS'),
    altitude: textOf(location, 'LOCATION_ALTITUDE'),
    type: textOf(location, 'LOCATION_TYPE'),
    time: textOf(location, 'LOCATION_TIME'),
  };
}

/** USER holds free text, and since version 2.0 also elements, kept here by name. */
export interface IXmlUser {
  readonly text: string;
  readonly fields: readonly { readonly name: string; readonly text: string }[];
}

export function readUser(root: XmlNode): IXmlUser | undefined {
  const user = childOf(root, 'USER');
  if (!user) return undefined;
  const fields = user.children.map(({ name, text }) => ({ name, text })).filter(({ text }) => text !== '');
  return user.text === '' && fields.length === 0 ? undefined : { text: user.text, fields };
}
