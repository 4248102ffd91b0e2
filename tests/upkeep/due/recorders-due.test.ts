import { describe, expect, test } from 'vitest';
import { describeCard, jamDevices } from '../../../src/commands/upkeep/keep-up.ts';
import { dayTotals } from '../../../src/day/wrap/day-totals.ts';
import { cardsOf, formatOf, formatOfAFile } from '../../../src/upkeep/due/day-cards.ts';
import { devicesOf } from '../../../src/upkeep/due/day-devices.ts';
import { hoursLeftIn, upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../../day/two-recorders.ts';

const HOUR = 3_600_000;
const now = { atMs: MORNING + HOUR, zone: 0 };

/** A cart of five tracks and a bag of three at 96 kHz; a take of an hour on the cart, one on both. */
function twoCards() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  phone.say({ kind: 'recorder-set', recorder: BAG, settings: { sampleRate: 96_000, fileLayout: 'mono' } });
  const bytes = 100e9;
  phone.say(
    { kind: 'card-described', card: 'a', fields: { name: 'A', bytes, tracks: 5 } },
    { kind: 'card-described', card: 'b', fields: { name: 'B', bytes, tracks: 3, recorder: BAG } },
  );
  const hour = { length: { frames: 90_000, rate: '25' } };
  const first = phone.id(take('24', 0, 1, hour));
  phone.say({ kind: 'recorders-rolling', recorders: [CART, BAG] });
  const second = phone.id(take('24', 0, 2, hour));
  return { phone, first, second };
}

describe('the cards of two recorders', () => {
  test('fill with the takes of their recorder, at its rate and with its tracks', () => {
    const { phone } = twoCards();
    const cards = cardsOf(phone.day(), MORNING + 9 * HOUR);
    expect(cards.map(({ recorder, recordedMs, format }) => [recorder, recordedMs, format])).toEqual([
      [CART, 2 * HOUR, { tracks: 5, sampleRate: 48_000, bits: 24 }],
      [BAG, HOUR, { tracks: 3, sampleRate: 96_000, bits: 24 }],
    ]);
  });

  test('last as long as each recorder’s rate lets them', () => {
    const upkeep = upkeepAt(twoCards().phone.day(), MORNING + 9 * HOUR);
    // Bytes an hour: tracks × rate × 3 × 3600, and 1 % for all besides the sound (arithmetic).
    const left = (tracks: number, rate: number, hours: number) =>
      100e9 / (tracks * rate * 3 * 3600 * 1.01) - hours;
    expect(hoursLeftIn(upkeep, CART)).toBeCloseTo(left(5, 48_000, 2), 6);
    expect(hoursLeftIn(upkeep, BAG)).toBeCloseTo(left(3, 96_000, 1), 6);
    expect(hoursLeftIn(upkeep, 'none')).toBeNull();
  });

  test('say how many tracks are armed on the recorder that they are in', () => {
    const { phone } = twoCards();
    const hour = (tracks: number, rate: number): number => tracks * rate * 3 * 3600;
    expect(dayTotals(phone.day(), CART).written.bytes).toBe(2 * hour(5, 48_000));
    expect(dayTotals(phone.day(), BAG).written.bytes).toBe(hour(3, 96_000));
  });

  test('a card of which no recorder was said, or one that is gone, is in the first', () => {
    const { phone } = twoCards();
    phone.say({ kind: 'card-described', card: 'c', fields: { bytes: 1e9, recorder: 'gone' } });
    expect(cardsOf(phone.day(), MORNING).map(({ recorder }) => recorder)).toEqual([CART, BAG, CART]);
  });

  test('a card can be put into a recorder that is there, and into no other', () => {
    const day = twoCards().phone.day();
    expect(describeCard(day, 'a', { recorder: BAG })).toEqual({
      ok: true,
      value: [{ kind: 'card-described', card: 'a', fields: { recorder: BAG } }],
    });
    expect(describeCard(day, 'a', { recorder: 'none' })).toMatchObject({
      problem: { code: 'not-on-this-day' },
    });
  });

  test('what a recorder writes with all its tracks armed goes by its own tracks and layout', () => {
    const day = twoCards().phone.day();
    expect(formatOf(day).tracks).toBe(5);
    expect(formatOf(day, null, BAG)).toEqual({ tracks: 3, sampleRate: 96_000, bits: 24 });
    expect(formatOfAFile(day, null, BAG).tracks).toBe(1);
  });
});

describe('the timecode of two recorders', () => {
  test('every recorder is a device with timecode; those besides the first are to be jammed', () => {
    const { phone } = twoCards();
    expect(devicesOf(phone.day()).slice(0, 2)).toMatchObject([
      { id: CART, name: 'Cart', type: 'recorder', hasTimecode: true },
      { id: BAG, name: 'Bag', type: 'recorder', hasTimecode: true },
    ]);
    expect(upkeepAt(phone.day(), now.atMs).withoutJam.map(({ id }) => id)).toEqual([BAG]);
  });

  test('a recorder is jammed from the first, and others from it', () => {
    const { phone } = twoCards();
    const jam = (devices: string[], from?: string): void => {
      const said = jamDevices(phone.day(), devices, now, from);
      if (!said.ok) throw new Error(said.problem.code);
      phone.say(...said.value);
    };
    phone.say({ kind: 'devices-described', devices: [BAG], fields: { ppm: 1 } });
    phone.say({
      kind: 'devices-described',
      devices: ['slate'],
      fields: { name: 'Slate', hasTimecode: true, ppm: 1 },
    });
    jam([BAG]);
    jam(['slate'], BAG);
    const { jams, withoutJam } = upkeepAt(phone.day(), now.atMs);
    expect(withoutJam).toEqual([]);
    expect(jams.due.map(({ device }) => device).sort()).toEqual([BAG, 'slate']);
    expect(jamDevices(phone.day(), ['slate'], now, 'none')).toMatchObject({
      problem: { code: 'not-on-this-day' },
    });
  });
});
