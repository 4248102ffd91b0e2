import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { takeList } from '../../../src/report/list/take-list.ts';
import { type ReportModel, reportOf } from '../../../src/report/model.ts';
import { trackText } from '../../../src/report/printed/words.ts';
import { revisionOf } from '../../../src/report/revision/revision.ts';
import { speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { anyDay } from '../any-day.ts';
import { largeDay } from '../large-day.ts';
import { smallDay } from '../report-day.ts';

const plain = (text: string): string => text.replaceAll(/[\u2068\u2069]/g, '');

const tracksOf = (model: ReportModel): string[][] =>
  takeList(model, {}).map(({ lists }) => lists.flat().map(({ text }) => plain(text)));

/** Number and who of a unit that begins with a number that this day has. */
function numbered(text: string, numbers: readonly string[], after: string): [string, string] {
  const number = numbers.find((one) => text.startsWith(`${one}${after}`));
  if (number === undefined) throw new Error(`No track begins ${text}`);
  return [number, text.slice(number.length + after.length)];
}

/** Who was on which track at every take with sound, put together from the printed list alone, as a reader does. */
function readTracks(model: ReportModel): Map<string, string>[] {
  // The longest first, since a name of a track may be the beginning of another.
  const numbers = model.layout.map(({ number }) => plain(number)).sort((a, b) => b.length - a.length);
  const whole = new Map<string, Map<string, string>>();
  let now = new Map<string, string>();
  return takeList(model, {}).map((listed, at) => {
    const units = listed.lists.flat().map(({ text }) => plain(text));
    const name = [...whole.keys()].find(
      (one) => units[0]?.startsWith(`as ${one} but for track `) || units[0] === `as ${one}`,
    );
    if (units.length === 0) return now;
    if (name !== undefined) {
      now = new Map(whole.get(name));
      const [first, ...rest] = units;
      for (const unit of [first!.slice(`as ${name} but for `.length), ...rest].filter(Boolean)) {
        const [number, who] = numbered(unit.slice('track '.length), numbers, ': ');
        if (who === 'nobody') now.delete(number);
        else now.set(number, who);
      }
      return now;
    }
    now = new Map();
    for (const unit of units) {
      if (unit === 'nobody on any track') continue;
      // A mix needs no other word than its number: L, Mix R.
      if (numbers.includes(unit)) now.set(unit, 'Mix');
      else now.set(...numbered(unit, numbers, ' '));
    }
    const { text, start } = model.takes[at]!;
    const twice = model.takes.filter((other) => other.text === text).length > 1;
    whole.set(twice && start ? `${text} (${start})` : text, now);
    return now;
  });
}

const said = (model: ReportModel): Map<string, string>[] =>
  model.takes.map(
    ({ tracks }) => new Map(tracks.map((line) => [plain(line.number), plain(trackText(line))])),
  );

describe('the list of takes', () => {
  test('tells the tracks where they change, by the last list printed whole', () => {
    expect(tracksOf(reportOf(smallDay().phone.day()))).toEqual([
      ['1 Mix', '2 Boom', '3 Ines', '4 Dora'],
      [],
      ['as 24A/1 but for track 3: Tomas', 'track 4: Dora (muted)'],
      ['1 Mix', '2 Boom', '3 Tomas, Dora (ganged)'],
      [],
      [],
    ]);
  });

  test('says when tracks are again as they were, and that nobody is on one', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say(take('24', 0, 1), { kind: 'transmitter-worn', transmitter: 'A1', voice: null });
    phone.say(take('24', 0, 2), { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say(take('24', 0, 3));
    expect(tracksOf(reportOf(phone.day())).slice(1)).toEqual([
      ['as 24/1 but for track 3: nobody'],
      ['as 24/1'],
    ]);
  });

  test('has no more than five exceptions at a take, and prints the names of a long day a fraction as often', () => {
    const model = reportOf(largeDay({ takes: 75, tracks: 16 }));
    const lists = tracksOf(model).filter((units) => units.length > 0);
    const told = lists.filter(([first]) => first!.startsWith('as '));
    expect(told.length).toBeGreaterThan(10);
    for (const units of told) expect(units.length).toBeLessThanOrEqual(5);
    // 16 names at each of 75 takes were 1,200.
    expect(lists.flat().length).toBeLessThan(200);
  });

  test.each([1, 2, 3, 5])(
    'gives the tracks of every take to who reads it from the top, a change every %d takes',
    (changeEvery) => {
      const model = reportOf(largeDay({ takes: 60, tracks: 12, changeEvery }));
      expect(readTracks(model)).toEqual(said(model));
      expect(tracksOf(model).filter((units) => units[0]?.startsWith('as ')).length).toBeGreaterThan(4);
    },
  );

  test('does so of any day (seed 71)', () => {
    let changing = 0;
    fc.assert(
      fc.property(anyDay, (day) => {
        const model = reportOf(day);
        // Two tracks of one name, and names that read as a number and a name, can only be told apart on the screen.
        const numbers = model.layout.map(({ number }) => plain(number));
        fc.pre(numbers.every((one) => /^[\w]+$/.test(one)) && new Set(numbers).size === numbers.length);
        const expected = said(model);
        const read = readTracks(model);
        for (const [at, { kind }] of model.takes.entries()) {
          if (kind === 'mos') continue;
          expect([...read[at]!].sort()).toEqual([...expected[at]!].sort());
        }
        changing += tracksOf(model).filter((units) => units[0]?.startsWith('as ')).length;
      }),
      { seed: 71, numRuns: 200 },
    );
    expect(changing).toBeGreaterThan(10);
  });

  test('marks what a revision changed, and what is new in it', () => {
    const { phone, first } = smallDay();
    const model = reportOf(phone.day());
    phone.say({ kind: 'take-described', take: first, fields: { circled: true } }, take('25', 0, 1));
    const now = reportOf(phone.day());
    const list = takeList(now, { revision: revisionOf(now, { letter: 'A', model }) });
    const marked = list.filter(({ isChanged }) => isChanged);
    expect(marked.map(({ text, words }) => [text, words.at(-1)])).toEqual([
      ['24A/1', 'changed in B'],
      ['25/1', 'new in B'],
    ]);
    expect(takeList(now, {}).some(({ isChanged }) => isChanged)).toBe(false);
  });

  test('has times to the frame, and a length that leads from the start to the end', () => {
    const phone = speaker();
    phone.say(
      take('24', 0, 1, { start: { frames: 90_007, rate: '25' }, length: { frames: 2833, rate: '25' } }),
      take('24', 0, 2, { start: null, length: { frames: 2833, rate: '25' } }),
      take('24', 0, 3, { length: null }),
    );
    expect(takeList(reportOf(phone.day()), {}).map(({ start, end, length }) => [start, end, length])).toEqual(
      [
        ['01:00:00:07', '01:01:53:15', '00:01:53:08'],
        ['', '', '00:01:53:08'],
        ['01:00:00:00', '', ''],
      ],
    );
  });
});
