import { describe, expect, test } from 'vitest';
import { markOut } from '../../src/commands/line/plan-ahead.ts';
import type { Day } from '../../src/day/model.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { planNextSetup } from './at-once.ts';

const WANTED = new Set(['ines']);

/** Ines by A1, near 1, its output, lead l1 and AES 1 on track 3, with this marked as out of order, or nothing. */
function dayWithOut(part?: string): Day {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const said = part === undefined ? undefined : markOut(part, true);
  if (said?.ok) phone.say(...said.value);
  return phone.day();
}

/** What of the problem is out, by its id; of paths their source. */
function outIn(day: Day): string[] {
  const { transmitters, channels, inputs, tracks, paths } = problemOf(day, WANTED);
  const parts = [...transmitters, ...channels, ...inputs, ...tracks].filter(({ out }) => out);
  const sources = paths.filter(({ out }) => out).map(({ source }) => `path of ${source}`);
  return [...parts.map(({ id }) => id), ...new Set(sources)];
}

const chainOf = (day: Day) => {
  const plan = planNextSetup(problemOf(day, WANTED));
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value.recorded[0];
};

test('nothing is out that was not marked, and what stands is left', () => {
  expect(outIn(dayWithOut())).toEqual([]);
  expect(chainOf(dayWithOut())).toMatchObject({
    transmitter: 'A1',
    source: 'near1',
    input: 'aes1',
    track: 'tr3',
  });
});

describe('what is marked as out of order', () => {
  test.each([
    ['A1', ['A1'], 'transmitter'],
    ['near1', ['near1'], 'source'],
    ['near1out', ['path of near1'], 'source'],
    ['l1', ['path of near1'], 'source'],
    ['aes1', ['aes1'], 'input'],
    ['tr3', ['tr3'], 'track'],
  ] as const)('%s: it alone is out, and the plan goes round it', (part, out, link) => {
    const day = dayWithOut(part);
    expect(outIn(day)).toEqual(out);
    const chain = chainOf(day)!;
    expect(chain.voice).toBe('ines');
    expect(chain[link]).not.toBe(chainOf(dayWithOut())![link]);
  });

  test('every way that leaves by an output that is out is out, and no other', () => {
    const { paths } = problemOf(dayWithOut('near1out'), WANTED);
    expect(paths.filter(({ out }) => out)).toEqual(paths.filter(({ source }) => source === 'near1'));
    expect(paths.filter(({ out }) => out).length).toBeGreaterThan(1);
  });
});
