import { SLATE_STYLES, TIMECODE_RATES } from '../facts/kinds/day-described.ts';
import { isOneOf } from '../shared/open-word.ts';
import type { RateId } from '../time/rate.ts';
import type { Day, Header, Slate } from './model.ts';

/** What a day says of itself before anybody says anything. */
export const EMPTY_HEADER: Header = {
  production: '',
  label: '',
  date: '',
  unit: '',
  mixer: '',
  boom: '',
  utility: '',
  contact: '',
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

/** The header with every field there: what was said of it, else what it starts with. */
export function filledHeader(header: Header): FilledHeader {
  const said = Object.entries(header).filter(([, value]) => value !== undefined && value !== null);
  return { ...EMPTY_HEADER, ...Object.fromEntries(said) } as FilledHeader;
}

/** The day's timecode rate; null where only a newer version knows it, so that nothing may be counted in it here. */
export function rateOfDay({ header }: { readonly header: Header }): RateId | null {
  const { timecodeRate } = filledHeader(header);
  return isOneOf(TIMECODE_RATES, timecodeRate) ? timecodeRate : null;
}

/** A header whose times and slates can be worked with. */
export type WorkingHeader = FilledHeader & {
  readonly timecodeRate: RateId;
  readonly slateStyle: Slate['style'];
};

/** The header to work with: where only a newer version knows the rate, at `otherwise`. */
export const workingHeader = (day: Pick<Day, 'header'>, otherwise: RateId): WorkingHeader =>
  ({
    ...filledHeader(day.header),
    timecodeRate: rateOfDay(day) ?? otherwise,
    slateStyle: styleOfDay(day),
  }) as WorkingHeader;

/** How a slate that is typed is read: a style that only a newer version knows cannot be typed here. */
export const styleOfDay = ({ header: { slateStyle } }: { readonly header: Header }): Slate['style'] =>
  isOneOf(SLATE_STYLES, slateStyle) ? slateStyle : 'lettered';
