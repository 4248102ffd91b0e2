import { describe, expect, test } from 'vitest';
import { workingHeader } from '../../../src/day/header.ts';
import { bitDepthOf, commonestSettings } from '../../../src/reconcile/differences/setting-differences.ts';
import {
  fieldsOfTypes,
  lengthOfFile,
  slateOfFile,
  startOfFile,
  takeOfFile,
} from '../../../src/reconcile/log-and-card/file-fields.ts';
import { loggedTakes } from '../../../src/reconcile/log-and-card/logged.ts';
import {
  byTapeAndStart,
  preRollSamples,
  recordedOf,
  recordingName,
} from '../../../src/reconcile/log-and-card/recorded.ts';
import type { Recording } from '../../../src/wave/recording/recordings.ts';
import { speaker, take } from '../../day/say.ts';
import { type CardFile, recordCard } from '../build-card.ts';

const SECOND = 48_000;
const FILE: CardFile = {
  name: '24BT3.wav',
  scene: '24B',
  take: '3',
  tape: '7A',
  start: 36_000 * SECOND,
  length: 10 * SECOND,
  tracks: [{ channel: 1, name: 'Boom' }],
  sampleRate: SECOND,
  bits: 24,
  rate: '25/1',
};
const recorded = async (more: Partial<CardFile> = {}): Promise<Recording> =>
  (await recordCard([{ ...FILE, ...more }]))[0]!;
const header = workingHeader(speaker().day(), '25');

describe('the name of a recording', () => {
  const named = (...names: string[]) => ({ files: names.map((name) => ({ name })) }) as unknown as Recording;

  test.each([
    [['24BT3.wav'], '24BT3.wav'],
    [['CARD/DAY\\24BT3_1.wav'], '24BT3_1.wav'],
    [['24BT3_1.wav', '24BT3_2.wav'], '24BT3.wav'],
    [['24BT3_1.WAV', 'b/24BT3-02.wav'], '24BT3.WAV'],
    [['24BT3 TR1.wav', '24BT3 Trk2.wav', '24BT3.CH03.wav'], '24BT3.wav'],
    [['24BT3_A.wav', '24BT3_B.wav'], '24BT3.wav'],
    [['24BT3.wav', '24BT3 (2).wav'], '24BT3.wav'],
    [['24BT3_1.wav', '24CT1_2.wav'], '24BT3_1.wav'],
    [['_1.wav', '_2.wav'], '_1.wav'],
    [['Maß_1.wav', 'Maß_2.wav'], 'Maß_1.wav'],
  ])('of %j is %s', (names, name) => {
    expect(recordingName(named(...names))).toBe(name);
  });

  test.each([
    ['24BT3_12345', '24BT3_12345'],
    ['24BT3_1234', '24BT3'],
    ['24BT3 TRACK4', '24BT3'],
    ['24BT3-PART2', '24BT3'],
    ['24BT3(12)', '24BT3'],
    ['24BT3', '24BT3'],
  ])('%s is also looked for as %s', async (stem, short) => {
    const { stems, shortStems } = recordedOf(await recorded({ name: `${stem}.wav` }));
    expect([[...stems], [...shortStems]]).toEqual([[stem], [short]]);
  });
});

describe('a recording as it is compared', () => {
  test('has its slate, number, roll and times, and none that it does not say', async () => {
    expect(recordedOf(await recorded({ scene: 'Sc 24-b', take: 'T03', tape: '07a' }))).toMatchObject({
      scene: '24B',
      number: 3,
      roll: '7A',
      startMs: 36_000_000,
      pressMs: 36_000_000,
      lengthMs: 10_000,
    });
    const { scene: _, take: __, tape: ___, ...silent } = FILE;
    const [bare] = await recordCard([{ ...silent, start: undefined, length: 0, tape: '--' }]);
    expect(recordedOf(bare!)).toMatchObject({
      scene: undefined,
      number: undefined,
      roll: undefined,
      startMs: undefined,
      pressMs: undefined,
      lengthMs: undefined,
    });
  });

  test('was pressed after its pre-roll, as both versions of iXML say it, and never longer than it lasts', async () => {
    const old = (samples: number) => `<PRE_RECORD_SAMPLECOUNT>${samples}</PRE_RECORD_SAMPLECOUNT>`;
    const point = (samples: number, name = 'PRE_RECORD_SAMPLECOUNT') =>
      `<SYNC_POINT_LIST><SYNC_POINT><SYNC_POINT_FUNCTION>${name}</SYNC_POINT_FUNCTION>` +
      `<SYNC_POINT_LOW>${samples}</SYNC_POINT_LOW></SYNC_POINT></SYNC_POINT_LIST>`;
    const rolled = async (more: string) => preRollSamples(await recorded({ more }));
    expect(await rolled('')).toBe(0);
    expect(await rolled(old(6 * SECOND))).toBe(6 * SECOND);
    expect(await rolled(old(10 * SECOND))).toBe(10 * SECOND);
    expect(await rolled(old(10 * SECOND + 1))).toBe(0);
    expect(await rolled(point(5 * SECOND) + old(6 * SECOND))).toBe(5 * SECOND);
    expect(await rolled(point(5 * SECOND, 'SLATE_GENERIC'))).toBe(0);
    expect(recordedOf(await recorded({ more: old(6 * SECOND) }))).toMatchObject({
      startMs: 36_000_000,
      pressMs: 36_006_000,
    });
  });

  test('comes by roll, start, name and length, and by what it says last', async () => {
    const one = await recorded();
    const order = (more: Partial<Recording>) => byTapeAndStart(one, { ...one, ...more });
    expect(order({})).toBe(0);
    expect(order({ tape: '7B', start: undefined })).toBeLessThan(0);
    expect(order({ tape: undefined })).toBeGreaterThan(0);
    expect(order({ start: undefined })).toBeGreaterThan(0);
    expect(order({ start: { ...one.start!, samples: one.start!.samples + 1 }, length: 0 })).toBeLessThan(0);
    expect(order({ files: [{ ...one.files[0]!, name: 'a' }], length: 0 })).toBeLessThan(0);
    expect(order({ length: one.length + 1, note: '' })).toBeLessThan(0);
    expect(order({ note: 'a' })).not.toBe(0);
  });
});

describe('what a file says as fields of a take', () => {
  test.each([
    ['WT', { kind: 'wild' }],
    ['wild 3', { kind: 'wild' }],
    ['Wild-Track', { kind: 'wild' }],
    ['RT2', { kind: 'tone' }],
    ['tone', { kind: 'tone' }],
    ['Room Tone', { kind: 'tone' }],
    ['AMB', { kind: 'tone' }],
    ['atmos 12', { kind: 'tone' }],
    ['24B', { slate: { style: 'lettered', scene: '24', setup: 2 } }],
    ['Wilder', { slate: { style: 'lettered', scene: 'Wilder', setup: 0 } }],
    [` ${'x'.repeat(300)} `, { slate: { style: 'lettered', scene: 'x'.repeat(200), setup: 0 } }],
  ])('a scene %j', (scene, fields) => {
    expect(slateOfFile(scene, 'lettered')).toEqual(fields);
  });

  test('a scene that is no running number keeps its words', () => {
    expect(slateOfFile('118', 'numbered')).toEqual({ slate: { style: 'numbered', number: 118, scene: '' } });
    expect(slateOfFile('24B', 'numbered')).toEqual({ slate: { style: 'numbered', number: 0, scene: '24B' } });
  });

  test.each([
    [[], {}],
    [['FALSE_START'], { falseStart: true }],
    [['NO_GOOD'], { noGood: true }],
    [['PICKUP'], { kind: 'pickup' }],
    [['WILD_TRACK'], { kind: 'wild' }],
    [['REHEARSAL', 'OTHER'], {}],
    [['FALSE_START', 'PICKUP'], { falseStart: true, kind: 'pickup' }],
  ])('types %j', (types, fields) => {
    expect(fieldsOfTypes(types)).toEqual(fields);
  });

  test('its start and length at the rate of the day, as far as a log can hold them', async () => {
    const one = await recorded();
    expect(startOfFile(one, '24')).toEqual({ frames: 864_000, rate: '24' });
    expect(startOfFile({ ...one, start: undefined }, '24')).toBeUndefined();
    expect(lengthOfFile(one, '24')).toEqual({ frames: 240, rate: '24' });
    expect(lengthOfFile({ ...one, length: 0 }, '24')).toBeUndefined();
    expect(lengthOfFile({ ...one, sampleRate: undefined }, '24')).toBeUndefined();
    const frames = 100_000_000;
    expect(lengthOfFile({ ...one, length: frames * 2000 }, '24')).toEqual({ frames, rate: '24' });
    expect(lengthOfFile({ ...one, length: (frames + 1) * 2000 }, '24')).toBeUndefined();
  });

  test('all together, for a take nobody logged', async () => {
    const of = async (more: Partial<CardFile>) => takeOfFile(await recorded(more), header);
    expect(await of({ circled: true })).toEqual({
      slate: { style: 'lettered', scene: '24', setup: 2 },
      number: 3,
      start: { frames: 900_000, rate: '25' },
      length: { frames: 250, rate: '25' },
      circled: true,
      file: '24BT3.wav',
    });
    expect(await of({ circled: false })).not.toHaveProperty('circled');
    expect(await of({ circled: true, types: ['NO_GOOD'] })).toMatchObject({ noGood: true });
    expect(await of({ circled: true, types: ['NO_GOOD'] })).not.toHaveProperty('circled');
    expect(await of({ name: `${'x'.repeat(196)}.wav` })).toHaveProperty('file', `${'x'.repeat(196)}.wav`);
    expect(await of({ name: `${'x'.repeat(197)}.wav` })).not.toHaveProperty('file');
    const { scene: _, take: __, ...bare } = FILE;
    const [wild] = await recordCard([bare]);
    expect(takeOfFile(wild!, header)).toMatchObject({ kind: 'wild' });
    expect(takeOfFile(wild!, header)).not.toHaveProperty('number');
    expect(takeOfFile(wild!, header)).not.toHaveProperty('slate');
  });
});

describe('what most files say of the settings', () => {
  const settings = async (...more: Partial<CardFile>[]) =>
    commonestSettings(
      await recordCard(
        more.map((one, at) => ({
          ...FILE,
          name: `${at}.wav`,
          take: `${at}`,
          start: at * 60 * SECOND,
          ...one,
        })),
      ),
    );

  test('goes into the head of a day', async () => {
    expect(await settings({}, { bits: 16 }, {})).toEqual({
      sampleRate: 48_000,
      bitDepth: '24',
      timecodeRate: '25',
    });
    expect(commonestSettings([])).toEqual({});
  });

  test.each([
    [{ sampleRate: 8000 }, 'sampleRate', 8000],
    [{ sampleRate: 7999 }, 'sampleRate', undefined],
    [{ sampleRate: 384_000 }, 'sampleRate', 384_000],
    [{ sampleRate: 384_001 }, 'sampleRate', undefined],
    [{ bits: 16 }, 'bitDepth', '16'],
    [{ bits: 32 }, 'bitDepth', '32'],
    [{ bits: 8 }, 'bitDepth', undefined],
    [{ rate: '30000/1001' }, 'timecodeRate', '29.97'],
    [{ rate: '60/1' }, 'timecodeRate', undefined],
  ] as const)('with %j has as %s %s', async (more, field, value) => {
    expect((await settings(more))[field]).toBe(value);
  });

  test('tells floating point by its letter', async () => {
    const one = await recorded({ bits: 32 });
    const float = {
      ...one,
      files: [{ ...one.files[0]!, format: { ...one.files[0]!.format!, float: true } }],
    };
    expect([bitDepthOf(one), bitDepthOf(float), bitDepthOf({ ...one, bits: undefined })]).toEqual([
      '32',
      '32f',
      undefined,
    ]);
    expect(commonestSettings([float])).toMatchObject({ bitDepth: '32f' });
  });
});

describe('a take as it is compared', () => {
  const logged = (...drafts: ReturnType<typeof take>[]) => {
    const phone = speaker();
    phone.say(...drafts);
    return loggedTakes(phone.day());
  };

  test('has what a file may say as its scene: wild tracks and room tone by the words recorders have', () => {
    const [wild, tone] = logged(take('24', 2, 3, { kind: 'wild' }), take('24', 2, 3, { kind: 'tone' }));
    expect(wild).toMatchObject({
      scenes: ['WT', 'WILD', 'WILDTRACK', 'WT3', 'WILD3', 'WILDTRACK3'],
      looseScenes: ['24B'],
    });
    expect(tone).toMatchObject({
      scenes: ['RT', 'TONE', 'ROOMTONE', 'AMB', 'ATMOS', 'RT3', 'TONE3', 'ROOMTONE3', 'AMB3', 'ATMOS3'],
    });
  });

  test('of a numbered slate has the number, the scene before it, and the scene alone as what only fits', () => {
    const slate = (scene: string) => ({ slate: { style: 'numbered', number: 118, scene } });
    const [plain, full] = logged(take('', 0, 1, slate(' ')), take('', 0, 1, slate('024-b')));
    expect(plain).toMatchObject({ scenes: ['118'], looseScenes: [] });
    expect(full).toMatchObject({ scenes: ['118', '24B118'], looseScenes: ['24B'] });
  });

  test('has its name, its roll and its times, and none that nobody said', () => {
    const [one, typed] = logged(
      take('24', 2, 3, { start: null, length: null }),
      take('24', 2, 4, { file: ' K7.wav ' }),
    );
    expect(one).toMatchObject({ stem: '24BT3', nameTyped: false, roll: undefined });
    expect([one!.startMs, one!.lengthMs]).toEqual([undefined, undefined]);
    expect(typed).toMatchObject({ stem: 'K7', nameTyped: true, startMs: 3_600_000, lengthMs: 10_000 });
    const phone = speaker();
    phone.say({ kind: 'roll-changed', roll: 'R-007' }, take('24', 2, 3));
    expect(loggedTakes(phone.day())[0]!.roll).toBe('R7');
  });
});
