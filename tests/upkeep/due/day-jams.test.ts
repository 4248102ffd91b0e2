import { describe, expect, test } from 'vitest';
import { worstPair } from '../../../src/upkeep/due/day-apart.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { jamOf, lastHeard } from '../../../src/upkeep/due/day-jams.ts';
import { MORNING, type Speaker, speaker } from '../../day/say.ts';

const HOUR = 3_600_000;

function set(): Speaker {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { timecodeRate: '25' } });
  phone.say({
    kind: 'devices-described',
    devices: ['slate'],
    fields: { name: 'Slate 1', hasTimecode: true, ppm: 2 },
  });
  return phone;
}
const compare = (phone: Speaker, hours: number, offMs: number, doubtMs = 0.5): void => {
  phone.say({
    kind: 'timecode-compared',
    device: 'slate',
    from: 'recorder',
    atMs: MORNING + hours * HOUR,
    offMs,
    doubtMs,
  });
};
const jam = (phone: Speaker, hours: number): void => {
  phone.say({ kind: 'devices-jammed', devices: ['slate'], from: 'recorder', atMs: MORNING + hours * HOUR });
};

describe('a device that was compared', () => {
  test('is known to drift from there: by what was heard, its doubt, and its tolerance since', () => {
    const phone = set();
    jam(phone, 0);
    compare(phone, 4, -10);
    const { jams, withoutJam } = upkeepAt(phone.day(), MORNING + 5 * HOUR);
    // 10 + 0.5 ms, and 2 ppm of an hour, 7.2 ms: 17.7 of 40 ms.
    expect(jams.due[0]).toMatchObject({ device: 'slate', jammedAtMs: MORNING + 4 * HOUR });
    expect(jams.due[0]!.driftMs).toBeCloseTo(17.7, 9);
    expect(jams.due[0]!.dueAtMs).toBe(MORNING + 4 * HOUR + Math.round((29.5 / 2) * 1e6));
    expect(withoutJam).toEqual([]);
  });

  test('starts from nothing again when it is jammed', () => {
    const phone = set();
    compare(phone, 1, 30);
    jam(phone, 2);
    expect(upkeepAt(phone.day(), MORNING + 3 * HOUR).jams.due[0]!.driftMs).toBeCloseTo(7.2, 9);
    expect(lastHeard(phone.day(), 'slate', '25')).toBeUndefined();
  });

  test('passes what it was off on to what is jammed from it', () => {
    const phone = set();
    compare(phone, 1, 8);
    phone.say({
      kind: 'devices-described',
      devices: ['box'],
      fields: { name: 'Box', hasTimecode: true, ppm: 0 },
    });
    phone.say({ kind: 'devices-jammed', devices: ['box'], from: 'slate', atMs: MORNING + HOUR + 1 });
    const box = upkeepAt(phone.day(), MORNING + HOUR + 1).jams.due.find(({ device }) => device === 'box');
    expect(box!.driftMs).toBeCloseTo(8.5, 5);
  });

  test('counts in how far two may be apart', () => {
    const phone = set();
    compare(phone, 0, 20, 0);
    phone.say({
      kind: 'devices-described',
      devices: ['box'],
      fields: { name: 'Box', hasTimecode: true, ppm: 0 },
    });
    phone.say({ kind: 'devices-jammed', devices: ['box'], from: 'recorder', atMs: MORNING });
    expect(worstPair(phone.day(), MORNING)!.frames).toBeCloseTo(0.5, 9);
  });

  test('is off at worst by what was heard and its doubt, whichever way', () => {
    const said = { device: 'slate', from: 'recorder', atMs: 5, by: 'f' as never };
    expect(jamOf({ ...said, heard: { offMs: -12, doubtMs: 3 } })).toEqual({
      device: 'slate',
      from: 'recorder',
      atMs: 5,
      offMs: 15,
    });
    expect(jamOf(said)).toEqual({ device: 'slate', from: 'recorder', atMs: 5 });
  });
});

describe('the drift that was heard', () => {
  test('is from the first comparison since the jam to the last', () => {
    const phone = set();
    compare(phone, -1, 300);
    jam(phone, 0);
    compare(phone, 1, 1);
    compare(phone, 1.5, 99);
    compare(phone, 3, 8.2);
    const last = lastHeard(phone.day(), 'slate', '25')!;
    expect(last).toMatchObject({ from: 'recorder', offMs: 8.2, atMs: MORNING + 3 * HOUR });
    // 7.2 ms in two hours.
    expect(last.drift!.ppm).toBeCloseTo(1, 9);
  });

  test('is none after one comparison', () => {
    const phone = set();
    compare(phone, 1, 5);
    expect(lastHeard(phone.day(), 'slate', '25')).toMatchObject({ offMs: 5, drift: undefined });
  });
});
