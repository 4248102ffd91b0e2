import { describe, expect, test } from 'vitest';
import {
  AES67_COMMON_CHANNELS,
  AES67_MARKS,
  AES67_PACKETS,
  aes3Mbps,
  linkLoad,
  streamLoad,
} from '../../src/upkeep/audio-network.ts';
import {
  dbuToDbv,
  dbuToVolts,
  dbvToDbu,
  fullScaleDbu,
  LINE_UPS,
  voltsToDbu,
} from '../../src/upkeep/levels.ts';
import {
  crossedCircuit,
  pinFaults,
  SNAKE_AES3_NAMES,
  SNAKE_CIRCUITS,
  snakePins,
  XLR_PINS,
} from '../../src/upkeep/snake-pins.ts';
import { type RigLead, wiringSheet } from '../../src/upkeep/wiring-sheet.ts';
import { codeOf, printed, unwrap } from './unwrap.ts';

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
    expect(pinFaults(SNAKE_CIRCUITS)).toEqual([]);
  });

  test('has its slips found: a pin twice, the pin it took the place of, and pin 13', () => {
    const slip = SNAKE_CIRCUITS.map((pins, at) => (at === 2 ? { ...pins, plus: 20 } : pins));
    expect(pinFaults(slip)).toEqual([
      { code: 'pin-used-twice', pin: 20 },
      { code: 'pin-missing', pin: 21 },
    ]);
    const thirteen = SNAKE_CIRCUITS.map((pins, at) => (at === 0 ? { ...pins, minus: 13 } : pins));
    expect(pinFaults(thirteen)).toEqual([
      { code: 'pin-missing', pin: 12 },
      { code: 'pin-out-of-place', pin: 13 },
    ]);
  });

  // From the table: both directions share the plug.
  test('needs crossing between two AES3 boxes so that every output meets an input', () => {
    const circuits = [1, 2, 3, 4, 5, 6, 7, 8];
    const crossed = circuits.map((number) => unwrap(crossedCircuit(number)));
    expect(crossed).toEqual([5, 6, 7, 8, 1, 2, 3, 4]);
    const names = circuits.map((number, at) => [
      SNAKE_AES3_NAMES[number - 1],
      SNAKE_AES3_NAMES[crossed[at]! - 1],
    ]);
    expect(names.every(([near, far]) => near!.startsWith('in') !== far!.startsWith('in'))).toBe(true);
  });

  test('knows no circuit 0, 9 or 1.5', () => {
    expect([0, 9, 1.5, Number.NaN].map((number) => codeOf(snakePins(number)))).toEqual(
      Array(4).fill('no-such-circuit'),
    );
    expect(codeOf(crossedCircuit(9))).toBe('no-such-circuit');
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

describe('levels', () => {
  // 0 dBu is the square root of 0.6 V; values as in a public table.
  test.each([
    [0, '0.7746'],
    [4, '1.2277'],
    [10, '2.4495'],
    [18, '6.1528'],
    [20, '7.7460'],
    [22, '9.7516'],
    [24, '12.2765'],
    [-10, '0.2449'],
    [-20, '0.0775'],
  ])('of %i dBu are %s V', (dbu, volts) => {
    expect(printed(dbuToVolts(dbu), 4)).toBe(volts);
    expect(printed(voltsToDbu(unwrap(dbuToVolts(dbu))), 6)).toBe(dbu.toFixed(6));
  });

  test('of -10 dBV are 0.3162 V and -7.78 dBu, 11.78 dB below +4 dBu', () => {
    const dbu = unwrap(dbvToDbu(-10));
    expect(dbu.toFixed(2)).toBe('-7.78');
    expect(printed(dbuToVolts(dbu), 4)).toBe('0.3162');
    expect((4 - dbu).toFixed(2)).toBe('11.78');
    expect(printed(dbuToDbv(0), 4)).toBe('-2.2185');
  });

  // EBU R68; SMPTE RP 155 (second hand).
  test('at full scale are +18 dBu by EBU R68 and +24 dBu by SMPTE RP 155, 6 dB apart', () => {
    expect(LINE_UPS.map((lineUp) => unwrap(fullScaleDbu(lineUp)))).toEqual([18, 24]);
    expect(LINE_UPS[0]!.toneDbfs - LINE_UPS[1]!.toneDbfs).toBe(2);
  });

  test('are refused for no volts and for no number', () => {
    expect(codeOf(voltsToDbu(0))).toBe('quantity-out-of-range');
    expect(codeOf(dbuToVolts(Number.NaN))).toBe('quantity-not-finite');
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

  // AES67: 125 µs, 1 ms and 4 ms from public summaries; 250 and 333⅓ µs from memory.
  test('has the packet times of AES67 in whole samples at 48 kHz', () => {
    expect(AES67_PACKETS.map(({ samples }) => samples)).toEqual([6, 12, 16, 48, 192]);
    for (const { samples, microseconds } of AES67_PACKETS) {
      expect((samples / 48_000) * 1e6).toBeCloseTo(microseconds, 9);
    }
  });

  // AES67 marks: second hand. EF is 46 and AF41 is 34 (RFC 3246, RFC 2597).
  test('marks clock above sound above the rest', () => {
    expect(AES67_MARKS).toEqual({ clock: 46, media: 34, rest: 0 });
  });

  // AES3: 64 bits a sample pair; twice that as the clock of biphase mark.
  test('has an AES3 circuit beside it at 3.072 Mbit/s, 6.144 MHz on the wire', () => {
    expect(printed(aes3Mbps(48_000), 3)).toBe('3.072');
    expect((2 * unwrap(aes3Mbps(48_000))).toFixed(3)).toBe('6.144');
  });

  test('adds up on a link', () => {
    const stream = { channels: AES67_COMMON_CHANNELS, sampleRate: 48_000, samplesPerPacket: 48 };
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
