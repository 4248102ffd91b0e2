import { describe, expect, test } from 'vitest';
import { TAKE_TYPES } from '../../../src/wave/ixml/take-types.ts';
import { recoverXml } from '../../../src/wave/xml/xml-recovery.ts';
import { parseXml } from '../../../src/wave/xml/xml-tree.ts';
import { bext, data, fmt, ixml } from '../build-wave.ts';
import { describedChunks, describedIXml } from '../described.ts';
import { SPECIFICATION_VALUES } from '../ixml-sample.ts';

const sample = () =>
  describedChunks([
    bext({ description: 'Jetty, wide', date: '2026-10-07', timeReference: 48_048_000 }),
    fmt({ channels: 2 }),
    data(600),
    ixml(SPECIFICATION_VALUES),
  ]);

describe('iXML', () => {
  test('is read with all that a take needs (values of the sample in iXML 3.01)', async () => {
    const { ixml: read } = await sample();
    expect(read).toMatchObject({
      wellFormed: true,
      project: 'The Long Jetty',
      scene: '21',
      take: '33',
      tape: 'R04',
      note: 'tail slate',
      takeTypes: ['FALSE_START', 'PICKUP'],
      circled: true,
      fileSet: {
        totalFiles: 1,
        familyUid: 'AAABBB12345202610070945123840000',
        index: '1',
      },
      bext: { description: 'Jetty, wide', timeReference: 48_048_000 },
    });
    expect(read?.tracks).toEqual([
      { channelIndex: 1, interleaveIndex: 1, name: 'Boom', function: 'M-MID_SIDE' },
      { channelIndex: 3, interleaveIndex: 2, name: 'Keeper', function: undefined },
    ]);
  });

  test('gives the rate that speeds stand for', async () => {
    const { ixml: read } = await sample();
    expect(read?.speed).toEqual({
      rate: '23.976',
      fileSampleRate: 48_000,
      audioBitDepth: 24,
      digitizerSampleRate: 48_048,
      timestampSamples: 48_048_000,
      timestampSampleRate: 48_000,
    });
  });

  test('gives sync points with their place in samples', async () => {
    const { ixml: read } = await sample();
    expect(read?.syncPoints).toEqual([
      {
        function: 'PRE_RECORD_SAMPLECOUNT',
        samples: 480_000,
      },
      {
        function: 'SLATE_GENERIC',
        samples: 6_544_645,
      },
    ]);
  });

  test('flags only what is odd about the sample: a digitizer 0.1 % fast', async () => {
    const { warnings } = await sample();
    expect(warnings.map(({ code }) => code)).toEqual(['digitizer-rate-differs']);
  });

  test('needs no element at all', async () => {
    const { ixml: read, warnings } = await describedIXml('');
    expect(read).toMatchObject({
      scene: undefined,
      takeTypes: [],
      circled: false,
      tracks: [],
      syncPoints: [],
    });
    expect(warnings).toEqual([]);
  });

  test('of any version is read by its elements, never by the version', async () => {
    for (const version of [
      '1.27',
      '1.3',
      '1.5',
      '1.52',
      '1.61',
      '2.0',
      '2.10',
      '3.0',
      '3.01',
      '9.99',
      'draft',
    ]) {
      const { ixml: read } = await describedIXml(`<IXML_VERSION>${version}</IXML_VERSION><SCENE>5</SCENE>`);
      expect(read?.scene, version).toBe('5');
    }
  });

  test('joins high and low words as numbers and not as digits: 1 and 197832704 are 4492800000', async () => {
    const { ixml: read } = await describedIXml(
      '<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>1</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_HI>' +
        '<TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>197832704</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>',
    );
    expect(read?.speed.timestampSamples).toBe(4_492_800_000);
  });

  test.each([
    ['', []],
    ['DEFAULT', []],
    ['FALSE_START,PICKUP', ['FALSE_START', 'PICKUP']],
    [' no_good , PICKUP ', ['NO_GOOD', 'PICKUP']],
    ['PICKUP,Own_Word,PICKUP', ['PICKUP', 'Own_Word']],
    [
      'REHEARSAL,ANNOUNCEMENT,SOUND_GUIDE,WILD_TRACK',
      ['REHEARSAL', 'ANNOUNCEMENT', 'SOUND_GUIDE', 'WILD_TRACK'],
    ],
  ])('reads the take type %o as %o (iXML 3.01, TAKE_TYPE)', async (written, words) => {
    expect((await describedIXml(`<TAKE_TYPE>${written}</TAKE_TYPE>`)).resolved.takeTypes).toEqual(words);
  });

  test('knows the seven words of the dictionary besides DEFAULT', () => {
    expect(TAKE_TYPES).toHaveLength(7);
  });

  test('keeps every word of the function dictionary as written, trimmed', async () => {
    const words =
      'M-MID_SIDE S-MID_SIDE X-X_Y Y-X_Y MIX L-MIX R-MIX LEFT RIGHT F-DMS 8-DMS R-DMS L-LCR C-LCR R-LCR'.split(
        ' ',
      );
    const tracks = words.map((word) => `<TRACK><FUNCTION>${word} </FUNCTION></TRACK>`).join('');
    const { ixml: read } = await describedIXml(`<TRACK_LIST>${tracks}</TRACK_LIST>`);
    expect(read?.tracks.map((track) => track.function)).toEqual(words);
  });
});

describe('the recovering reader', () => {
  test('agrees with the XML parser on a well-formed document, private elements aside', () => {
    const text = `<BWFXML>${SPECIFICATION_VALUES.replace(/<PRIVATE_TAG>.*<\/PRIVATE_TAG>/, '')}</BWFXML>`;
    expect(recoverXml(text).children).toEqual(parseXml(text)?.children);
  });
});
