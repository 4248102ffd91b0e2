import { signal } from '@preact/signals';
import { type FunctionComponent, h } from 'preact';
import { afterEach, expect, test, vi } from 'vitest';
import type { DayStore } from '../../../../src/app/day-store.ts';
import type { Day } from '../../../../src/day/model.ts';
import type { Draft } from '../../../../src/facts/fact.ts';
import { type Checked, checkPlan, dayPlan } from '../../../../src/radio/day/day-plan.ts';
import { DayContext } from '../../../../src/ui/frame/context.ts';
import { Cautions } from '../../../../src/ui/frame/prep/caution-notes.tsx';
import { PrepTop } from '../../../../src/ui/frame/prep/prep-top.tsx';
import { useNow } from '../../../../src/ui/frame/prep/use-now.ts';
import { usePlan } from '../../../../src/ui/frame/prep/use-plan.ts';
import { CAUTIONS } from '../../../../src/upkeep/due/cautions.ts';
import { MORNING, speaker } from '../../../day/say.ts';
import { SMALL_RIG } from '../../../day/small-rig.ts';
import { show } from '../../small-dom.ts';

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const tuned = (...khz: number[]): Draft => ({
  kind: 'rig-laid',
  parts: khz.map((at, place) => ({ part: `A${place + 1}`, fields: { khz: at } })),
});

/** An open day with as much of its store as these pages ask for. */
function openDay(first: Day) {
  let atMs = MORNING;
  const day = signal(first);
  const store = { day, clock: { now: () => ({ atMs, zone: 120 }) } } as unknown as DayStore;
  return {
    store,
    day,
    pass: (ms: number) => {
      atMs += ms;
      vi.advanceTimersByTime(ms);
    },
  };
}

const showIn = (store: DayStore, Screen: FunctionComponent) =>
  show(h(DayContext.Provider, { value: store }, h(Screen, null)));

test('what is due is looked at again every quarter of a minute, and not after its page is left', async () => {
  vi.useFakeTimers();
  const { store, pass } = openDay(speaker().day());
  const times: number[] = [];
  const { gone } = showIn(store, () => {
    times.push(useNow().atMs - MORNING);
    return null;
  });
  await vi.advanceTimersByTimeAsync(1);
  pass(14_000);
  await vi.advanceTimersByTimeAsync(1);
  expect(times).toEqual([0]);
  pass(1000);
  await vi.advanceTimersByTimeAsync(1);
  expect(times).toEqual([0, 15_000]);
  gone();
  await vi.advanceTimersByTimeAsync(60_000);
  expect(times).toHaveLength(2);
  expect(vi.getTimerCount()).toBe(0);
});

test('the frequency plan is that of the day as it is, as if checked from nothing', async () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, tuned(500_000, 500_400, 500_800));
  const { store, day } = openDay(phone.day());
  const seen: Checked[] = [];
  const { settled } = showIn(store, () => {
    seen.push(usePlan());
    return null;
  });
  const hits = (checked: Checked): number =>
    checked.result.ok ? checked.result.value.hits.length : Number.NaN;
  expect(seen[0]).toEqual(checkPlan(dayPlan(phone.day())));
  phone.say(tuned(500_000, 500_400, 501_150));
  day.value = phone.day();
  await settled();
  expect(seen.at(-1)).toEqual(checkPlan(dayPlan(phone.day())));
  expect(hits(seen.at(-1)!)).toBeLessThan(hits(seen[0]!));
});

test('a page of the rig says its name and its state, and leads back to the rig of its day', () => {
  const { store } = openDay(speaker().day());
  const { root } = showIn(store, () => h(PrepTop, { title: 'Radio' }, '3 on the air'));
  expect(root.all('h1').map(({ textContent }) => textContent)).toEqual(['Radio']);
  expect(root.all('a').map(({ attributes }) => attributes.get('href'))).toEqual(['#/day/day-1/rig']);
  expect(root.textContent).toContain('3 on the air');
});

test('each caution that is asked for is said, and no other', () => {
  const { root } = show(h(Cautions, { of: ['radio', 'lithium'] }));
  expect(root.all('p').map(({ textContent }) => textContent)).toEqual([CAUTIONS.radio, CAUTIONS.lithium]);
});
