import { describe, expect, test } from 'vitest';
import type { Moment, Said } from '../../src/commands/command.ts';
import {
  addNote,
  callSlate,
  circleTake,
  cutTake,
  followClock,
  logTake,
  rollTake,
} from '../../src/commands/log-takes.ts';
import { parseLength, readTypedTake, typedFrom } from '../../src/commands/typed-take.ts';
import { takeText } from '../../src/day/slate.ts';
import { lastTake, nextTake, openTake, slateAfter, takesInOrder } from '../../src/day/takes.ts';
import { formatTimecode, parseTimecode } from '../../src/time/timecode.ts';
import { MORNING, type Speaker, speaker } from '../day/say.ts';

const at = (ms: number): Moment => ({ atMs: MORNING + ms, zone: 120 });

const does = (phone: Speaker, said: Said): void => {
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
};

const rollAndCut = (phone: Speaker, startMs = 0, kind?: 'wild' | 'tone' | 'pickup'): void => {
  does(phone, rollTake(phone.day(), at(startMs), kind));
  does(phone, cutTake(phone.day(), at(startMs + 10_000)));
};

const called = (phone: Speaker): string[] => takesInOrder(phone.day()).map(takeText);

describe('Roll', () => {
  test('fills in slate and take, and stamps the start from time of day until a clock is followed', () => {
    const phone = speaker();
    does(phone, rollTake(phone.day(), at(0)));
    const take = openTake(phone.day())!;
    expect(takeText(take)).toBe('1/1');
    // 07:00 UTC is 09:00 in a zone two hours east.
    expect(formatTimecode(take.start!.frames, take.start!.rate)).toBe('09:00:00:00');
  });

  test('stamps from the followed clock, past midnight too', () => {
    const phone = speaker();
    const midnight = parseTimecode('23:59:50:00', '25');
    does(phone, followClock(phone.day(), midnight.ok ? midnight.value : 0, at(0)));
    rollAndCut(phone, 15_000);
    const take = lastTake(phone.day())!;
    expect(formatTimecode(take.start!.frames, '25')).toBe('00:00:05:00');
    expect(take.length).toEqual({ frames: 250, rate: '25' });
  });

  test('refuses while a take is open, and Cut refuses while none is', () => {
    const phone = speaker();
    expect(cutTake(phone.day(), at(0))).toMatchObject({ ok: false, problem: { code: 'no-take-open' } });
    does(phone, rollTake(phone.day(), at(0)));
    expect(rollTake(phone.day(), at(1))).toMatchObject({
      ok: false,
      problem: { code: 'take-open', take: '1/1' },
    });
  });

  test('logs an MOS take whole: it has no sound to start or cut', () => {
    const phone = speaker();
    does(phone, rollTake(phone.day(), at(0), 'mos'));
    expect(openTake(phone.day())).toBeUndefined();
    expect(lastTake(phone.day())).toMatchObject({ kind: 'mos', start: null, length: null });
  });
});

describe('the next take', () => {
  test('counts takes on within a slate, and starts again at the next setup', () => {
    const phone = speaker();
    rollAndCut(phone);
    rollAndCut(phone);
    does(phone, callSlate(phone.day()));
    rollAndCut(phone);
    does(phone, callSlate(phone.day(), { style: 'lettered', scene: '1', setup: 0 }));
    rollAndCut(phone);
    expect(called(phone)).toEqual(['1/1', '1/2', '1A/1', '1/3']);
    expect(takeText({ kind: 'take', slate: slateAfter(phone.day()), number: 1 })).toBe('1B/1');
  });

  test('gives the number of a false start again', () => {
    const phone = speaker();
    rollAndCut(phone);
    phone.say({ kind: 'take-described', take: lastTake(phone.day())!.id, fields: { falseStart: true } });
    expect(nextTake(phone.day()).number).toBe(1);
  });

  test('counts wild tracks and room tones on their own and leaves the slate alone', () => {
    const phone = speaker();
    does(phone, callSlate(phone.day(), { style: 'lettered', scene: '24', setup: 2 }));
    rollAndCut(phone, 0, 'wild');
    rollAndCut(phone, 0, 'tone');
    rollAndCut(phone, 0, 'wild');
    rollAndCut(phone, 0, 'pickup');
    expect(called(phone)).toEqual(['WT1', 'RT1', 'WT2', '24B/1 PU']);
    expect(takeText(nextTake(phone.day()))).toBe('24B/2');
  });

  test('counts running slates up in the same scene', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { slateStyle: 'numbered' } });
    does(phone, callSlate(phone.day(), { style: 'numbered', number: 118, scene: '24' }));
    rollAndCut(phone);
    does(phone, callSlate(phone.day()));
    rollAndCut(phone);
    expect(called(phone)).toEqual(['118/1', '119/1']);
  });
});

describe('corrections of a take', () => {
  test('circling takes NG off, and taking the circle off leaves the rest', () => {
    const phone = speaker();
    rollAndCut(phone);
    const { id } = lastTake(phone.day())!;
    phone.say({ kind: 'take-described', take: id, fields: { noGood: true } });
    does(phone, circleTake(phone.day(), id, true));
    expect(lastTake(phone.day())).toMatchObject({ circled: true, noGood: false });
  });

  test('notes are kept in order, on the take or on one track, and an empty one is refused', () => {
    const phone = speaker();
    rollAndCut(phone);
    const { id } = lastTake(phone.day())!;
    does(phone, addNote(phone.day(), id, ' plane '));
    does(phone, addNote(phone.day(), id, 'mic rub', 'tr3'));
    expect(lastTake(phone.day())!.notes).toMatchObject([
      { text: 'plane', track: undefined },
      { text: 'mic rub', track: 'tr3' },
    ]);
    expect(addNote(phone.day(), id, '  ')).toMatchObject({ ok: false, problem: { code: 'note-empty' } });
    expect(addNote(phone.day(), id, 'x'.repeat(4001))).toMatchObject({
      ok: false,
      problem: { code: 'note-too-long', length: 4001 },
    });
  });
});

describe('a take typed afterwards', () => {
  test('reads every field, and goes where it belongs on the line', () => {
    const phone = speaker();
    rollAndCut(phone);
    const first = lastTake(phone.day())!.id;
    const read = readTypedTake(phone.day(), {
      kind: 'take',
      slate: '23c',
      scene: '',
      number: '4',
      start: '08:59:01:12',
      length: '1:52',
      file: '',
    });
    expect(read).toMatchObject({
      ok: true,
      value: { number: 4, start: { frames: 808_537, rate: '25' }, length: { frames: 2800 } },
    });
    does(phone, logTake(phone.day(), read.ok ? read.value : {}, { before: first }));
    expect(called(phone)).toEqual(['23C/4', '1/1']);
  });

  test('comes back from its own fields unchanged', () => {
    const phone = speaker();
    rollAndCut(phone);
    const take = lastTake(phone.day())!;
    const read = readTypedTake(phone.day(), typedFrom(take));
    expect(read).toMatchObject({
      ok: true,
      value: { start: take.start, length: take.length, slate: take.slate },
    });
  });

  test.each([
    ['1:52', 2800],
    ['1:02:10', 1560],
    ['1:02:10:00', 93_250],
    ['45', 1125],
    ['0', 0],
  ])('the length %s is %i frames at 25', (typed, frames) => {
    // Two parts are minutes and seconds, three add frames, four add hours: 1:02:10 is 62 s and 10 frames.
    expect(parseLength(typed, '25')).toEqual({ ok: true, value: frames });
  });

  test.each(['', 'abc', '1:2:3:4:5', '-5', '1:00:25', '99999'])('the length %s is refused', (typed) => {
    expect(parseLength(typed, '25').ok).toBe(false);
  });

  test.each([
    [{ number: '0' }, 'take-number'],
    [{ number: 'three' }, 'take-number'],
    [{ slate: 'B' }, 'slate-without-number'],
    [{ start: '25:00:00:00' }, 'timecode-out-of-range'],
    [{ length: 'long' }, 'length-unread'],
    [{ file: 'x'.repeat(201) }, 'file-name-too-long'],
  ])('with %o fails with %s', (wrong, code) => {
    const fine = {
      kind: 'take' as const,
      slate: '1',
      scene: '',
      number: '1',
      start: '',
      length: '',
      file: '',
    };
    expect(readTypedTake(speaker().day(), { ...fine, ...wrong })).toMatchObject({ problem: { code } });
  });
});
