import { describe, expect, test } from 'vitest';
import { loadSample } from '../../../sample-days/load.ts';
import { carryOver, headAfter, newDayHead } from '../../../src/commands/day/start-day.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { outAt, pinsOf, weightsIn } from '../../../src/day/chain/links.ts';
import type { Day } from '../../../src/day/model.ts';
import { scenesInOrder } from '../../../src/day/scenes-in-order.ts';
import { MORNING, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const NOW = { atMs: MORNING, zone: 120 };

/** The day that is started from one at a moment. */
function nextDayOf(today: Day, now = NOW): Day {
  const said = carryOver(today, now);
  if (!said.ok) throw new Error(said.problem.code);
  const phone = speaker('phonez');
  phone.say(...said.value);
  return phone.day();
}

describe('tomorrow from today', () => {
  test('has the scenes that are not done, those moved to another day after the others, and no call times', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { pickUp: '06:30', onSet: '07:15' } });
    const scene = (number: string, order: number, more = {}) => ({
      scene: `s${number}`,
      fields: { number, set: 'QUAY', voices: ['ines', 'tomas'], others: ['9'], order, ...more },
    });
    phone.say({
      kind: 'scenes-described',
      scenes: [
        scene('46', 1, { state: 'done' }),
        scene('47', 2, { state: 'moved' }),
        scene('48', 3),
        scene('49', 4, { struck: true }),
        scene('50', 5, { state: 'to-shoot' }),
      ],
    });
    phone.say({ kind: 'voice-described', voice: 'tomas', fields: { struck: true } });
    const tomorrow = nextDayOf(phone.day());
    expect(
      scenesInOrder(tomorrow).map(({ number, state, set, voices, others }) => [
        number,
        state,
        set,
        voices,
        others,
      ]),
    ).toEqual([
      ['48', 'to-shoot', 'QUAY', ['ines'], ['9']],
      ['50', 'to-shoot', 'QUAY', ['ines'], ['9']],
      ['47', 'to-shoot', 'QUAY', ['ines'], ['9']],
    ]);
    expect(tomorrow.voices.get('ines')).toMatchObject({ part: 'Ines', pickUp: '', onSet: '' });
  });

  test('has the head of today, crew and rates and all, but for date, remarks, roll of the tone and the sample mark', () => {
    const { header } = loadSample('full');
    const head = headAfter({
      ...header,
      mixer: 'N. Aske',
      timecodeRate: '29.97DF',
      remarks: 'Sea wind',
      toneRoll: '14C',
    });
    expect(head).toMatchObject({ mixer: 'N. Aske', timecodeRate: '29.97DF', label: 'Night 15' });
    for (const field of ['date', 'remarks', 'sample', 'toneRoll']) expect(head).not.toHaveProperty(field);
  });

  test('has the rig as it stands, the cast and the crew; packs are off', () => {
    const today = loadSample('full');
    const tomorrow = nextDayOf(today);
    expect([...tomorrow.rig.byId.keys()].sort()).toEqual([...today.rig.byId.keys()].sort());
    expect([...tomorrow.voices.values()].map(({ part }) => part)).toEqual(
      [...today.voices.values()].filter(({ struck }) => !struck).map(({ part }) => part),
    );
    expect(tomorrow.header).toMatchObject({ production: 'Nine Below Arnholt', label: 'Night 15' });
    expect(answersNow(tomorrow).voices.some(({ paths }) => paths.some((path) => path.transmitter))).toBe(
      false,
    );
    const routes = (day: Day) => answersNow(day).inputs.map(({ input, reach }) => [input.id, reach.tracks]);
    expect(routes(tomorrow)).toEqual(routes(today));
  });

  test('is a day to play in too where today is the sample day, so no real day proposes its production', () => {
    const today = loadSample('full');
    expect(today.header.sample).toBe(true);
    expect(nextDayOf(today).header.sample).toBe(true);
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { production: 'Salt Road' } });
    expect(nextDayOf(phone.day()).header.sample).toBe(false);
  });
});

describe('what was said of the rig and the cast', () => {
  const today = () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    return phone;
  };

  test('is out of order tomorrow where it is today, a lead and a pack alike, and not where it was mended', () => {
    const phone = today();
    for (const part of ['aes2', 'A3', 'l1', 'tr5', 'near2'])
      phone.say({ kind: 'out-marked', part, out: true });
    phone.say({ kind: 'out-marked', part: 'tr5', out: false });
    phone.say({ kind: 'part-described', part: 'near2', fields: { struck: true } });
    const { links } = answersNow(nextDayOf(phone.day()));
    const out = ['aes2', 'A3', 'l1', 'tr5', 'near2'].map((part) => outAt(links, part)?.value ?? false);
    expect(out).toEqual([true, true, true, false, false]);
  });

  test('leaves a pack off that is off', () => {
    const phone = today();
    phone.say({ kind: 'transmitters-switched', transmitters: ['A1', 'A2', 'A3'], on: false });
    phone.say({ kind: 'transmitters-switched', transmitters: ['A2'], on: true });
    phone.say({ kind: 'part-described', part: 'A3', fields: { struck: true } });
    expect([...nextDayOf(phone.day()).upkeep.on]).toEqual([['A1', false]]);
  });

  test('keeps what a plan has to keep and what moves cost, but for what is struck', () => {
    const phone = today();
    phone.say({
      kind: 'voice-pinned',
      voice: 'ines',
      pins: { transmitter: 'A1', track: 'tr5', alone: true },
    });
    phone.say({ kind: 'voice-pinned', voice: 'dora', pins: { track: 'tr5' } });
    phone.say({ kind: 'voice-pinned', voice: 'tomas', pins: { alone: true } });
    phone.say({ kind: 'moves-weighed', weights: { retune: 40 } });
    phone.say({ kind: 'part-described', part: 'tr5', fields: { struck: true } });
    phone.say({ kind: 'voice-described', voice: 'tomas', fields: { struck: true } });
    const { links } = answersNow(nextDayOf(phone.day()));
    expect(['ines', 'dora', 'tomas'].map((voice) => pinsOf(links, voice)?.value)).toEqual([
      { transmitter: 'A1', alone: true },
      undefined,
      undefined,
    ]);
    expect(weightsIn(links)?.value).toEqual({ retune: 40 });
  });

  test('keeps the names typed for tracks that no pack arrives at, and no name typed for a wearer', () => {
    const phone = today();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: null }] });
    const typed = { tr1: 'Mix L', tr2: 'Boom over', tr3: 'Ines lav', tr4: 'Dora lav', tr5: 'Playback' };
    for (const [track, name] of Object.entries(typed)) phone.say({ kind: 'track-named', track, name });
    const names = answersNow(nextDayOf(phone.day())).tracks.map(({ name }) => name);
    expect(names).toEqual(['Mix L', 'Boom over', '', '', 'Playback']);
  });
});

describe('the date of tomorrow', () => {
  const dated = (date: string) => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { label: 'Day 3', date } });
    return phone;
  };
  const at = (iso: string, zone = 120) => ({ atMs: Date.parse(`${iso}Z`) - zone * 60_000, zone });

  test.each([
    ['at wrap', '2026-10-07T19:30', '2026-10-08'],
    ['past midnight', '2026-10-08T02:15', '2026-10-08'],
    ['after a weekend', '2026-10-12T06:00', '2026-10-12'],
    ['before the day itself, while prepping', '2026-09-30T12:00', '2026-10-08'],
  ])('is the next one, or that of the phone where it is later: %s', (_, now, date) => {
    expect(nextDayOf(dated('2026-10-07').day(), at(now)).header.date).toBe(date);
  });

  test('is over the end of the month and the year', () => {
    expect(nextDayOf(dated('2026-12-31').day(), at('2026-12-31T20:00')).header.date).toBe('2027-01-01');
  });

  test('follows the first take of a day that was given no date, and is the phone’s where there is none', () => {
    const phone = dated('');
    expect(nextDayOf(phone.day(), at('2026-10-07T19:30')).header.date).toBe('2026-10-07');
    phone.say(take('24', 1, 1));
    expect(nextDayOf(phone.day(), at('2026-10-07T19:30')).header.date).toBe('2026-10-08');
  });
});

describe('the head of a new day', () => {
  const last = {
    production: 'Salt Road',
    label: 'Day 8',
    mixer: 'N. Aske',
    recorder: 'Recorder one',
    unit: 'Second unit',
    timecodeRate: '24',
  } as const;

  test('goes on from the day before while the production is the same', () => {
    expect(newDayHead(last, { date: '2026-10-08' })).toEqual({ ...last, date: '2026-10-08' });
    expect(newDayHead(last, { production: ' salt road', label: 'Day 9' })).toEqual({
      ...last,
      production: ' salt road',
      label: 'Day 9',
    });
  });

  test('has nothing of the day before in another production, neither crew, unit nor recorder', () => {
    const head = newDayHead(last, { production: 'Harbour Lights', date: '2026-10-08' });
    expect(head).toEqual({
      production: 'Harbour Lights',
      label: 'Day 1',
      date: '2026-10-08',
      timecodeRate: '25',
    });
    expect(newDayHead(last, { production: '' })).not.toHaveProperty('mixer');
    expect(newDayHead({ mixer: 'N. Aske' }, { production: 'Harbour Lights' })).not.toHaveProperty('mixer');
  });
});
