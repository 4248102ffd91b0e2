import { describe, expect, test } from 'vitest';
import { pairDrift } from '../../../src/upkeep/due/pair-drift.ts';
import { MORNING, type Speaker, speaker } from '../../day/say.ts';

const HOUR = 3_600_000;

function set(): Speaker {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { timecodeRate: '25' } });
  return phone;
}
const compare = (phone: Speaker, device: string, hours: number, offMs: number, from = 'recorder'): void => {
  const atMs = MORNING + hours * HOUR;
  phone.say({ kind: 'timecode-compared', device, from, atMs, offMs, doubtMs: 0.3 });
};
const now = { atMs: MORNING + HOUR, offMs: 3.6 };

describe('the drift of two boxes', () => {
  test('that were compared with each other is theirs, either way round', () => {
    const phone = set();
    compare(phone, 'slate', 0, 0);
    compare(phone, 'slate', 1, 3.6);
    const drift = pairDrift(phone.day(), ['recorder', 'slate'], now, '25')!;
    // 3.6 ms an hour is 1 ppm; 36.4 ms more make the 40 of a frame.
    expect(drift.ppm).toBeCloseTo(1, 9);
    expect(drift.dueAtMs).toBe(now.atMs + Math.round(36.4e6));
    const back = pairDrift(phone.day(), ['slate', 'recorder'], { ...now, offMs: -3.6 }, '25')!;
    expect(back.ppm).toBeCloseTo(-1, 9);
    expect(back.dueAtMs).toBe(drift.dueAtMs);
  });

  test('that were both compared with a third follows from both, with the doubt of both', () => {
    const phone = set();
    for (const [device, offMs] of [
      ['slate', 3.6],
      ['camera', -7.2],
    ] as const) {
      compare(phone, device, 0, 0);
      compare(phone, device, 1, offMs);
    }
    const drift = pairDrift(phone.day(), ['slate', 'camera'], { ...now, offMs: -10.8 }, '25')!;
    expect(drift.ppm).toBeCloseTo(-3, 9);
    // Each comparison may be 0.3 ms wrong, and four of them are in it: 0.6 ms an hour.
    expect(drift.doubtPpm).toBeCloseTo(0.6 / 3.6, 9);
    expect(drift.dueAtMs).toBe(now.atMs + Math.round((29.2 / 3) * 1e6));
  });

  test('is not known before each was compared twice, nor across a jam', () => {
    const phone = set();
    compare(phone, 'slate', 0, 0);
    expect(pairDrift(phone.day(), ['recorder', 'slate'], now, '25')).toBeUndefined();
    compare(phone, 'slate', 1, 3.6);
    compare(phone, 'camera', 1, 3.6);
    expect(pairDrift(phone.day(), ['slate', 'camera'], now, '25')).toBeUndefined();
    const atMs = MORNING + 2 * HOUR;
    phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder', atMs });
    expect(pairDrift(phone.day(), ['recorder', 'slate'], now, '25')).toBeUndefined();
  });
});
