import { describe, expect, test } from 'vitest';
import { loadSample } from '../../sample-days/load.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { pinsOf } from '../../src/day/chain/links.ts';
import { checkPlan, dayPlan } from '../../src/radio/day/day-plan.ts';
import { hitCount, namedHits } from '../../src/radio/day/named-hits.ts';
import { analyse } from '../../src/radio/intermodulation/analyse.ts';
import { upkeepAt } from '../../src/upkeep/due/day-due.ts';
import { networkRun, runsOf } from '../../src/upkeep/wiring/day-runs.ts';

const day = loadSample('full');
const minutes = (ms: number | undefined): string =>
  ms === undefined ? '' : new Date(ms + 3_600_000).toISOString().slice(11, 16);

describe('the radio of the full sample day', () => {
  const plan = dayPlan(day);

  // By hand: 2 × 519.500 − 521.000 = 518.000, and 2 × 519.950 − 521.000 = 518.900.
  test('has two hits, both by the video link that came on late, on packs that are worn', () => {
    const { result } = checkPlan(plan);
    if (!result.ok) throw new Error(result.problem.code);
    expect(hitCount(result.value)).toEqual({ hits: 2, edges: 0 });
    expect(
      namedHits(result.value, plan).map(({ hit, sources, victim }) => [
        sources.map(({ name }) => name).join(' and '),
        victim.name,
        hit.productKhz,
        hit.distanceKhz,
      ]),
    ).toEqual([
      ['A4 and Video link B', 'A1', 518_000, 0],
      ['A5 and Video link B', 'A3', 518_900, 0],
    ]);
  });

  test('has a set of 17 frequencies that is clean, all of them on the air at once', () => {
    const packs = plan.all.filter(({ type }) => type === 'pack');
    const carriers = packs.map(({ id, name, khz }) => ({
      id,
      name,
      khz: khz!,
      victim: true,
      transmitting: true,
    }));
    expect(carriers).toHaveLength(17);
    const all = analyse(carriers, plan.guards, { occupied: plan.occupied });
    expect(all.ok && hitCount(all.value)).toEqual({ hits: 0, edges: 0 });
  });
});

describe('what falls due on the full sample day, ten past four', () => {
  const upkeep = upkeepAt(day, Date.parse('2026-11-20T03:10:00Z'));

  // A1: fresh at 22:26, six hours, of which 80 % are 4:48. Camera B: one ppm at 25 frames a second is a frame, 40 ms,
  // in 40 000 s, or 11:06:40, from 16:26. Card 2 fills before wrap.
  test('is a pack, a timecode and a card; everything else is later', () => {
    const due = upkeep.due.items.filter(({ action }) => action === 'now');
    expect(due.map(({ name }) => name).sort()).toEqual(['A1', 'camera-b', 'card-2']);
    expect(minutes(due.find(({ name }) => name === 'A1')?.dueAtMs)).toBe('03:14');
    expect(minutes(due.find(({ name }) => name === 'camera-b')?.dueAtMs)).toBe('03:32');
    expect(upkeep.due.items.some(({ action, kind }) => action === 'later' && kind === 'cells')).toBe(true);
  });

  test('names what will not last to wrap at five, and knows when every pack had fresh cells', () => {
    const short = upkeep.cells.due.filter(({ toWrap }) => toWrap !== 'lasts');
    expect(short.map(({ device, toWrap, emptyAtMs }) => [device, toWrap, minutes(emptyAtMs)])).toEqual([
      ['A1', 'runs-out', '04:26'],
    ]);
    expect(upkeep.withoutCells).toEqual([]);
    expect(upkeep.withoutJam).toEqual([]);
  });

  // 48 000 × 3 bytes × 16 tracks are 2.304 MB a second.
  test('has one card out with two copies, one that fills, and one in each of the other recorders', () => {
    const inCart = upkeep.cards.filter(({ card }) => card.recorder === 'recorder');
    expect(upkeep.cards.map(({ card }) => card.card)).toEqual([
      'Card 1',
      'Bag card',
      'Card 2',
      'Backup card',
    ]);
    expect(inCart.map(({ card }) => [card.card, card.out, card.copies])).toEqual([
      ['Card 1', true, 2],
      ['Card 2', false, 0],
    ]);
    expect(inCart[1]!.left).toMatchObject({ ok: true, value: { lastsToWrap: false } });
  });
});

test('the far box of the full sample day hangs on 85 m that hold, close to the 100 m of the standard', () => {
  const far = runsOf(day).find(({ type }) => type === 'network')!;
  const { lead, sound } = networkRun(day, far);
  expect(lead).toMatchObject({ ok: true, value: { broken: [] } });
  expect(lead.ok && lead.value.limits[0]).toEqual({ limit: 'data-length', metres: 100 });
  expect(sound?.ok).toBe(true);
});

test('one voice of the full sample day keeps her pack whatever is planned', () => {
  const { links } = answersNow(day);
  const pinned = [...day.voices.keys()].filter((voice) => pinsOf(links, voice)?.value);
  expect(pinned).toEqual(['sian']);
  expect(pinsOf(links, 'sian')?.value).toEqual({ transmitter: 'A4' });
});
