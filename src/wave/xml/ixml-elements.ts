// Elements of iXML 3.01 by content; the recovering reader needs to know which can contain others.

/** Elements that hold elements. USER may hold text or elements. */
export const IXML_OBJECTS: ReadonlySet<string> = new Set([
  ...['BWFXML', 'SPEED', 'SYNC_POINT_LIST', 'SYNC_POINT', 'LOUDNESS', 'HISTORY', 'FILE_SET'],
  ...['TRACK_LIST', 'TRACK', 'BEXT', 'USER', 'LOCATION'],
]);

const UNDER_ROOT = [
  ...[
    'SPEED',
    'SYNC_POINT_LIST',
    'LOUDNESS',
    'HISTORY',
    'FILE_SET',
    'TRACK_LIST',
    'BEXT',
    'USER',
    'LOCATION',
  ],
  ...[
    'IXML_VERSION',
    'PROJECT',
    'SCENE',
    'TAKE',
    'TAPE',
    'TAKE_TYPE',
    'NO_GOOD',
    'FALSE_START',
    'WILD_TRACK',
  ],
  ...['CIRCLED', 'FILE_UID', 'UBITS', 'PRE_RECORD_SAMPLECOUNT'],
];

/** An element's required parent; its start tag found elsewhere ends whatever was left open. */
export const IXML_PARENT: ReadonlyMap<string, string> = new Map([
  ['SYNC_POINT', 'SYNC_POINT_LIST'],
  ['TRACK', 'TRACK_LIST'],
  ...UNDER_ROOT.map((name): [string, string] => [name, 'BWFXML']),
]);

/** Elements with text that are allowed in several places, or whose place is not worth enforcing. */
export const IXML_LEAVES: ReadonlySet<string> = new Set([
  'NOTE',
  ...[
    'MASTER_SPEED',
    'CURRENT_SPEED',
    'TIMECODE_RATE',
    'TIMECODE_FLAG',
    'FILE_SAMPLE_RATE',
    'AUDIO_BIT_DEPTH',
  ],
  ...['DIGITIZER_SAMPLE_RATE', 'TIMESTAMP_SAMPLE_RATE'],
  ...['TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI', 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO'],
  ...['TIMESTAMP_SAMPLE_SINCE_MIDNIGHT_HI', 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT_LO'],
  ...['SYNC_POINT_COUNT', 'SYNC_POINT_TYPE', 'SYNC_POINT_FUNCTION', 'SYNC_POINT_COMMENT', 'SYNC_POINT_LOW'],
  ...['SYNC_POINT_HIGH', 'SYNC_POINT_EVENT_DURATION'],
  ...['LOUDNESS_VALUE', 'LOUDNESS_RANGE', 'MAX_TRUE_PEAK_LEVEL', 'MAX_MOMENTARY_LOUDNESS'],
  ...['MAX_SHORT_TERM_LOUDNESS', 'ORIGINAL_FILENAME', 'PARENT_FILENAME', 'PARENT_UID', 'CURRENT_FILENAME'],
  ...['TOTAL_FILES', 'FAMILY_UID', 'FAMILY_NAME', 'FILE_SET_INDEX', 'FILE_SET_START_TIME_HI'],
  ...['FILE_SET_START_TIME_LO', 'TRACK_COUNT', 'CHANNEL_INDEX', 'INTERLEAVE_INDEX', 'NAME', 'FUNCTION'],
  ...['BWF_DESCRIPTION', 'BWF_ORIGINATOR', 'BWF_ORIGINATOR_REFERENCE', 'BWF_ORIGINATION_DATE'],
  ...['BWF_ORIGINATION_TIME', 'BWF_TIME_REFERENCE_LOW', 'BWF_TIME_REFERENCE_HIGH', 'BWF_VERSION', 'BWF_UMID'],
  ...['BWF_RESERVED', 'BWF_CODING_HISTORY', 'BWF_LOUDNESS_VALUE', 'BWF_LOUDNESS_RANGE'],
  ...['BWF_MAX_TRUE_PEAK_LEVEL', 'BWF_MAX_MOMENTARY_LOUDNESS', 'BWF_MAX_SHORT_TERM_LOUDNESS'],
  ...['LOCATION_NAME', 'LOCATION_GPS', 'LOCATION_ALTITUDE', 'LOCATION_TYPE', 'LOCATION_TIME'],
]);
