import { describe, expect, test } from 'vitest';
import { cutTake, rollTake } from '../../../src/commands/line/log-takes.ts';
import { rateOfTake } from '../../../src/commands/line/typed-take.ts';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import { fileNamesOf } from '../../../src/day/files/file-name.ts';
import { filesOfTakes } from '../../../src/day/files/take-files.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import {
  headerNow,
  rateAtTake,
  rateNow,
  settingsAtTake,
  settingsNow,
  startOfTake,
} from '../../../src/day/settings/settings.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { dayTotals } from '../../../src/day/wrap/day-totals.ts';
import type { RateId } from '../../../src/time/rate.ts';
import { formatTimecode, parseTimecode } from '../../../src/time/timecode.ts';
import { cardsOf, formatOf } from '../../../src/upkeep/due/day-cards.ts';
import { MORNING, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

const at = (digits: string, rate: RateId) => {
  const read = parseTimecode(digits, rate);
  if (!read.ok) throw new Error(read.problem.code);
  return { frames: read.value, rate };
};

/** Twelve seconds, so that bytes are easily counted. */
const lasting = (rate: RateId, frames: number) => ({ length: { frames, rate } });

/** Two takes at 25, then the recorder is set to 23.976, 96 kHz and mono files, and two more. */
function changingDay() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, {
    kind: 'day-described',
    fields: { timecodeRate: '25', sampleRate: 48_000, bitDepth: '24' },
  });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const first = phone.id(take('24', 0, 1, { start: at('10:00:00:12', '25'), ...lasting('25', 300) }));
  const second = phone.id(take('24', 0, 2, { start: at('10:05:00:24', '25'), ...lasting('25', 300) }));
  const set = phone.id({
    kind: 'recorder-set',
    settings: {
      timecodeRate: '23.976',
      sampleRate: 96_000,
      fileLayout: 'mono',
      filePattern: '{slate}-{take:2}',
    },
  });
  const third = phone.id(take('24', 1, 1, { start: at('11:00:00:23', '23.976'), ...lasting('23.976', 288) }));
  const fourth = phone.id(
    take('24', 1, 2, { start: at('11:10:00:00', '23.976'), ...lasting('23.976', 288) }),
  );
  return { phone, first, second, third, fourth, set };
}

const startsOf = (day: Day): string[] =>
  takesInOrder(day).map((one) => {
    const start = startOfTake(day, one);
    return start ? formatTimecode(start.frames, start.rate) : '';
  });
const ratesOf = (day: Day): (RateId | null)[] => day.takeOrder.map((id) => rateAtTake(day, id));

describe('what a recorder is set to, from 25 to 23.976 between two takes', () => {
  test('holds from its place on the line on, and the takes before it keep what they had', () => {
    const { phone, first, fourth } = changingDay();
    const day = phone.day();
    expect(ratesOf(day)).toEqual(['25', '25', '23.976', '23.976']);
    expect(settingsAtTake(day, first)).toEqual({
      timecodeRate: '25',
      sampleRate: 48_000,
      bitDepth: '24',
      fileLayout: 'poly',
      filePattern: '{slate}T{take}',
    });
    expect(settingsAtTake(day, fourth)).toEqual(settingsNow(day));
    expect(rateNow(day)).toBe('23.976');
    expect(startsOf(day)).toEqual(['10:00:00:12', '10:05:00:24', '11:00:00:23', '11:10:00:00']);
  });

  test('names the files and lays them out as it was at each take', () => {
    const { phone, first, third } = changingDay();
    const day = phone.day();
    expect([...fileNamesOf(day).values()]).toEqual(['24T1.wav', '24T2.wav', '24A-01.wav', '24A-02.wav']);
    expect(filesOfTakes(day).get(first)).toEqual([{ name: '24T1.wav', track: null }]);
    expect(
      filesOfTakes(day)
        .get(third)!
        .map(({ name }) => name),
    ).toEqual(['24A-01_1.wav', '24A-01_2.wav', '24A-01_3.wav']);
  });

  test('counts bytes and room on the card by the format of each take', () => {
    const { phone } = changingDay();
    phone.say({
      kind: 'card-described',
      card: 'c1',
      fields: { name: 'A', bytes: 64_000_000_000, tracks: 4, inAtMs: MORNING },
    });
    const day = phone.day();
    // Three tracks (mix, boom, Ines) of 3 bytes: 2 takes of 12 s at 48 kHz, 2 of 12.012 s at 96 kHz.
    const early = 2 * 3 * 3 * 48_000 * 12;
    const late = 2 * 3 * 3 * 96_000 * 12.012;
    expect(Math.abs(dayTotals(day).bytes - early - late)).toBeLessThan(2000);
    expect(formatOf(day)).toMatchObject({ sampleRate: 96_000, bits: 24 });
    const [card] = cardsOf(day, MORNING + 3_600_000);
    expect(card?.otherwise?.map(({ ms, format }) => [ms, format.sampleRate])).toEqual([
      [12_000, 48_000],
      [12_000, 48_000],
    ]);
  });

  test('one late correction before the change and one after touch the tracks and not the rates', () => {
    const { phone, second, fourth } = changingDay();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora', before: second });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas', before: fourth });
    const day = phone.day();
    const names = (id: string) =>
      answersAtTake(day, id)
        .tracks.filter(({ state }) => state === 'single')
        .map(({ name }) => name);
    expect(day.takeOrder.map(names)).toEqual([
      ['Boom', 'Ines'],
      ['Boom', 'Ines', 'Dora'],
      ['Boom', 'Ines', 'Dora'],
      ['Boom', 'Ines', 'Dora', 'Tomas'],
    ]);
    expect(ratesOf(day)).toEqual(['25', '25', '23.976', '23.976']);
    expect(day.takeOrder.map((id) => settingsAtTake(day, id).fileLayout)).toEqual([
      'poly',
      'poly',
      'mono',
      'mono',
    ]);
  });

  test('placed before the second take afterwards, that take shows digits that exist at 23.976', () => {
    const { phone, second, set } = changingDay();
    phone.say({ kind: 'fact-moved', target: set, to: second });
    const day = phone.day();
    expect(ratesOf(day)).toEqual(['25', '23.976', '23.976', '23.976']);
    expect(startsOf(day)).toEqual(['10:00:00:12', '10:05:00:23', '11:00:00:23', '11:10:00:00']);
  });

  test('a change of one setting leaves the others as they were set', () => {
    const { phone } = changingDay();
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '25' } });
    expect(settingsNow(phone.day())).toMatchObject({ timecodeRate: '25', sampleRate: 96_000 });
  });

  test('taken back, the day reads as its head has it', () => {
    const { phone, set } = changingDay();
    phone.say({ kind: 'fact-retracted', targets: [set], by: 'undo' });
    const day = phone.day();
    expect(new Set(ratesOf(day))).toEqual(new Set(['25']));
    expect(startsOf(day).slice(2)).toEqual(['11:00:00:23', '11:10:00:00']);
    expect(headerNow(day)).toEqual(day.header);
  });

  test('a head described later holds for the whole day, beneath what the line says', () => {
    const { phone } = changingDay();
    phone.say({ kind: 'day-described', fields: { timecodeRate: '24', bitDepth: '32f' } });
    const day = phone.day();
    expect(ratesOf(day)).toEqual(['24', '24', '23.976', '23.976']);
    expect(settingsNow(day).bitDepth).toBe('32f');
  });
});

describe('29.97 drop-frame over midnight', () => {
  test('the label goes on after midnight, and one that is left out is the next that exists', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { timecodeRate: '29.97' } });
    phone.say(take('24', 0, 1, { start: at('23:57:00:00', '29.97') }));
    const second = phone.id(take('24', 0, 2, { start: at('23:58:00:00', '29.97') }));
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '29.97DF' }, before: second });
    phone.say(take('24', 0, 3, { start: at('23:59:59;29', '29.97DF') }));
    phone.say(take('24', 0, 4, { start: at('00:00:00;00', '29.97DF') }));
    expect(startsOf(phone.day())).toEqual(['23:57:00:00', '23:58:00;02', '23:59:59;29', '00:00:00;00']);
  });

  test('a take that rolled before midnight and was cut after it is as long as the time that passed', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '29.97DF' } });
    const tied = Date.UTC(2026, 9, 7, 22);
    phone.say({
      kind: 'clock-followed',
      ...at('23:59:50;00', '29.97DF'),
      atMs: tied,
    });
    const rolled = rollTake(phone.day(), { atMs: tied + 5000, zone: 120 });
    if (!rolled.ok) throw new Error(rolled.problem.code);
    phone.say(...rolled.value);
    const cut = cutTake(phone.day(), { atMs: tied + 25_000, zone: 120 });
    if (!cut.ok) throw new Error(cut.problem.code);
    phone.say(...cut.value);
    const day = phone.day();
    const last = takesInOrder(day).at(-1)!;
    expect(startsOf(day).at(-1)).toBe('23:59:54;29');
    expect(last.length).toEqual({ frames: 599, rate: '29.97DF' });
  });
});

describe('the followed clock, when the rate is set otherwise', () => {
  test('goes on with its digits at the new rate', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { timecodeRate: '25' } }, take('24', 0, 1));
    phone.say({ kind: 'clock-followed', ...at('10:00:00:00', '25'), atMs: MORNING });
    phone.say({ kind: 'recorder-set', settings: { timecodeRate: '23.976' } });
    const rolled = rollTake(phone.day(), { atMs: MORNING + 10_010, zone: 120 });
    if (!rolled.ok) throw new Error(rolled.problem.code);
    phone.say(...rolled.value);
    const day = phone.day();
    expect(takesInOrder(day).at(-1)!.start?.rate).toBe('23.976');
    expect(startsOf(day).at(-1)).toBe('10:00:10:00');
  });

  test('a take logged late is read at the rate of its place', () => {
    const { phone, second, fourth } = changingDay();
    const day = phone.day();
    expect(rateOfTake(day, {}, second)).toBe('25');
    expect(rateOfTake(day, {}, fourth)).toBe('23.976');
    expect(rateOfTake(day, {})).toBe('23.976');
    expect(rateOfTake(day, day.takes.get(second)!)).toBe('25');
    expect(rateOfTake(day, day.takes.get(fourth)!)).toBe('23.976');
  });
});

describe('two phones that set the recorder without knowing of each other', () => {
  test('differ on that setting alone, and what stands holds from where it began', () => {
    const a = speaker('phonea');
    const b = speaker('phoneb', MORNING + 1000);
    a.say(take('24', 0, 1));
    const [one] = a.say({ kind: 'recorder-set', settings: { timecodeRate: '24', bitDepth: '24' } });
    const [other] = b.say({ kind: 'recorder-set', settings: { timecodeRate: '30' } }, take('24', 5, 1));
    const merged = [...a.facts, ...b.facts];
    const day = foldDay('day-1', merged);
    const rival = [...day.tail].filter(([, { rivals }]) => rivals);
    expect(rival.map(([name]) => name)).toEqual(['set:recorder/timecodeRate']);
    a.say({
      kind: 'conflict-resolved',
      link: 'set:recorder/timecodeRate',
      among: [one!.id, other!.id],
      stands: one!.id,
    });
    const settled = foldDay('day-1', [...a.facts, ...b.facts]);
    expect(settingsNow(settled)).toMatchObject({ timecodeRate: '24', bitDepth: '24' });
    expect(rateAtTake(settled, settled.takeOrder.at(-1)!)).toBe('24');
  });
});
