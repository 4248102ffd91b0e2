import { describe, expect, test } from 'vitest';
import { settingsAtTake } from '../../src/day/settings/settings.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { RateId } from '../../src/time/rate.ts';
import { parseTimecode } from '../../src/time/timecode.ts';
import { speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, detailOf, openOn, settle } from './check-card.ts';

const start = (digits: string, rate: RateId) => {
  const read = parseTimecode(digits, rate);
  if (!read.ok) throw new Error(read.problem.code);
  return { start: { frames: read.value, rate } };
};

const SET: Draft = { kind: 'recorder-set', settings: { timecodeRate: '23.976', sampleRate: 96_000 } };

/** Six takes, the last three after the recorder was set otherwise; `said` is where the log has it. */
function changingDay(said: 'in its place' | 'never' | 'a take early') {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'roll-changed', roll: '7A' });
  phone.say({ kind: 'day-described', fields: { timecodeRate: '25', sampleRate: 48_000 } });
  const ids = [0, 1, 2].map((at) => phone.id(take('24', at, 1, start(`10:0${at}:10:12`, '25'))));
  if (said === 'in its place') phone.say(SET);
  if (said === 'a take early') phone.say({ ...SET, before: ids[2]! } as Draft);
  for (const at of [3, 4, 5]) phone.say(take('24', at, 1, start(`10:0${at}:10:12`, '23.976')));
  return { phone, ids };
}

/** What the recorder wrote, whatever the log says of it. */
const written = (): CardFile[] => cardOf(changingDay('in its place').phone.day());

describe('a card whose recorder was set otherwise in the middle of the day', () => {
  test('agrees with a log that says where', async () => {
    const { phone } = changingDay('in its place');
    expect(openOn(phone.day(), await recordCard(written()))).toEqual([]);
  });

  test('differs in the takes after it from a log that never says so', async () => {
    const { phone } = changingDay('never');
    const open = openOn(phone.day(), await recordCard(written()));
    expect(open.map(({ code, was, is }) => `${code}: ${was} / ${is}`).sort()).toEqual([
      ...Array(3).fill('sample-rate-differs: 48000 / 96000'),
      ...Array(3).fill('timecode-rate-differs: 25 / 23.976'),
    ]);
  });

  test('moves a change that the log has a take early, as one difference for each setting', async () => {
    const { phone, ids } = changingDay('a take early');
    const recordings = await recordCard(written());
    // At the wrong rate the start of that take differs too, until the rate is settled.
    const open = openOn(phone.day(), recordings).filter(({ code }) => code.endsWith('rate-differs'));
    expect(open.map((one) => [one.code, one.was, one.is, detailOf(one).count])).toEqual([
      ['sample-rate-differs', 96_000, 48_000, 1],
      ['timecode-rate-differs', '23.976', '25', 1],
    ]);
    for (const difference of open) settle(phone, byFile(difference));
    const day = phone.day();
    expect(day.takeOrder.map((id) => settingsAtTake(day, id).timecodeRate)).toEqual([
      '25',
      '25',
      '25',
      '23.976',
      '23.976',
      '23.976',
    ]);
    expect(settingsAtTake(day, ids[2]!).sampleRate).toBe(48_000);
    expect(openOn(day, recordings)).toEqual([]);
  });
});
