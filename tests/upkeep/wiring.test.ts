import { describe, expect, test } from 'vitest';
import { linkLoad, streamLoad } from '../../src/upkeep/wiring/audio-network.ts';
import { SNAKE_AES3_NAMES, SNAKE_CIRCUITS, snakePins, XLR_PINS } from '../../src/upkeep/wiring/snake-pins.ts';
import { type RigLead, wiringSheet } from '../../src/upkeep/wiring/wiring-sheet.ts';
import { codeOf, unwrap } from './unwrap.ts';

describe('the 25-pin snake of AES59', () => {
  // AES59, from three public tables; the AES3 use of circuits 5 to 8 is from memory.
  test.each([
    [1, 24, 12, 25, 'in 1/2'],
    [2, 10, 23, 11, 'in 3/4'],
    [3, 21, 9, 22, 'in 5/6'],
    [4, 7, 20, 8, 'in 7/8'],
    [5, 18, 6, 19, 'out 1/2'],
    [6, 4, 17, 5, 'out 3/4'],
    [7, 15, 3, 16, 'out 5/6'],
    [8, 1, 14, 2, 'out 7/8'],
  ])('has circuit %i on plus %i, minus %i, screen %i, as AES3 %s', (number, plus, minus, screen, aes3) => {
    expect(unwrap(snakePins(number))).toEqual({ plus, minus, screen });
    expect(SNAKE_AES3_NAMES[number - 1]).toBe(aes3);
  });

  test('uses 24 different pins: 1 to 25 without 13', () => {
    const pins = SNAKE_CIRCUITS.flatMap(({ plus, minus, screen }) => [plus, minus, screen]);
    const wanted = Array.from({ length: 25 }, (_, at) => at + 1).filter((pin) => pin !== 13);
    expect([...pins].sort((a, b) => a - b)).toEqual(wanted);
  });

  test('knows no circuit 0, 9 or 1.5', () => {
    expect([0, 9, 1.5, Number.NaN].map((number) => codeOf(snakePins(number)))).toEqual(
      Array(4).fill('no-such-circuit'),
    );
  });
});

describe('the wiring sheet', () => {
  const lead = (name: string, more: Partial<RigLead> = {}): RigLead => ({
    output: `out ${name}`,
    lead: name,
    ends: { kind: 'xlr' },
    input: `in ${name}`,
    ...more,
  });
  const snake = (circuit: number, carries: 'analogue' | 'aes3' = 'analogue') =>
    ({ kind: 'snake', snake: 'A', circuit, carries }) as const;

  // XLR: AES14-1992, second hand.
  test('prints a row a lead, pin by pin where it is known', () => {
    const { rows, problems } = wiringSheet([
      lead('1'),
      lead('2', { ends: snake(3) }),
      lead('3', { ends: snake(5, 'aes3') }),
      lead('4', { ends: { kind: 'other', words: 'network, port 2' } }),
    ]);
    expect(problems).toEqual([]);
    expect(rows.map(({ circuit, pins, words }) => [circuit, pins, words])).toEqual([
      [undefined, XLR_PINS, undefined],
      ['A 3', { plus: 21, minus: 9, screen: 22 }, undefined],
      ['A 5 out 1/2', { plus: 18, minus: 6, screen: 19 }, undefined],
      [undefined, undefined, 'network, port 2'],
    ]);
  });

  test('lets two leads reach one input through a selector, each in its own position', () => {
    const near = { input: 'in 5', selector: { name: 'sel 5', position: 'near' } };
    const far = { input: 'in 5', selector: { name: 'sel 5', position: 'far' } };
    expect(wiringSheet([lead('1', near), lead('2', far)]).problems).toEqual([]);
    expect(wiringSheet([lead('1', near), lead('2', near)]).problems).toEqual([
      { code: 'input-reached-twice', input: 'in 5', leads: ['1', '2'] },
    ]);
    const other = { input: 'in 5', selector: { name: 'sel 6', position: 'far' } };
    expect(wiringSheet([lead('1', near), lead('2', other)]).problems).toHaveLength(1);
    expect(wiringSheet([lead('1', near), lead('2', { input: 'in 5' })]).problems).toHaveLength(1);
  });

  test('names a circuit used twice and a circuit that is none', () => {
    const { rows, problems } = wiringSheet([
      lead('2', { ends: snake(3) }),
      lead('1', { ends: snake(3) }),
      lead('3', { ends: snake(9) }),
    ]);
    expect(problems).toEqual([
      { code: 'no-such-circuit', circuit: '9' },
      { code: 'circuit-used-twice', snake: 'A', circuit: 3, leads: ['1', '2'] },
    ]);
    expect(rows).toHaveLength(3);
  });
});

describe('an audio stream on the network', () => {
  // AES67 packet times; L24 of RFC 3190 from memory; RTP 12, UDP 8, IP 20, Ethernet 18 and 20 bytes on the wire.
  test.each([
    [2, 48_000, 48, 288, 1000, '2.304', '2.624', '2.928'],
    [8, 48_000, 48, 1152, 1000, '9.216', '9.536', '9.840'],
    [8, 48_000, 6, 144, 8000, '9.216', '11.776', '14.208'],
    [4, 96_000, 96, 1152, 1000, '9.216', '9.536', '9.840'],
  ])(
    'of %i ch, %i Hz, %i samples takes what the table prints',
    (channels, sampleRate, samplesPerPacket, payload, packets, audio, ip, wire) => {
      const load = unwrap(streamLoad({ channels, sampleRate, samplesPerPacket }));
      expect([load.payloadBytes, load.packetsPerSecond]).toEqual([payload, packets]);
      expect([load.audioMbps, load.ipMbps, load.wireMbps].map((mbps) => mbps.toFixed(3))).toEqual([
        audio,
        ip,
        wire,
      ]);
    },
  );

  test('adds up on a link', () => {
    const stream = { channels: 8, sampleRate: 48_000, samplesPerPacket: 48 };
    const { wireMbps, percent } = unwrap(linkLoad([stream, stream], 100));
    expect([wireMbps.toFixed(2), percent.toFixed(2)]).toEqual(['19.68', '19.68']);
    expect(unwrap(linkLoad([], 100))).toEqual({ wireMbps: 0, percent: 0 });
  });

  test('fills a frame to the last byte of 1500 and no further', () => {
    const stream = { channels: 1, sampleRate: 48_000, bytesPerSample: 2 } as const;
    expect(codeOf(streamLoad({ ...stream, samplesPerPacket: 730 }))).toBe('none');
    expect(codeOf(streamLoad({ ...stream, samplesPerPacket: 731 }))).toBe('packet-too-large');
  });

  test('that does not fit one frame is a problem that names the most channels', () => {
    const result = streamLoad({ channels: 16, sampleRate: 48_000, samplesPerPacket: 48 });
    expect(result).toEqual({
      ok: false,
      problem: { code: 'packet-too-large', payloadBytes: 2304, mostChannels: 10 },
    });
  });

  test('is refused without channels, with half a channel and on a link of nothing', () => {
    const stream = { channels: 2, sampleRate: 48_000, samplesPerPacket: 48 };
    expect(codeOf(streamLoad({ ...stream, channels: 0 }))).toBe('quantity-out-of-range');
    expect(codeOf(streamLoad({ ...stream, channels: 2.5 }))).toBe('quantity-not-whole');
    expect(codeOf(linkLoad([stream], 0))).toBe('quantity-out-of-range');
  });
});
