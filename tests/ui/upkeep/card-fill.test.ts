import { expect, test } from 'vitest';
import { cardFill } from '../../../src/ui/upkeep/card-fill.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const HOUR = 3_600_000;
const at = (hours: number): number => MORNING + hours * HOUR;
const card = { capacityBytes: 64e9, usedBytes: 16e9, out: false };

test('a card is what was on it, what today put on it, and what it will be at wrap', () => {
  expect(cardFill(card, { bytesLeft: 32e9, fullAtMs: at(8) }, MORNING, at(4))).toEqual({
    beforeShare: 0.25,
    todayShare: 0.25,
    atWrap: 0.75,
  });
});

test('a card is full at wrap exactly where it is full before wrap', () => {
  const atWrap = (fullAtMs: number) => cardFill(card, { bytesLeft: 32e9, fullAtMs }, MORNING, at(4)).atWrap;
  expect(atWrap(at(4) - 60_000)).toBe('full');
  expect(atWrap(at(4))).toBe(1);
  expect(atWrap(at(4) + 60_000)).toBeLessThan(1);
});

test.each([
  ['without a pace', card, { bytesLeft: 32e9 }, at(4)],
  ['without a wrap', card, { bytesLeft: 32e9, fullAtMs: at(8) }, undefined],
  ['after wrap', card, { bytesLeft: 32e9, fullAtMs: at(8) }, at(-1)],
  ['that came out', { ...card, out: true }, { bytesLeft: 32e9, fullAtMs: at(8) }, at(4)],
])('a card %s says nothing of wrap', (_, which, left, wrapAtMs) => {
  expect(cardFill(which, left, MORNING, wrapAtMs).atWrap).toBeUndefined();
});

test('a full card has no room, and its shares are never more than all of it', () => {
  const fill = cardFill({ ...card, usedBytes: 60e9 }, { bytesLeft: 0, fullAtMs: MORNING }, MORNING, at(4));
  expect(fill.beforeShare + fill.todayShare).toBe(1);
  expect(fill.atWrap).toBe('full');
});

test('the bar of a card of the day is as full, and fills as fast, as its words say', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, {
    kind: 'shift-planned',
    shift: { callAtMs: MORNING, wrapAtMs: at(10) },
  });
  phone.say({
    kind: 'card-described',
    card: 'c1',
    fields: { name: 'Card A', bytes: 20e9, usedBytes: 1e9 },
  });
  phone.say(take('24', 1, 1, { length: { frames: 25 * 1_800, rate: '25' } }));
  const [state] = upkeepAt(phone.day(), at(2)).cards;
  const left = state?.left.ok ? state.left.value : undefined;
  const fill = cardFill(state!.card, left!, at(2), at(10));
  expect(1 - fill.beforeShare - fill.todayShare).toBeCloseTo(left!.bytesLeft / 20e9, 9);
  // At the day's pace the hours left become hours of the day.
  const used = fill.beforeShare + fill.todayShare;
  expect(left!.fullAtMs).toBeGreaterThan(at(10));
  expect(fill.atWrap).toBeCloseTo(used + ((1 - used) * 8 * left!.pace) / left!.hoursLeft, 6);
});
