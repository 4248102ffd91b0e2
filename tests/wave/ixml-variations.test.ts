import { describe, expect, test } from 'vitest';
import { bytesOf, chunk, data, fmt, join } from './build-wave.ts';
import { codesOf, describedChunks, describedIXml } from './described.ts';

const withPayload = (payload: Uint8Array | string, more = {}) =>
  describedChunks([fmt(), data(), chunk('iXML', payload, more)]);

const DOCUMENT = '<?xml version="1.0"?><BWFXML><SCENE>21A</SCENE><TAKE>3</TAKE><NOTE>Größe</NOTE></BWFXML>';

const utf16 = (text: string, littleEndian: boolean): Uint8Array =>
  Uint8Array.from(
    [...text].flatMap((character) => {
      const code = character.charCodeAt(0);
      return littleEndian ? [code & 255, code >> 8] : [code >> 8, code & 255];
    }),
  );

describe('iXML in the wild', () => {
  test.each([
    ['with NULs behind it', join(new TextEncoder().encode(DOCUMENT), new Uint8Array(301))],
    ['with NULs before it', join(new Uint8Array(3), new TextEncoder().encode(DOCUMENT))],
    ['with a NUL inside a text', new TextEncoder().encode(DOCUMENT.replace('21A', '21\0A'))],
    ['with a UTF-8 byte-order mark', join(bytesOf('\u00ef\u00bb\u00bf'), new TextEncoder().encode(DOCUMENT))],
    ['as UTF-16 with a little-endian mark', join(bytesOf('\u00ff\u00fe'), utf16(DOCUMENT, true))],
    ['as UTF-16 with a big-endian mark', join(bytesOf('\u00fe\u00ff'), utf16(DOCUMENT, false))],
    ['as UTF-16 little-endian without a mark', join(utf16(DOCUMENT, true), new Uint8Array(7))],
    ['as UTF-16 big-endian without a mark', utf16(DOCUMENT, false)],
    ['without an XML declaration', new TextEncoder().encode(DOCUMENT.replace(/<\?.*?\?>/, ''))],
    ['with white space before the declaration', new TextEncoder().encode(`\r\n  ${DOCUMENT}`)],
    [
      'with growth room between elements',
      new TextEncoder().encode(DOCUMENT.replaceAll('><', `>${' \n'.repeat(500)}<`)),
    ],
    [
      'with attributes and comments',
      new TextEncoder().encode(DOCUMENT.replace('<SCENE>', '<!-- a --><SCENE a="1">')),
    ],
    [
      'in small letters',
      new TextEncoder().encode(DOCUMENT.replace(/<\/?[A-Z]+>/g, (tag) => tag.toLowerCase())),
    ],
  ])('%s is read as well-formed', async (_, payload) => {
    const file = await withPayload(payload);
    expect(file.ixml).toMatchObject({ wellFormed: true, scene: '21A', take: '3', note: 'Größe' });
    expect(file.warnings).toEqual([]);
  });

  test('as Latin-1 is read with its letters and flagged', async () => {
    const file = await withPayload(bytesOf(DOCUMENT));
    expect(file.ixml?.note).toBe('Größe');
    expect(codesOf(file)).toEqual(['ixml-text-not-utf8']);
  });

  // Bytes from the indexes of the Encoding Standard (WHATWG): Shift_JIS by jis0208, windows-1251.
  test.each([
    ['Shift_JIS', '\x89\xb9\x90\xba', '音声'],
    ['windows-1251', '\xc1\xee\xf0\xe8\xf1', 'Борис'],
    ['WINDOWS-1251', '\xc1\xee\xf0\xe8\xf1', 'Борис'],
  ])('as %s is read by what its declaration says, and nothing is flagged', async (encoding, bytes, text) => {
    const document = `<?xml version="1.0" encoding="${encoding}"?><BWFXML><NOTE>${bytes}</NOTE></BWFXML>`;
    const file = await withPayload(bytesOf(document));
    expect(file.ixml?.note).toBe(text);
    expect(file.warnings).toEqual([]);
  });

  test.each(['no-such-encoding', 'Shift_JIS'])(
    'that cannot be in its declared %s is read as Latin-1 and flagged',
    async (encoding) => {
      const document = `<?xml version="1.0" encoding="${encoding}"?><BWFXML><NOTE>Gr\xf6\xdfe \xff</NOTE></BWFXML>`;
      const file = await withPayload(bytesOf(document));
      expect(file.ixml?.note).toBe('Größe ÿ');
      expect(codesOf(file)).toEqual(['ixml-text-not-utf8']);
    },
  );

  test('in UTF-8 is read so whatever its declaration says', async () => {
    const document = '<?xml version="1.0" encoding="windows-1251"?><BWFXML><NOTE>Größe</NOTE></BWFXML>';
    expect((await withPayload(document)).ixml?.note).toBe('Größe');
  });

  test('with CDATA and references is unescaped once', async () => {
    const file = await describedIXml('<NOTE>A &amp;amp; B &#x41;&#66; &lt;3 <![CDATA[<b> & ]]></NOTE>');
    expect(file.ixml?.note).toBe('A &amp; B AB <3 <b> &');
  });

  test.each([
    ['a bare &', '<SCENE>5</SCENE><NOTE>boom & lav</NOTE><TAKE>2</TAKE>', 'boom & lav'],
    ['a bare <', '<SCENE>5</SCENE><NOTE>level < -20</NOTE><TAKE>2</TAKE>', 'level < -20'],
    ['a bare < before a letter', '<SCENE>5</SCENE><NOTE>a <b c</NOTE><TAKE>2</TAKE>', 'a <b c'],
    ['a missing end tag', '<SCENE>5<NOTE>plain</NOTE><TAKE>2', 'plain'],
    [
      'a missing end tag of an object',
      '<SPEED><NOTE>slow</NOTE><SCENE>5</SCENE><NOTE>plain</NOTE><TAKE>2</TAKE>',
      'plain',
    ],
    ['a stray end tag', '</SPEED><SCENE>5</SCENE></USER><NOTE>plain</NOTE></TAKE><TAKE>2</TAKE>', 'plain'],
  ])('with %s is recovered element by element', async (_, inside, note) => {
    const file = await describedIXml(inside);
    expect(file.ixml).toMatchObject({ wellFormed: false, scene: '5', take: '2', note });
    expect(codesOf(file)).toEqual(['ixml-ill-formed']);
  });

  test('recovered keeps tracks apart', async () => {
    const file = await describedIXml(
      '<NOTE>R&B</NOTE><TRACK_LIST><TRACK><NAME>Boom<CHANNEL_INDEX>1</CHANNEL_INDEX></TRACK>' +
        '<TRACK><NAME>P & Q</NAME><CHANNEL_INDEX>2</CHANNEL_INDEX></TRACK></TRACK_LIST><SCENE>5</SCENE',
    );
    expect(file.ixml?.tracks).toMatchObject([
      { name: 'Boom', channelIndex: 1 },
      { name: 'P & Q', channelIndex: 2 },
    ]);
  });

  test('cut off in the middle gives what came before', async () => {
    const file = await withPayload('<BWFXML><PROJECT>Jetty</PROJECT><SCENE>5</SCENE><NOTE>half a no');
    expect(file.ixml).toMatchObject({ project: 'Jetty', scene: '5', note: 'half a no', wellFormed: false });
  });

  test('with spaces inside its tags is trimmed', async () => {
    const file = await describedIXml(
      '<SCENE> 5 </SCENE><TRACK_LIST><TRACK><NAME>\n Boom\t</NAME></TRACK></TRACK_LIST>',
    );
    expect(file.resolved.scene).toBe('5');
    expect(file.resolved.tracks[0]?.name).toBe('Boom');
  });

  test.each([
    ['TRUE', true],
    ['True', true],
    ['true', true],
    [' TRUE ', true],
    ['FALSE', false],
    ['false', false],
    ['', false],
    ['1', false],
  ])('CIRCLED %o is %s: present is not yet circled', async (written, circled) => {
    expect((await describedIXml(`<CIRCLED>${written}</CIRCLED>`)).resolved.circled).toBe(circled);
  });

  test.each([
    ['23.976', '', '23.976'],
    ['23.98', 'NDF', '23.976'],
    ['25', '', '25'],
    ['25/1', 'NDF', '25'],
    ['24000/1000', '', '24'],
    ['2997ND', '', '29.97'],
    ['30000/1001', 'DF', '29.97DF'],
    ['30000/1001', 'NDF', '29.97'],
    ['30/1', 'DF', '30DF'],
    ['48000/1001', '', '47.952'],
    ['60000/1001', 'DF', '59.94DF'],
  ])('the rate %s %s is %s', async (rate, flag, id) => {
    const { ixml } = await describedIXml(
      `<SPEED><TIMECODE_RATE>${rate}</TIMECODE_RATE><TIMECODE_FLAG>${flag}</TIMECODE_FLAG></SPEED>`,
    );
    expect(ixml?.speed).toMatchObject({ rate: id });
  });

  test('a rate nobody uses is reported', async () => {
    const file = await describedIXml('<SPEED><TIMECODE_RATE>12.5</TIMECODE_RATE></SPEED>');
    expect(file.ixml?.speed).toMatchObject({ rate: undefined });
    expect(file.warnings).toMatchObject([
      { code: 'ixml-rate-unknown', element: 'TIMECODE_RATE', text: '12.5' },
    ]);
  });

  test.each([
    ['at root level', 'TIMESTAMP_SAMPLES_SINCE_MIDNIGHT', ''],
    ['misspelt', 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT', 'SPEED'],
    ['misspelt at root level', 'TIMESTAMP_SAMPLE_SINCE_MIDNIGHT', ''],
  ])('timestamps %s are found', async (_, name, parent) => {
    const inside = `<${name}_HI>0</${name}_HI><${name}_LO>48048000</${name}_LO>`;
    const file = await describedIXml(parent ? `<${parent}>${inside}</${parent}>` : inside);
    expect(file.resolved.start).toMatchObject({ samples: 48_048_000, source: 'ixml' });
  });

  test('a count of 1.0 is 1', async () => {
    const file = await describedIXml('<FILE_SET><TOTAL_FILES>1.0</TOTAL_FILES></FILE_SET>');
    expect(file.ixml?.fileSet?.totalFiles).toBe(1);
  });

  test('of two NOTE elements the one under the root is the note, whichever comes first', async () => {
    const file = await describedIXml('<SPEED><NOTE>speed</NOTE></SPEED><NOTE>take</NOTE>');
    expect(file.ixml).toMatchObject({ note: 'take' });
    const only = await describedIXml('<SPEED><NOTE>speed</NOTE></SPEED>');
    expect(only.resolved.note).toBeUndefined();
  });

  test('an empty chunk is reported and nothing more', async () => {
    for (const payload of ['', ' \r\n', '\0\0\0\0', 'no tags here']) {
      const file = await withPayload(payload);
      expect(file.ixml).toBeUndefined();
      expect(codesOf(file).at(-1)).toBe('ixml-empty');
    }
  });

  test('of several chunks the last well-formed one counts', async () => {
    const file = await describedChunks([
      fmt(),
      data(),
      chunk('iXML', '<BWFXML><SCENE>1</SCENE></BWFXML>'),
      chunk('iXML', '<BWFXML><SCENE>2</SCENE></BWFXML>'),
      chunk('iXML', '<BWFXML><SCENE>3</SCENE>'),
    ]);
    expect(file.ixml?.scene).toBe('2');
    expect(codesOf(file)).toEqual(['chunk-repeated', 'ixml-ill-formed']);
  });

  test('old flags and TAKE_TYPE are taken together', async () => {
    const file = await describedIXml(
      '<NO_GOOD>TRUE</NO_GOOD><FALSE_START>false</FALSE_START><WILD_TRACK>True</WILD_TRACK><TAKE_TYPE>PICKUP,NO_GOOD</TAKE_TYPE>',
    );
    expect(file.resolved.takeTypes).toEqual(['PICKUP', 'NO_GOOD', 'WILD_TRACK']);
  });

  test('the pre-record count of old versions stands at root level', async () => {
    const file = await describedIXml('<PRE_RECORD_SAMPLECOUNT>480000</PRE_RECORD_SAMPLECOUNT>');
    expect(file.ixml?.preRecordSamples).toBe(480_000);
  });

  test('a number that is none is reported by the name of its element', async () => {
    const file = await describedIXml('<SPEED><FILE_SAMPLE_RATE>48k</FILE_SAMPLE_RATE></SPEED>');
    expect(file.warnings).toMatchObject([
      { code: 'ixml-number-unreadable', element: 'FILE_SAMPLE_RATE', text: '48k' },
    ]);
  });

  test.each([
    ['missing', ''],
    ['behind the tracks', '<TRACK_COUNT>2</TRACK_COUNT>'],
  ])('a TRACK_COUNT %s does not matter', async (_, count) => {
    const file = await describedIXml(
      `<TRACK_LIST><TRACK><NAME>a</NAME></TRACK><TRACK><NAME>b</NAME></TRACK>${count}</TRACK_LIST>`,
    );
    expect(file.ixml?.tracks).toHaveLength(2);
    expect(codesOf(file)).not.toContain('track-count-differs');
  });
});

/** What grows with the square of the text would take minutes; this only has to hold on a slow, busy machine. */
const MOST_MS = 10_000;

describe('iXML of ill will', { timeout: 30_000 }, () => {
  test('with entities of its own has them neither expanded nor fetched', async () => {
    const file = await withPayload(
      '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;"><!ENTITY c SYSTEM "file:///etc/hosts">]>' +
        '<BWFXML><SCENE>5</SCENE><NOTE>&b;&c;</NOTE></BWFXML>',
    );
    expect(file.ixml).toMatchObject({ scene: '5', note: '&b;&c;' });
    expect(codesOf(file)).toEqual(['ixml-doctype-ignored']);
  });

  test('with a million elements is read in one go and still gives its scene', async () => {
    const started = performance.now();
    const file = await describedIXml(`<SCENE>5</SCENE><X>${'<y/>'.repeat(1_000_000)}</X>`);
    expect(file.ixml?.scene).toBe('5');
    expect(codesOf(file)).toContain('ixml-too-many-elements');
    expect(performance.now() - started).toBeLessThan(MOST_MS);
  });

  test('with a million tracks keeps a bounded number', async () => {
    const file = await describedIXml(
      `<SCENE>5</SCENE><TRACK_LIST>${'<TRACK></TRACK>'.repeat(250_000)}</TRACK_LIST>`,
    );
    expect(file.ixml?.scene).toBe('5');
    expect(file.ixml?.tracks.length).toBeLessThanOrEqual(20_000);
    expect(file.resolved.tracks).toHaveLength(1);
  });

  test.each([
    ['a million levels deep', '<a>'.repeat(1_000_000)],
    ['made of open brackets', '<'.repeat(1_000_000)],
    ['made of unfinished comments', '<!--'.repeat(500_000)],
    ['made of unfinished CDATA', '<![CDATA['.repeat(200_000)],
    ['made of ampersands', '&'.repeat(2_000_000)],
    ['one endless tag', `<SCENE ${'a="b" '.repeat(400_000)}`],
    ['50000 levels deep', `${'<USER>'.repeat(50_000)}x`],
    ['made of blanks', `<SCENE>${' '.repeat(2_000_000)}x`],
  ])('%s is read in one go', async (_, inside) => {
    const started = performance.now();
    await withPayload(`<BWFXML><TAKE>1</TAKE>${inside}`);
    expect(performance.now() - started).toBeLessThan(MOST_MS);
  });

  test('of more than 4 MiB is cut there, with what came before kept', async () => {
    const file = await describedIXml(`<SCENE>5</SCENE>${' '.repeat(5_000_000)}<TAKE>1</TAKE>`);
    expect(file.ixml).toMatchObject({ scene: '5', take: undefined });
    expect(codesOf(file)).toEqual(['ixml-cut', 'ixml-ill-formed']);
    expect(file.bytesRead).toBeLessThan(5 * 1024 * 1024);
  });

  test('named like properties of objects does no harm', async () => {
    const file = await describedIXml(
      '<__proto__><polluted>1</polluted></__proto__><constructor>x</constructor><SCENE>5</SCENE>',
    );
    expect(file.resolved.scene).toBe('5');
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});
