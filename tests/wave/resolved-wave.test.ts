import { describe, expect, test } from 'vitest';
import { readDescriptionLines } from '../../src/wave/description-lines.ts';
import { bext, data, fmt, ixml } from './build-wave.ts';
import { codesOf, describedChunks } from './described.ts';

const LINES =
  'sSPEED=023.976-ND\r\nsTAKE=3\r\nsUBITS=$12311801\r\nsSCENE=21A\r\nsTAPE=R04\r\nsTRK1=Boom\r\nsTRK2=Keeper\r\nsNOTE=tail slate\r\nsFILENAME=21A-3.WAV\r\n';

describe('key=value lines of a description (common practice, no source)', () => {
  test('with s before the keys give scene, take, roll, speed, user bits and tracks', () => {
    expect(readDescriptionLines(LINES)).toMatchObject({
      scene: '21A',
      take: '3',
      tape: 'R04',
      note: 'tail slate',
      userBits: '12311801',
      speed: '023.976-ND',
      rate: '23.976',
      tracks: [
        { number: 1, name: 'Boom' },
        { number: 2, name: 'Keeper' },
      ],
    });
  });

  test('with i before the keys are the same (iXML usage page)', () => {
    expect(readDescriptionLines('iSCENE=5\niTAKE=1\niTAPE=R1\niNOTE=wild')).toMatchObject({
      scene: '5',
      take: '1',
      tape: 'R1',
      note: 'wild',
    });
  });

  test('keep an equals sign in the value, and the first of two lines', () => {
    expect(readDescriptionLines('sNOTE=a=b\nsNOTE=c')).toMatchObject({ note: 'a=b' });
  });

  test.each(['', 'Kitchen, wide', 'see scene=5', 'E=mc2 and so on'])('are not seen in %o', (text) => {
    expect(readDescriptionLines(text)?.scene).toBeUndefined();
  });

  test.each([
    ['025.000-ND', '25'],
    ['029.97-DF', '29.97DF'],
    ['029.97-ND', '29.97'],
    ['030.000-DF', '30DF'],
    ['fast', undefined],
  ])('name the speed %s as %s', (written, rate) => {
    expect(readDescriptionLines(`sSPEED=${written}`)?.rate).toBe(rate);
  });
});

describe('a value said twice', () => {
  test('is taken from iXML over description lines (iXML usage page), and a difference is shown', async () => {
    const file = await describedChunks([
      bext({ description: LINES }),
      fmt({ channels: 2 }),
      data(600),
      ixml('<SCENE>21B</SCENE><TAKE>3</TAKE><TAPE>R05</TAPE>'),
    ]);
    expect(file.resolved).toMatchObject({
      scene: '21B',
      take: '3',
      tape: 'R05',
      note: 'tail slate',
      rate: '23.976',
    });
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'scene', kept: '21B', other: '21A', at: 12 },
      { code: 'value-differs', field: 'tape', kept: 'R05', other: 'R04', at: 12 },
    ]);
  });

  test('as a note cut short by the description is no difference', async () => {
    const note = 'a long note that the description could not hold whole';
    const file = await describedChunks([
      bext({ description: `sNOTE=${note.slice(0, 20)}` }),
      fmt(),
      data(),
      ixml(`<NOTE>${note}</NOTE>`),
    ]);
    expect(file.resolved.note).toBe(note);
    expect(file.warnings).toEqual([]);
  });

  test('is taken from fmt over SPEED for sample rate and bits (note of iXML 1.5)', async () => {
    const file = await describedChunks([
      fmt({ sampleRate: 96_000 }),
      data(),
      ixml('<SPEED><FILE_SAMPLE_RATE>48000</FILE_SAMPLE_RATE><AUDIO_BIT_DEPTH>16</AUDIO_BIT_DEPTH></SPEED>'),
    ]);
    expect(file.resolved).toMatchObject({ sampleRate: 96_000, bits: 24 });
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'sampleRate', kept: 96_000, other: 48_000 },
      { code: 'value-differs', field: 'bits', kept: 24, other: 16 },
    ]);
  });

  test('is taken from bext over SPEED for the timestamp', async () => {
    const file = await describedChunks([
      bext({ timeReference: 96_000 }),
      fmt(),
      data(),
      ixml('<SPEED><TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO>48000</TIMESTAMP_SAMPLES_SINCE_MIDNIGHT_LO></SPEED>'),
    ]);
    expect(file.resolved.start).toMatchObject({ samples: 96_000, source: 'bext' });
    expect(file.warnings).toMatchObject([{ code: 'timestamp-differs', kept: 96_000, other: 48_000 }]);
  });

  test('shows where the copy of bext in iXML disagrees', async () => {
    const file = await describedChunks([
      bext({
        description: 'a  b\r\n',
        originator: 'X',
        date: '2026-10-07',
        time: '09:45:12',
        timeReference: 5,
      }),
      fmt(),
      data(),
      ixml(
        '<BEXT><BWF_DESCRIPTION>a b</BWF_DESCRIPTION><BWF_ORIGINATOR>Y</BWF_ORIGINATOR>' +
          '<BWF_ORIGINATION_DATE>2026:10:07</BWF_ORIGINATION_DATE><BWF_TIME_REFERENCE_LOW>6</BWF_TIME_REFERENCE_LOW></BEXT>',
      ),
    ]);
    expect(file.warnings).toMatchObject([
      { code: 'value-differs', field: 'bext.originator', kept: 'X', other: 'Y' },
      { code: 'value-differs', field: 'bext.timeReference', kept: 5, other: 6 },
    ]);
  });
});

describe('tracks', () => {
  test('stand by their place in the interleave, whatever the order of the list', async () => {
    const file = await describedChunks([
      fmt({ channels: 3 }),
      data(900),
      ixml(
        '<TRACK_LIST><TRACK><CHANNEL_INDEX>5</CHANNEL_INDEX><INTERLEAVE_INDEX>3</INTERLEAVE_INDEX><NAME>c</NAME></TRACK>' +
          '<TRACK><CHANNEL_INDEX>1</CHANNEL_INDEX><INTERLEAVE_INDEX>1</INTERLEAVE_INDEX><NAME>a</NAME></TRACK></TRACK_LIST>',
      ),
    ]);
    expect(file.resolved.tracks).toEqual([
      { interleave: 1, channel: 1, name: 'a', function: undefined },
      { interleave: 2, channel: undefined, name: undefined, function: undefined },
      { interleave: 3, channel: 5, name: 'c', function: undefined },
    ]);
  });

  test('without a place take the next one free', async () => {
    const file = await describedChunks([
      fmt({ channels: 2 }),
      data(600),
      ixml('<TRACK_LIST><TRACK><NAME>a</NAME></TRACK><TRACK><NAME>b</NAME></TRACK></TRACK_LIST>'),
    ]);
    expect(file.resolved.tracks.map(({ name }) => name)).toEqual(['a', 'b']);
  });

  test('beyond the channels of the file are reported', async () => {
    const file = await describedChunks([
      fmt(),
      data(),
      ixml(
        '<TRACK_LIST><TRACK_COUNT>9</TRACK_COUNT><TRACK><INTERLEAVE_INDEX>4</INTERLEAVE_INDEX><NAME>a</NAME></TRACK></TRACK_LIST>',
      ),
    ]);
    expect(codesOf(file)).toEqual(['track-count-differs', 'track-index-out-of-range']);
    expect(file.resolved.tracks).toHaveLength(1);
  });

  test('are named by description lines where iXML has no list', async () => {
    const stereo = await describedChunks([bext({ description: LINES }), fmt({ channels: 2 }), data(600)]);
    expect(stereo.resolved.tracks).toMatchObject([
      { interleave: 1, channel: 1, name: 'Boom' },
      { interleave: 2, channel: 2, name: 'Keeper' },
    ]);
    const mono = await describedChunks([bext({ description: 'sTRK4=Spare' }), fmt(), data()]);
    expect(mono.resolved.tracks).toMatchObject([{ interleave: 1, channel: 4, name: 'Spare' }]);
  });

  test('of a damaged format with 65535 channels end at 1024', async () => {
    const file = await describedChunks([fmt({ channels: 65_535, bits: 8 }), data(0)]);
    expect(file.resolved.tracks).toHaveLength(1024);
  });
});
