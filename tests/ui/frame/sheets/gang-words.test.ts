import { describe, expect, test } from 'vitest';
import type { Stretch } from '../../../../src/day/answers/gang-reach.ts';
import { takesInOrder } from '../../../../src/day/takes.ts';
import {
  endEffects,
  gangChoices,
  gangEffects,
  takesWords,
} from '../../../../src/ui/frame/sheets/gang-words.ts';
import { speaker, take } from '../../../day/say.ts';

const phone = speaker();
for (const number of [1, 2, 3, 4, 5, 6]) phone.say(take('24', 1, number));
const takes = takesInOrder(phone.day());
const stretch = (from: number, to: number, more: Partial<Stretch> = {}): Stretch => ({
  takes: takes.slice(from, to),
  until: takes[to]?.id ?? 'end',
  alike: [],
  ...more,
});

describe('the choices at a clash of the past', () => {
  test('name the takes on which it stands so, and the first of them for what holds on', () => {
    expect(gangChoices(stretch(1, 2))).toEqual([
      { ask: 'Gang: on purpose, 24A/2 only', done: 'Ganged on purpose, 24A/2 only', onwards: false },
      { ask: 'Gang: on purpose, from 24A/2 on', done: 'Ganged on purpose, from 24A/2 on', onwards: true },
    ]);
    expect(gangChoices(stretch(1, 4))[0]?.ask).toBe('Gang: on purpose, 24A/2 to 24A/4');
  });

  test('are one where it stands so still', () => {
    expect(gangChoices(stretch(3, 6, { until: null }))).toEqual([
      { ask: 'Gang: on purpose', done: 'Ganged on purpose', onwards: false },
    ]);
    expect(gangEffects(stretch(3, 6, { until: null }))).toBe(
      'Settles 3 takes, 24A/4 to 24A/6, and goes on from here.',
    );
    expect(gangEffects(stretch(5, 6, { until: null }))).toBe('Settles 24A/6, and goes on from here.');
  });

  test('say what is settled besides', () => {
    expect(gangEffects(stretch(0, 1, { alike: takes.slice(2, 4) }))).toBe(
      'From 24A/1 on, it also settles 24A/3 and 24A/4. No other take changes.',
    );
    expect(gangEffects(stretch(0, 1))).toBe(
      'From 24A/1 on, it covers takes to come as well. No other take changes.',
    );
  });
});

test('ending a gang says which takes would clash', () => {
  expect(endEffects(takes[0]!, [])).toBe('Ends it from 24A/1 on. No take would clash.');
  expect(endEffects(takes[0]!, takes.slice(1, 2))).toBe('Ends it from 24A/1 on. 1 take would clash: 24A/2.');
  expect(endEffects(takes[0]!, takes)).toBe(
    'Ends it from 24A/1 on. 6 takes would clash: 24A/1, 24A/2, 24A/3 and 3 more.',
  );
});

test('four takes are named, and of five the first three', () => {
  expect(takesWords(takes.slice(0, 4))).toBe('24A/1, 24A/2, 24A/3 and 24A/4');
  expect(takesWords(takes.slice(0, 5))).toBe('24A/1, 24A/2, 24A/3 and 2 more');
});
