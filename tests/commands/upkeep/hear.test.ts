import { describe, expect, test } from 'vitest';
import { compareTimecode, followHeard } from '../../../src/commands/upkeep/hear.ts';
import { speaker } from '../../day/say.ts';

describe('timecode that was heard', () => {
  test('ties the clock to the millisecond, and says how it was heard', () => {
    const heard = { frames: 74, spreadMs: 0.4, delayMs: 38 };
    expect(followHeard({ frames: 900_012, rate: '25', atMs: 1000.6, heard })).toEqual({
      ok: true,
      value: [{ kind: 'clock-followed', frames: 900_012, rate: '25', atMs: 1001, heard }],
    });
  });

  test('is held to as much spread as a fact can say', () => {
    const said = followHeard({ frames: 0, rate: '25', atMs: 0, heard: { frames: 50, spreadMs: 4000 } });
    expect(said).toMatchObject({ ok: true, value: [{ heard: { spreadMs: 1000 } }] });
  });

  const apart = { device: 'slate', from: 'recorder', atMs: 5.4, offMs: -12.5, doubtMs: 3.1 };

  test('of two boxes is kept as how far apart they are', () => {
    const phone = speaker();
    phone.say({
      kind: 'devices-described',
      devices: ['slate'],
      fields: { name: 'Slate 1', hasTimecode: true },
    });
    expect(compareTimecode(phone.day(), apart)).toEqual({
      ok: true,
      value: [{ kind: 'timecode-compared', ...apart, atMs: 5 }],
    });
    expect(compareTimecode(phone.day(), { ...apart, from: 'slate' })).toMatchObject({
      problem: { code: 'jam-from-itself' },
    });
  });

  test('of a box that is not there is refused', () => {
    expect(compareTimecode(speaker().day(), apart)).toMatchObject({ problem: { code: 'not-on-this-day' } });
  });
});
