import { describe, expect, test } from 'vitest';
import { SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import type { PlanCarrier } from '../../../src/radio/day/day-plan.ts';
import type { NamedHit } from '../../../src/radio/day/named-hits.ts';
import { carrierWords, guardsWords, hitWords, rangeWords, roomWords } from '../../../src/ui/radio/words.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const carrier = (name: string, frequencyKhz: number): PlanCarrier =>
  ({ id: name, name, frequencyKhz, transmitting: true }) as unknown as PlanCarrier;
const [a1, a2, a3] = [carrier('A1', 470_500), carrier('A2', 471_000), carrier('A3', 470_050)];

const hit = (family: string, productKhz: number, distanceKhz: number, sources: PlanCarrier[]): NamedHit =>
  ({ hit: { family, productKhz, distanceKhz }, sources, victim: a3 }) as unknown as NamedHit;

describe('a hit', () => {
  const guards = { ...SUGGESTED_GUARDS, twoToneThirdKhz: 100 };

  test('says which sum falls where, how near, and what the minimum is', () => {
    expect(hitWords(hit('two-tone-third', 470_000, 50, [a1, a2]), guards)).toBe(
      '2 × A1 − A2 falls on 470.000, 50 kHz away; the minimum is 100',
    );
    expect(hitWords(hit('three-tone-third', 470_050, 0, [a1, a2, a3]), guards)).toBe(
      'A1 + A2 − A3 falls exactly on 470.050',
    );
    expect(hitWords(hit('two-tone-fifth', 469_500, 0, [a1, a2]), guards)).toMatch(/^3 × A1 − 2 × A2 /);
  });

  test('of two carriers too near each other names the other one', () => {
    expect(hitWords(hit('spacing', 470_500, 0, [a1]), guards)).toBe('on the same frequency as A1');
    expect(hitWords(hit('spacing', 470_500, 150, [a1]), guards)).toBe(
      `A1 is 150 kHz away; ${guards.carrierKhz} is the minimum`,
    );
  });
});

test('a carrier is named with whoever wears it', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  expect(carrierWords(phone.day(), { ...a3!, voice: 'ines' })).toBe('A3 on Ines');
  expect(carrierWords(phone.day(), a3!)).toBe('A3');
});

test('a free position says how much room it has, and what leaves it', () => {
  const at = { khz: 472_000 };
  expect(roomWords({ ...at, marginKhz: 25, limitedBy: 'spacing' })).toBe(
    '25 kHz beyond the minimum: spacing',
  );
  expect(roomWords({ ...at, marginKhz: 0, limitedBy: 'tv-edge' })).toBe(
    'exactly at the minimum: spectrum in use',
  );
});

test('guards and ranges fit on a line, and a guard of nothing is off', () => {
  expect(guardsWords({ ...SUGGESTED_GUARDS, twoToneFifthKhz: 0 })).toMatch(/3A − 2B off/);
  expect(rangeWords(470_000, 494_000)).toBe('470.000 to 494.000');
});
