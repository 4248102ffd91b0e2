// Reads an OpenTimelineIO file by the published specification alone (file format specification, list of serialized
// fields, time ranges): it knows nothing of how the report writes one, and refuses what the specification does not have.

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Fields = { [key: string]: Json };

const NAMED = ['metadata', 'name'];
const ITEM = [...NAMED, 'source_range', 'effects', 'markers', 'enabled'];
const MEDIA = [...NAMED, 'available_range', 'available_image_bounds'];

/** The fields that each schema serializes. */
const SCHEMAS: Record<string, readonly string[]> = {
  'Timeline.1': [...NAMED, 'global_start_time', 'tracks'],
  'Stack.1': [...ITEM, 'children'],
  'Track.1': [...ITEM, 'children', 'kind'],
  'Clip.2': [...ITEM, 'media_references', 'active_media_reference_key'],
  'Gap.1': ITEM,
  'Marker.2': [...NAMED, 'color', 'marked_range', 'comment'],
  'ExternalReference.1': [...MEDIA, 'target_url'],
  'MissingReference.1': MEDIA,
  'TimeRange.1': ['duration', 'start_time'],
  'RationalTime.1': ['rate', 'value'],
};

/** The colours that Marker names. */
const COLORS = 'PINK RED ORANGE YELLOW GREEN CYAN BLUE PURPLE MAGENTA BLACK WHITE'.split(' ');

interface Time {
  readonly value: number;
  readonly rate: number;
}
interface Range {
  readonly start: Time;
  readonly duration: Time;
}

export interface ReadClip {
  readonly name: string;
  readonly url: string | null;
  readonly range: Range;
  readonly available: Range | null;
  /** Where it stands on its track, in its own rate. */
  readonly at: number;
  readonly markers: readonly { name: string; color: string; comment: string; at: number }[];
  readonly own: Fields;
}
export interface ReadTrack {
  readonly name: string;
  readonly own: Fields;
  readonly clips: readonly ReadClip[];
}
export interface ReadTimeline {
  readonly name: string;
  readonly start: Time | null;
  readonly own: Fields;
  readonly tracks: readonly ReadTrack[];
}

function refuse(why: string): never {
  throw new Error(`Not OpenTimelineIO: ${why}`);
}

const isFields = (value: Json | undefined): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const textOf = (value: Json | undefined): string =>
  typeof value === 'string' ? value : refuse(`${JSON.stringify(value)} is no text`);
const numberOf = (value: Json | undefined): number =>
  typeof value === 'number' && Number.isFinite(value)
    ? value
    : refuse(`${JSON.stringify(value)} is no number`);
const listOf = (value: Json | undefined): Json[] =>
  Array.isArray(value) ? value : refuse(`${JSON.stringify(value)} is no list`);

function object(value: Json | undefined, ...schemas: string[]): Fields {
  if (!isFields(value)) return refuse(`${JSON.stringify(value)} where ${schemas.join(' or ')} belongs`);
  const schema = textOf(value.OTIO_SCHEMA);
  if (!schemas.includes(schema)) refuse(`${schema} where ${schemas.join(' or ')} belongs`);
  const known = [...(SCHEMAS[schema] ?? refuse(`no schema ${schema}`)), 'OTIO_SCHEMA'].sort();
  if (Object.keys(value).sort().join() !== known.join()) refuse(`fields of ${schema}: ${Object.keys(value)}`);
  if ('metadata' in value && !isFields(value.metadata)) refuse(`metadata of ${schema}`);
  if ('name' in value) textOf(value.name);
  if ('enabled' in value && value.enabled !== true) refuse('something is not enabled');
  if ('effects' in value && listOf(value.effects).length > 0) refuse('there are effects');
  return value;
}

function time(value: Json | undefined): Time {
  const { rate, value: count } = object(value, 'RationalTime.1');
  return numberOf(rate) > 0 ? { rate: numberOf(rate), value: numberOf(count) } : refuse('a rate of 0');
}

function range(value: Json | undefined): Range {
  const { start_time, duration } = object(value, 'TimeRange.1');
  const read = { start: time(start_time), duration: time(duration) };
  if (read.duration.value < 0) refuse('a negative duration');
  return read;
}

const ownOf = ({ metadata }: Fields): Fields => {
  const own = isFields(metadata) ? metadata.rollbook : undefined;
  return isFields(own) ? own : {};
};

function media(clip: Fields): Pick<ReadClip, 'url' | 'available'> {
  const references = isFields(clip.media_references) ? clip.media_references : refuse('no media references');
  const active = references[textOf(clip.active_media_reference_key)];
  const found = object(active, 'ExternalReference.1', 'MissingReference.1');
  return {
    url: 'target_url' in found ? decodeURIComponent(textOf(found.target_url)) : null,
    available: found.available_range === null ? null : range(found.available_range),
  };
}

const markersOf = (item: Fields): ReadClip['markers'] =>
  listOf(item.markers).map((one) => {
    const { name, color, comment, marked_range } = object(one, 'Marker.2');
    if (!COLORS.includes(textOf(color))) refuse(`a marker in ${color}`);
    return {
      name: textOf(name),
      color: textOf(color),
      comment: textOf(comment),
      at: range(marked_range).start.value,
    };
  });

function track(value: Json): ReadTrack {
  const read = object(value, 'Track.1');
  if (read.kind !== 'Audio') refuse(`a track of ${read.kind}`);
  let at = 0;
  const clips = listOf(read.children).flatMap((child): ReadClip[] => {
    const item = object(child, 'Clip.2', 'Gap.1');
    const source = range(item.source_range);
    const from = at;
    at += source.duration.value;
    if (item.OTIO_SCHEMA === 'Gap.1') return [];
    return [
      {
        name: textOf(item.name),
        ...media(item),
        range: source,
        at: from,
        markers: markersOf(item),
        own: ownOf(item),
      },
    ];
  });
  return { name: textOf(read.name), own: ownOf(read), clips };
}

export function readOtio(text: string): ReadTimeline {
  const read = object(JSON.parse(text) as Json, 'Timeline.1');
  const stack = object(read.tracks, 'Stack.1');
  return {
    name: textOf(read.name),
    start: read.global_start_time === null ? null : time(read.global_start_time),
    own: ownOf(read),
    tracks: listOf(stack.children).map(track),
  };
}
