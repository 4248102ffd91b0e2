import { describe, expect, test } from 'vitest';
import type { Draft } from '../../../src/facts/fact.ts';
import { SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { spreadOut } from '../../../src/radio/clean/clean-positions.ts';
import { seededBelow } from '../../../src/radio/clean/seeded.ts';
import { type Checked, checkPlan, dayPlan } from '../../../src/radio/day/day-plan.ts';
import {
  groupOf,
  groupsOf,
  neighbourhoodOf,
  rangeProblemOf,
  rangesFor,
  spacingOfGroup,
} from '../../../src/radio/day/day-ranges.ts';
import { carriersWithout, hitCount, namedHits } from '../../../src/radio/day/named-hits.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const tuned = (...khz: (number | null)[]): Draft => ({
  kind: 'rig-laid',
  parts: khz.map((at, place) => ({ part: `A${place + 1}`, fields: { khz: at } })),
});

function rigged(...more: Draft[]) {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...more);
  return phone;
}

const analysed = (checked: Checked) => {
  if (!checked.result.ok) throw new Error(checked.result.problem.code);
  return checked.result.value;
};

describe('the plan of a day', () => {
  test('is every pack with a frequency, listened to where a channel is tuned to it', () => {
    const phone = rigged(tuned(470_100, 470_500, null));
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near2', transmitter: null }] });
    const plan = dayPlan(phone.day());
    expect(plan.carriers).toEqual([
      { id: 'A1', name: 'A1', khz: 470_100, transmitting: true, victim: true },
      { id: 'A2', name: 'A2', khz: 470_500, transmitting: true, victim: false },
    ]);
    expect(plan.all.map(({ id, khz }) => [id, khz])).toEqual([
      ['A1', 470_100],
      ['A2', 470_500],
      ['A3', null],
    ]);
    expect(plan.guards).toEqual(SUGGESTED_GUARDS);
  });

  test('a pack that is off does not transmit, and its open channel still listens while somebody wears it', () => {
    const phone = rigged(tuned(470_100, 470_500));
    phone.say({ kind: 'transmitters-switched', transmitters: ['A1', 'A2'], on: false });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    const [a1, a2] = dayPlan(phone.day()).carriers;
    expect([a1?.transmitting, a1?.victim]).toEqual([false, true]);
    expect([a2?.transmitting, a2?.victim]).toEqual([false, false]);
  });

  test('other carriers radiate, are hit only where that was said, and keep their own spacing', () => {
    const phone = rigged(tuned(470_100));
    phone.say(
      { kind: 'carrier-described', carrier: 'A1', fields: { name: 'Comms', khz: 470_300, spacingKhz: 250 } },
      { kind: 'carrier-described', carrier: 'x', fields: { name: 'Link', khz: 480_000, heard: true } },
      { kind: 'carrier-described', carrier: 'y', fields: { name: 'Gone', khz: 470_200, struck: true } },
    );
    const plan = dayPlan(phone.day());
    expect(plan.carriers.slice(1)).toEqual([
      { id: 'other:A1', name: 'Comms', khz: 470_300, spacingKhz: 250, transmitting: true, victim: false },
      { id: 'other:x', name: 'Link', khz: 480_000, transmitting: true, victim: true },
    ]);
  });

  test('hits are named with whoever wears the pack, and those on somebody come first', () => {
    // 2 × 470.500 − 470.100 = 470.900.
    const phone = rigged(tuned(470_100, 470_500, 470_900));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'ines' });
    const checked = checkPlan(dayPlan(phone.day()));
    const [first] = namedHits(analysed(checked), checked.plan);
    expect(first?.victim.voice).toBe('ines');
    expect(first?.sources.map(({ name }) => name)).toEqual(['A2', 'A1']);
    expect(first?.hit).toMatchObject({ productKhz: 470_900, distanceKhz: 0 });
    expect(hitCount(analysed(checked))).toEqual({ hits: 2, edges: 0 });
  });

  test('frequencies and stretches that cannot be are told and do not stop the rest', () => {
    const phone = rigged(tuned(1, 470_100, 470_200));
    phone.say(
      {
        kind: 'band-described',
        band: 'b',
        fields: { use: 'occupied', name: 'Low', fromKhz: 1, toKhz: 99_000_000 },
      },
      {
        kind: 'band-described',
        band: 'c',
        fields: { use: 'occupied', name: 'Down', fromKhz: 480_000, toKhz: 470_000 },
      },
    );
    const checked = checkPlan(dayPlan(phone.day()));
    expect(checked.plan.all[0]?.problem?.code).toBe('frequency-too-low');
    expect(checked.plan.occupied).toEqual([]);
    expect(analysed(checked).counts.spacing).toBe(1);
  });

  test('more carriers than can be worked out is a problem, not a wait', () => {
    const phone = rigged();
    phone.say(
      ...Array.from(
        { length: 600 },
        (_, at): Draft => ({
          kind: 'carrier-described',
          carrier: `c${at}`,
          fields: { name: `C ${at}`, khz: 470_000 + 25 * at },
        }),
      ),
    );
    expect(checkPlan(dayPlan(phone.day())).result).toEqual({
      ok: false,
      problem: { code: 'carriers-too-many', count: 600, most: 512 },
    });
  });

  test('a carrier in spectrum in use is counted at its edge', () => {
    const phone = rigged(tuned(470_100, 488_000));
    phone.say({
      kind: 'band-described',
      band: 'tv',
      fields: { use: 'occupied', name: 'TV 17', fromKhz: 488_000, toKhz: 494_000 },
    });
    expect(hitCount(analysed(checkPlan(dayPlan(phone.day()))))).toEqual({ hits: 0, edges: 1 });
  });
});

test('checked again from the last check the plan comes out as from scratch, whatever was said (seed 4711)', () => {
  const below = seededBelow(4711);
  const phone = rigged(tuned(470_100, 470_500, 471_300));
  let last: Checked | undefined;
  for (let step = 0; step < 60; step += 1) {
    const part = `A${1 + below(3)}`;
    const choices: Draft[] = [
      {
        kind: 'part-described',
        part,
        fields: { khz: below(6) === 0 ? null : 470_000 + 25 * below(80), struck: below(9) === 0 },
      },
      { kind: 'transmitters-switched', transmitters: [part], on: below(2) > 0 },
      { kind: 'transmitter-worn', transmitter: part, voice: below(2) > 0 ? 'ines' : null },
      { kind: 'guards-set', guards: { twoToneThirdKhz: 50 * below(4) } },
      {
        kind: 'carrier-described',
        carrier: 'x',
        fields: { name: 'X', khz: 470_000 + 25 * below(80), heard: below(2) > 0 },
      },
    ];
    phone.say(choices[below(choices.length)]!);
    const plan = dayPlan(phone.day());
    last = checkPlan(plan, last);
    expect(last.result).toEqual(checkPlan(plan).result);
  }
});

describe('where packs tune', () => {
  const phone = rigged(tuned(470_100, 470_110));
  phone.say(
    {
      kind: 'band-described',
      band: 'a',
      fields: {
        use: 'tunable',
        group: 'A',
        fromKhz: 470_000,
        toKhz: 476_000,
        rasterKhz: 25,
        spacingKhz: 350,
      },
    },
    { kind: 'band-described', band: 'all', fields: { use: 'tunable', fromKhz: 500_000, toKhz: 510_000 } },
  );
  const day = phone.day();

  test('is said for packs named alike, and for all others at once', () => {
    expect(rangesFor(day, 'A3').map(({ id }) => id)).toEqual(['a']);
    expect(rangesFor(day, 'B1')).toMatchObject([{ id: 'all', rasterKhz: 25 }]);
    expect(spacingOfGroup(day, 'A3')).toBe(350);
    expect(spacingOfGroup(day, 'B1')).toBeUndefined();
    expect(neighbourhoodOf(day)).toEqual({ fromKhz: 470_000, toKhz: 510_000 });
  });

  test('a frequency outside or off the raster is told', () => {
    expect(rangeProblemOf(day, 'A1', 470_100)).toBeUndefined();
    expect(rangeProblemOf(day, 'A1', 470_110)?.code).toBe('frequency-off-raster');
    expect(rangeProblemOf(day, 'A1', 480_000)?.code).toBe('frequency-outside-ranges');
  });

  test.each([
    ['A12', 'A'],
    ['Pack 3', 'Pack'],
    ['7', ''],
    ['Comms', 'Comms'],
  ])('%s belongs to the packs named %j', (name, group) => {
    expect(groupOf(name)).toBe(group);
  });

  test('groups stand in reading order with their packs', () => {
    expect(groupsOf(day)).toEqual([{ group: 'A', packs: ['A1', 'A2', 'A3'] }]);
    expect(carriersWithout(dayPlan(day), ['A1']).map(({ id }) => id)).toEqual(['A2']);
  });
});

test('of neighbouring clean positions the best stands for all', () => {
  const at = (khz: number) => ({ khz, marginKhz: 100, limitedBy: 'spacing' as const });
  expect(spreadOut([at(500), at(525), at(950), at(100), at(1400)], 400, 3).map(({ khz }) => khz)).toEqual([
    500, 950, 100,
  ]);
});
