import { type RateId, rateOf } from '../../time/rate.ts';

// The objects of an OpenTimelineIO file, with the fields that its published list of serialized data has.

/** Free data beside what the format knows, under one namespace. */
export type Metadata = Readonly<Record<string, unknown>>;
export const NAMESPACE = 'rollbook';

export type OtioObject = Readonly<Record<string, unknown>>;

const object = (schema: string, name: string, own: Metadata, fields: OtioObject): OtioObject => ({
  OTIO_SCHEMA: schema,
  metadata: Object.keys(own).length > 0 ? { [NAMESPACE]: own } : {},
  name,
  ...fields,
});

/** What every part of a timeline that has a length has. */
const item = (source_range: OtioObject | null, markers: readonly OtioObject[] = []): OtioObject => ({
  source_range,
  effects: [],
  markers,
  enabled: true,
});

/** So many frames; the rate is a number in this format, so 23.976 is 24000/1001 as a double. */
export function rationalTime(value: number, rate: RateId): OtioObject {
  const { num, den } = rateOf(rate);
  return { OTIO_SCHEMA: 'RationalTime.1', rate: num / den, value };
}

export const timeRange = (start: number, duration: number, rate: RateId): OtioObject => ({
  OTIO_SCHEMA: 'TimeRange.1',
  duration: rationalTime(duration, rate),
  start_time: rationalTime(start, rate),
});

export const gap = (frames: number, rate: RateId): OtioObject =>
  object('Gap.1', '', {}, item(timeRange(0, frames, rate)));

/** At an instant of its clip. */
export const marker = (
  name: string,
  color: 'GREEN' | 'RED' | 'YELLOW',
  at: number,
  rate: RateId,
  comment = '',
): OtioObject => object('Marker.2', name, {}, { color, marked_range: timeRange(at, 0, rate), comment });

/** A file by its name, to be found beside the timeline; a URL, so the name is encoded. */
export const externalReference = (file: string, available_range: OtioObject | null): OtioObject =>
  object(
    'ExternalReference.1',
    file,
    {},
    {
      available_range,
      available_image_bounds: null,
      target_url: encodeURIComponent(file.replaceAll(/\p{Cs}/gu, '\ufffd')),
    },
  );

export const missingReference = (available_range: OtioObject | null): OtioObject =>
  object('MissingReference.1', '', {}, { available_range, available_image_bounds: null });

const ONLY_MEDIA = 'DEFAULT_MEDIA';

interface ClipParts {
  readonly range: OtioObject;
  readonly media: OtioObject;
  readonly markers: readonly OtioObject[];
}

export const clip = (name: string, own: Metadata, { range, media, markers }: ClipParts): OtioObject =>
  object('Clip.2', name, own, {
    ...item(range, markers),
    media_references: { [ONLY_MEDIA]: media },
    active_media_reference_key: ONLY_MEDIA,
  });

export const audioTrack = (name: string, own: Metadata, children: readonly OtioObject[]): OtioObject =>
  object('Track.1', name, own, { ...item(null), children, kind: 'Audio' });

export const timeline = (
  name: string,
  own: Metadata,
  global_start_time: OtioObject | null,
  children: readonly OtioObject[],
): OtioObject =>
  object('Timeline.1', name, own, {
    global_start_time,
    tracks: object('Stack.1', 'tracks', {}, { ...item(null), children }),
  });
