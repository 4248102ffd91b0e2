import { describe, expect, test } from 'vitest';
import { childOf, textOf, type XmlNode } from '../../../src/wave/xml/xml-node.ts';
import { recoverXml } from '../../../src/wave/xml/xml-recovery.ts';

/** Every element of iXML 3.01 that holds a value, by the element it stands in; older and misspelt ones from memory. */
const VALUES: readonly (readonly [within: string, names: string])[] = [
  [
    '',
    'IXML_VERSION PROJECT SCENE TAKE TAPE TAKE_TYPE NO_GOOD FALSE_START WILD_TRACK CIRCLED FILE_UID UBITS NOTE',
  ],
  ['', 'PRE_RECORD_SAMPLECOUNT'],
  ['SPEED', 'NOTE MASTER_SPEED CURRENT_SPEED TIMECODE_RATE TIMECODE_FLAG FILE_SAMPLE_RATE AUDIO_BIT_DEPTH'],
  ['SPEED', 'DIGITIZER_SAMPLE_RATE TIMESTAMP_SAMPLE_RATE'],
  ['SPEED', 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO'],
  ['SPEED', 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT_HI TIMESTAMP_SAMPLE_SINCE_MIDNIGHT_LO'],
  ['SYNC_POINT_LIST', 'SYNC_POINT_COUNT'],
  ['SYNC_POINT_LIST/SYNC_POINT', 'SYNC_POINT_TYPE SYNC_POINT_FUNCTION SYNC_POINT_COMMENT SYNC_POINT_LOW'],
  ['SYNC_POINT_LIST/SYNC_POINT', 'SYNC_POINT_HIGH SYNC_POINT_EVENT_DURATION'],
  ['LOUDNESS', 'LOUDNESS_VALUE LOUDNESS_RANGE MAX_TRUE_PEAK_LEVEL MAX_MOMENTARY_LOUDNESS'],
  ['LOUDNESS', 'MAX_SHORT_TERM_LOUDNESS'],
  ['HISTORY', 'ORIGINAL_FILENAME PARENT_FILENAME PARENT_UID CURRENT_FILENAME'],
  [
    'FILE_SET',
    'TOTAL_FILES FAMILY_UID FAMILY_NAME FILE_SET_INDEX FILE_SET_START_TIME_HI FILE_SET_START_TIME_LO',
  ],
  ['TRACK_LIST', 'TRACK_COUNT'],
  ['TRACK_LIST/TRACK', 'CHANNEL_INDEX INTERLEAVE_INDEX NAME FUNCTION'],
  [
    'BEXT',
    'BWF_DESCRIPTION BWF_ORIGINATOR BWF_ORIGINATOR_REFERENCE BWF_ORIGINATION_DATE BWF_ORIGINATION_TIME',
  ],
  ['BEXT', 'BWF_TIME_REFERENCE_LOW BWF_TIME_REFERENCE_HIGH BWF_VERSION BWF_UMID BWF_RESERVED'],
  ['BEXT', 'BWF_CODING_HISTORY BWF_LOUDNESS_VALUE BWF_LOUDNESS_RANGE BWF_MAX_TRUE_PEAK_LEVEL'],
  ['BEXT', 'BWF_MAX_MOMENTARY_LOUDNESS BWF_MAX_SHORT_TERM_LOUDNESS'],
  ['LOCATION', 'LOCATION_NAME LOCATION_GPS LOCATION_ALTITUDE LOCATION_TYPE LOCATION_TIME'],
  ['USER', 'ANY_NAME'],
];

const PLACES = VALUES.flatMap(([within, names]) => names.split(' ').map((name) => [within, name] as const));

/** The element at the end of a path such as 'TRACK_LIST/TRACK'. */
const at = (root: XmlNode, path: string): XmlNode | undefined =>
  path.split('/').reduce<XmlNode | undefined>((node, name) => (name ? childOf(node, name) : node), root);

describe('a document that is not well-formed', () => {
  test.each(PLACES)('still gives %s %s, and what stands before and behind it', (within, name) => {
    const [before, behind] = [name === 'TAPE' ? 'UBITS' : 'TAPE', name === 'SCENE' ? 'TAKE' : 'SCENE'];
    const open = within.split('/').map((one) => one && `<${one}>`);
    // No end tag but the value's own: what follows must end the rest.
    const root = recoverXml(
      `<BWFXML><${before}>R & S</${before}>${open.join('')}<${name}>v & w</${name}><${behind}>5`,
    );
    expect(at(root, within)?.children.filter((child) => child.name === name)).toEqual([
      { name, text: 'v & w', children: [] },
    ]);
    expect(textOf(root, before)).toBe('R & S');
    expect(textOf(root, behind)).toBe('5');
  });

  test.each(PLACES.filter(([within]) => within !== 'USER'))(
    'ends %s %s where its end tag is missing',
    (within, name) => {
      const behind = name === 'SCENE' ? 'TAKE' : 'SCENE';
      const open = within.split('/').map((one) => one && `<${one}>`);
      const root = recoverXml(`<BWFXML>${open.join('')}<${name}>v & w<${behind}>5</${behind}>`);
      expect(textOf(at(root, within), name)).toBe('v & w');
      expect(textOf(root, behind)).toBe('5');
    },
  );

  test('passes elements over that iXML does not have, and keeps their words where they stand', () => {
    const root = recoverXml(
      '<BWFXML><SCENE>5<OWN_TAG>A</OWN_TAG></SCENE><OWN_TAG>B</OWN_TAG>&<TAKE>2</TAKE>',
    );
    expect(root.children).toEqual([
      { name: 'SCENE', text: '5A', children: [] },
      { name: 'TAKE', text: '2', children: [] },
    ]);
  });

  test('keeps the tracks and sync points that follow one another without an end tag', () => {
    const root = recoverXml(
      '<TRACK_LIST><TRACK><NAME>Boom<TRACK><NAME>P & Q</TRACK_LIST><SYNC_POINT_LIST><SYNC_POINT><SYNC_POINT><SCENE>5',
    );
    expect(at(root, 'TRACK_LIST')?.children.map((track) => textOf(track, 'NAME'))).toEqual(['Boom', 'P & Q']);
    expect(at(root, 'SYNC_POINT_LIST')?.children).toHaveLength(2);
    expect(textOf(root, 'SCENE')).toBe('5');
  });

  test('is read up to 20,000 elements', () => {
    expect(recoverXml(`&${'<NOTE>a</NOTE>'.repeat(20_001)}`).children).toHaveLength(20_000);
  });
});
