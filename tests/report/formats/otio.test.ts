import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reportOtio } from '../../../src/report/formats/otio.ts';
import { reportOf } from '../../../src/report/model.ts';
import { type Speaker, speaker, take } from '../../day/say.ts';
import { anyDay } from '../any-day.ts';
import { movedDay } from '../printed-days.ts';
import { smallDay } from '../report-day.ts';
import { type ReadTimeline, readOtio } from './otio-reader.ts';

const timelineOf = ({ day }: Pick<Speaker, 'day'>): ReadTimeline => readOtio(reportOtio(reportOf(day())));

/** `'24AT1.wav 90000+250 at 0'`, track by track. */
const linesOf = ({ tracks }: ReadTimeline): string[][] =>
  tracks.map(({ clips }) =>
    clips.map(({ url, range, at }) => `${url} ${range.start.value}+${range.duration.value} at ${at}`),
  );

const DAY_AT_25 = 25 * 86_400;

describe('the day as an open timeline', () => {
  test('is its files by name at their timecode, those at one timecode on tracks of their own', () => {
    const timeline = timelineOf(smallDay().phone);
    // By hand: 25 frames, 24A/1 at 01:00:00:00 (90000), 24A/2 40 s later; 24B/1 FS, 24B/1 and WT1 at 01:00:00:00 too.
    expect(linesOf(timeline)).toEqual([
      ['24AT1.wav 90000+250 at 0', '24AT2.wav 91000+250 at 1000'],
      ['24BT1FS.wav 90000+250 at 0'],
      ['24BT1.wav 90000+250 at 0'],
      ['WT1.wav 90000+1500 at 0'],
    ]);
    expect(timeline.start).toEqual({ value: 90_000, rate: 25 });
    expect(timeline.name).toBe('Salt Road day 7');
  });

  test('has scene, slate, take and track names in its metadata, and a marker for circled, NG and each note', () => {
    const [first, , third] = timelineOf(smallDay().phone).tracks;
    const circled = first!.clips[1]!;
    expect(circled.own).toMatchObject({
      scene: '24',
      slate: '24A',
      take: '2',
      roll: '7A',
      end: '01:00:50:00',
    });
    expect(circled.own.tracks).toEqual([
      { number: '1', name: 'Mix' },
      { number: '2', name: 'Boom' },
      { number: '3', name: 'Ines' },
      { number: '4', name: 'Dora' },
    ]);
    expect(circled.markers).toEqual([
      { name: 'circled', color: 'GREEN', comment: '', at: 91_000 },
      { name: 'note', color: 'YELLOW', comment: 'Plane at the end', at: 91_000 },
      { name: 'note', color: 'YELLOW', comment: 'track 3: rustle', at: 91_000 },
    ]);
    expect(third!.clips[0]!.markers.map(({ name }) => name)).toEqual(['NG']);
    expect(third!.clips[0]!.own.tracks).toContainEqual({ number: '3', name: 'Tomas, Dora', state: 'ganged' });
  });

  test('names in its own metadata what has no sound, no end or no length', () => {
    const { phone } = smallDay();
    phone.say(take('25', 0, 1, { length: null }));
    expect(timelineOf(phone).own.not_placed).toMatchObject([
      { called: '24C/1 MOS', why: 'MOS' },
      { called: '25/1', why: expect.stringMatching(/^(still rolling|no length)$/) },
    ]);
  });

  test('puts files without a start time behind one another, and claims no timecode for them', () => {
    const phone = speaker();
    phone.say(take('30', 0, 1), take('30', 0, 2, { start: null }), take('30', 0, 3, { start: null }));
    const { tracks } = timelineOf(phone);
    expect(tracks.map(({ name }) => name)).toEqual(['Sound, 25 fps', 'Sound, 25 fps, start not known']);
    expect(tracks[1]!.clips.map(({ at, available }) => [at, available])).toEqual([
      [0, null],
      [250, null],
    ]);
  });

  test('goes on past midnight', () => {
    const phone = speaker();
    phone.say(
      take('30', 0, 1, { start: { frames: DAY_AT_25 - 500, rate: '25' } }),
      take('30', 0, 2, { start: { frames: 100, rate: '25' } }),
      take('30', 0, 3, { start: { frames: DAY_AT_25 - 200, rate: '25' } }),
    );
    expect(linesOf(timelineOf(phone))).toEqual([
      [
        `30T1.wav ${DAY_AT_25 - 500}+250 at 0`,
        `30T3.wav ${DAY_AT_25 - 200}+250 at 300`,
        '30T2.wav 100+250 at 600',
      ],
    ]);
  });

  test('keeps rates apart, each exact, and says no common start for several', () => {
    const phone = speaker();
    const at = (frames: number, rate: string) => ({ start: { frames, rate }, length: { frames: 240, rate } });
    phone.say(take('30', 0, 1, at(863_136, '23.976')), take('30', 0, 2, at(863_600, '23.976')));
    phone.say(take('31', 0, 1, at(1_078_920, '29.97DF')));
    const timeline = timelineOf(phone);
    expect(timeline.start).toBeNull();
    // SMPTE ST 12-1: 10:00:00;00 drop-frame is frame 1,078,920; 863,136 is 09:59:24:00 counted in 24s.
    expect(timeline.tracks.map(({ name, own }) => [name, own.starts_at, own.drop_frame])).toEqual([
      ['Sound, 23.976 fps', '09:59:24:00', false],
      ['Sound, 29.97 fps drop-frame', '10:00:00;00', true],
    ]);
    expect(timeline.tracks.map(({ clips }) => clips[0]!.range.duration.rate)).toEqual([
      24_000 / 1001,
      30_000 / 1001,
    ]);
    expect(linesOf(timeline)[0]![1]).toBe('30T2.wav 863600+240 at 464');
  });

  test('has a track for each mono file, with its one name', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    const tracks = timelineOf(phone).tracks.filter(({ clips }) =>
      clips.some(({ own }) => own.called === '24A/2'),
    );
    expect(tracks.map(({ name, clips }) => [name, clips.at(-1)!.url, clips.at(-1)!.own.tracks])).toEqual([
      ['Track 1, 25 fps', '24AT2_1.wav', [{ number: '1', name: 'Mix' }]],
      ['Track 2, 25 fps', '24AT2_2.wav', [{ number: '2', name: 'Boom' }]],
      ['Track 3, 25 fps', '24AT2_3.wav', [{ number: '3', name: 'Ines' }]],
      ['Track 4, 25 fps', '24AT2_4.wav', [{ number: '4', name: 'Dora' }]],
    ]);
  });

  test('has tracks for each recorder, with its own files, rolls and names', () => {
    const { tracks } = timelineOf(movedDay().phone);
    const last = tracks.flatMap(({ name, clips }) =>
      clips
        .filter(({ own }) => own.called === '26/1')
        .map(({ url, own, available }) => [name, url, own.roll, available === null]),
    );
    expect(last).toEqual([
      ['Cart, Sound, 25 fps', '26T1.wav', '7A', false],
      ['Backup, Sound, 25 fps', '26T1.wav', 'B1', false],
      // Nobody wrote down what a recorder at another rate showed.
      ['Bag, Sound, 24 fps, start not known', 'C1-003.wav', 'C1', true],
    ]);
  });

  test('of any day can be read by the specification, and has every take once, in its place (seed 61)', () => {
    let clips = 0;
    fc.assert(
      fc.property(anyDay, (day) => {
        const model = reportOf(day);
        const timeline = readOtio(reportOtio(model));
        const on = timeline.tracks.flatMap((track) => track.clips);
        clips += on.length;
        const out = (timeline.own.not_placed ?? []) as { called: string }[];
        const expected = model.takes.flatMap(({ text, files, kind, exact }) =>
          kind === 'mos' || !exact.length ? [text] : Array(Math.max(1, files.length)).fill(text),
        );
        expect([...on.map(({ own }) => own.called), ...out.map(({ called }) => called)].sort()).toEqual(
          expected.sort(),
        );
        for (const { at, range, available } of on) {
          if (available) expect((timeline.start!.value + at) % DAY_AT_25).toBe(range.start.value);
        }
      }),
      { seed: 61, numRuns: 80 },
    );
    expect(clips).toBeGreaterThan(100);
  });
});
