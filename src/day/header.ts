import { SLATE_STYLES, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
import { isOneOf } from '../shared/open-word.ts';
import type { RateId } from '../time/rate.ts';
import type { Day, Header, Slate } from './model.ts';

/** The header of a day before anything is entered. */
export const EMPTY_HEADER: Header = {
  production: '',
  label: '',
  date: '',
  unit: '',
  mixer: '',
  boom: '',
  utility: '',
  contact: '',
  mixerContact: '',
  boomContact: '',
  utilityContact: '',
  tone: '',
  toneRoll: '',
  recorder: '',
  sampleRate: 48_000,
  bitDepth: '24',
  timecodeRate: '25',
  fileLayout: 'poly',
  slateStyle: 'lettered',
  filePattern: '{slate}T{take}',
  remarks: '',
  sample: false,
};

export type FilledHeader = { readonly [Field in keyof Header]: NonNullable<Header[Field]> };

/** The header with defaults for all fields not entered. */
export function filledHeader(header: Header): FilledHeader {
  const said = Object.entries(header).filter(([, value]) => value !== undefined && value !== null);
  return { ...EMPTY_HEADER, ...Object.fromEntries(said) } as FilledHeader;
}

/** A timecode rate this version can count at; null if only a newer version knows it. */
export const countableRate = ({ timecodeRate }: Pick<Header, 'timecodeRate'>): RateId | null =>
  isOneOf(TIMECODE_RATES, timecodeRate) ? timecodeRate : null;

/** A header whose times and slates this version can compute with. */
export type WorkingHeader = FilledHeader & {
  readonly timecodeRate: RateId;
  readonly slateStyle: Slate['style'];
};

/** The header to compute with; a rate this version does not know becomes `otherwise`. */
export const workingHeader = (day: Pick<Day, 'header'>, otherwise: RateId): WorkingHeader =>
  ({
    ...filledHeader(day.header),
    timecodeRate: countableRate(filledHeader(day.header)) ?? otherwise,
    slateStyle: styleOfDay(day),
  }) as WorkingHeader;

/** How a typed slate is parsed: one in an unknown style cannot be typed here. */
export const styleOfDay = ({ header: { slateStyle } }: { readonly header: Header }): Slate['style'] =>
  isOneOf(SLATE_STYLES, slateStyle) ? slateStyle : 'lettered';
