import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layRecorder } from '../../../src/commands/rig/lay-rig.ts';
import { readRigSpec, shapeOf } from '../../../src/commands/rig/rig-spec.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { layingPhone } from '../rig-day.ts';

const SIXTEEN = {
  tracks: 16,
  inputs: [
    { kind: 'mic', count: 4 },
    { kind: 'aes3', count: 4 },
    { kind: 'return', count: 2 },
    { kind: 'slot', count: 8 },
  ],
};

describe('a recorder said in a breath', () => {
  test.each([
    '16 tracks, 4 mic/line, 4 AES3, 2 return, 8 slots',
    '16 tracks 4 mic 4 AES3 2 returns 8 slots',
    '  16 TRACKS; 4 Mic / Line\n4 aes and 2 rets + 8 internal receivers ',
    '16 tracks, 4 x mic, 4 x aes 3, 2 x return, 8 x slot',
    '2 mic, 16 tracks, 2 mic, 4 digital, 2 rtn, 4 slots, 4 slots',
    '16 tracks,,, 4 mic inputs, 4 AES3 channels, 2 return inputs, 8 internal slots, 0 line',
  ])('%j is read the same', (typed) => {
    const read = readRigSpec(typed);
    const spec = read.ok ? { ...read.value, inputs: [...read.value.inputs] } : read.problem;
    expect(spec).toEqual(SIXTEEN);
  });

  // What mixers call them: common practice, no source.
  test.each([
    [
      'mic',
      'mic, mics, mic/line, mic / lines, mics lines, xlr, xlrs, input, inputs, analog, analogue, in, ins',
    ],
    ['mic', 'mic in, mic ins, xlr input, xlr inputs'],
    ['line', 'line, lines, line in, line ins, line input, line inputs'],
    ['aes3', 'aes, aes3, aes 3, digital, aes channel, aes3 channels, digital in, digital inputs'],
    ['return', 'return, returns, ret, rets, rtn, rtns, return in, returns inputs'],
    [
      'slot',
      'slot, slots, internal, internals, internal slot, slot receiver, slot receivers, internal channels',
    ],
    ['network', 'network, networks, net, net channel, network channels, net in, network inputs'],
  ])('a %s is called any of %s', (kind, words) => {
    for (const word of words.split(', '))
      expect(readRigSpec(`2 tracks, 3 ${word}`)).toEqual({
        ok: true,
        value: { tracks: 2, inputs: [{ kind, count: 3 }] },
      });
    for (const word of ['track', 'tracks', 'trk', 'tr', 'trks'])
      expect(readRigSpec(`2 ${word} and 1 mic`)).toMatchObject({ ok: true, value: { tracks: 2 } });
  });

  test('has 64 tracks and 128 inputs at most', () => {
    expect(readRigSpec('64 tracks, 100 mic, 28 line')).toMatchObject({ ok: true });
    expect(readRigSpec('63 tracks, 2 tracks, 1 mic')).toMatchObject({ problem: { piece: '2 tracks' } });
    expect(readRigSpec('1 track, 1 mic')).toEqual({
      ok: true,
      value: { tracks: 1, inputs: [{ kind: 'mic', count: 1 }] },
    });
  });

  test.each([
    ['16 tracks, 4 mik', { code: 'rig-unread', piece: '4 mik' }],
    ['16 tracks, mic', { code: 'rig-unread', piece: 'mic' }],
    ['16 tracks, -4 mic', { code: 'rig-unread', piece: '-4 mic' }],
    ['16 tracks, 2.5 mic', { code: 'rig-unread', piece: '2.5 mic' }],
    ['16', { code: 'rig-unread', piece: '16' }],
    ['16 tracks, 99999 mic', { code: 'rig-unread', piece: '99999 mic' }],
    ['65 tracks, 4 mic', { code: 'rig-too-many', piece: '65 tracks', most: 64 }],
    ['16 tracks, 100 mic, 29 line', { code: 'rig-too-many', piece: '29 line', most: 128 }],
    ['4 mic', { code: 'rig-without-tracks' }],
    ['0 tracks, 4 mic', { code: 'rig-without-tracks' }],
    ['16 tracks', { code: 'rig-without-inputs' }],
    ['16 tracks, 0 mic', { code: 'rig-without-inputs' }],
    ['', { code: 'rig-without-tracks' }],
    ['<img src=x onerror=1>', { code: 'rig-unread', piece: '<img src=x onerror=1>' }],
  ])('%j is refused, with the piece that could not be read', (typed, problem) => {
    expect(readRigSpec(typed)).toEqual({ ok: false, problem });
  });

  test('garbage of any kind is refused or read, and never throws (seed 20261007)', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 400 }), (typed) => {
        expect(typeof readRigSpec(typed).ok).toBe('boolean');
      }),
      { seed: 20_261_007 },
    );
  });

  test('a very long line of near misses is refused at once', () => {
    const started = performance.now();
    readRigSpec(`16 tracks, 4 ${'mic line '.repeat(20_000)}`);
    readRigSpec(' '.repeat(100_000));
    expect(performance.now() - started).toBeLessThan(1000);
  });

  test('tells how many inputs must share the last track', () => {
    const shape = (typed: string) => {
      const read = readRigSpec(typed);
      return read.ok ? shapeOf(read.value) : null;
    };
    expect(shape('16 tracks, 4 mic, 4 aes, 2 ret, 8 slots')).toEqual({ inputs: 18, isos: 15, sharing: 4 });
    expect(shape('8 tracks, 7 mic')).toEqual({ inputs: 7, isos: 7, sharing: 0 });
    expect(shape('8 tracks, 8 mic')).toEqual({ inputs: 8, isos: 7, sharing: 2 });
    expect(shape('2 tracks, 2 mic')).toEqual({ inputs: 2, isos: 1, sharing: 2 });
    expect(shape('1 track, 2 mic')).toEqual({ inputs: 2, isos: 0, sharing: 0 });
  });
});

describe('a recorder laid from it', () => {
  test('has the mix first, and every input on an iso track of its own until the last is shared', () => {
    const phone = layingPhone();
    const read = readRigSpec('4 tracks, 3 mic, 2 line');
    phone.run(() => (read.ok ? layRecorder(read.value) : read));
    const { rig } = phone.day();
    expect(rig.tracks.map(({ name, mix, tap }) => [name, mix, tap])).toEqual([
      ['Mix', true, 'post'],
      ['2', false, 'pre'],
      ['3', false, 'pre'],
      ['4', false, 'pre'],
    ]);
    expect(answersNow(phone.day()).inputs.map(({ input, reach }) => [input.name, ...reach.tracks])).toEqual([
      ['in 1', 'tr2'],
      ['in 2', 'tr3'],
      ['in 3', 'tr4'],
      ['line 1', 'tr4'],
      ['line 2', 'tr4'],
    ]);
  });
});
