import { describe, expect, test } from 'vitest';
import type { CommandResult, Moment } from '../../../src/commands/command.ts';
import {
  addNote,
  callSlate,
  circleTake,
  cutTake,
  describeTake,
  followClock,
  logTake,
  rollTake,
} from '../../../src/commands/line/log-takes.ts';
import {
  rateOfTake,
  readTypedTake,
  type TypedTake,
  typedFrom,
} from '../../../src/commands/line/typed-take.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import type { Day, Take } from '../../../src/day/model.ts';
import { takeText } from '../../../src/day/slate.ts';
import { lastTake, nextTake, openTakes, slateAfter, takesInOrder } from '../../../src/day/takes.ts';
import type { Slate, TakeFields } from '../../../src/facts/kinds/take-logged.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import type { Result } from '../../../src/shared/result.ts';
import { formatTimecode, parseTimecode } from '../../../src/time/timecode.ts';
import { MORNING, type Speaker, speaker } from '../../day/say.ts';

const at = (ms: number): Moment => ({ atMs: MORNING + ms, zone: 120 });

const does = (phone: Speaker, said: CommandResult): void => {
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
};

const rollAndCut = (phone: Speaker, startMs = 0, kind?: 'wild' | 'tone' | 'pickup'): void => {
  does(phone, rollTake(phone.day(), at(startMs), kind));
  does(phone, cutTake(phone.day(), at(startMs + 10_000)));
};

const called = (phone: Speaker): string[] => takesInOrder(phone.day()).map(takeText);

test('a take is of the main unit until it is said, then those after it on that phone are of the same', () => {
  const [one, other] = [speaker('phonea'), speaker('phoneb', MORNING + 30_000)];
  const units = (): (string | undefined)[] => takesInOrder(merged()).map(({ unit }) => unit);
  const merged = (): Day => {
    const both = speaker();
    both.facts.push(...one.facts, ...other.facts);
    return both.day();
  };
  const roll = (phone: Speaker, database: string): void => {
    does(phone, rollTake(merged(), { ...at(0), database }));
    does(phone, cutTake(merged(), { ...at(10_000), database }));
  };
  roll(one, 'phonea');
  roll(other, 'phoneb');
  expect(units()).toEqual([undefined, undefined]);
  const second = takesInOrder(merged())[1]!;
  does(other, describeTake(merged(), second.id, { unit: 'second' }));
  roll(other, 'phoneb');
  roll(one, 'phonea');
  expect(units().filter((unit) => unit === 'second')).toHaveLength(2);
  expect(units().filter((unit) => unit === undefined)).toHaveLength(2);
  const [head = '', takes = ''] = reportText(reportOf(merged(), [])).split('\nTAKES\n');
  expect(head.match(/second unit/g)).toHaveLength(1);
  expect(takes.match(/second unit/g)).toHaveLength(2);
  const last = takesInOrder(merged()).findLast(({ unit }) => unit === 'second')!;
  does(other, describeTake(merged(), last.id, { unit: 'main' }));
  roll(other, 'phoneb');
  expect(units().filter((unit) => unit === 'second')).toHaveLength(1);
});

describe('Roll', () => {
  test('fills in slate and take, and stamps the start from time of day until a clock is followed', () => {
    const phone = speaker();
    does(phone, rollTake(phone.day(), at(0)));
    const take = openTakes(phone.day())[0]!;
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
    expect(openTakes(phone.day())).toEqual([]);
    expect(lastTake(phone.day())).toMatchObject({ kind: 'mos', start: null, length: null });
  });
});

describe('Cut', () => {
  test.each([
    ['25', 1_999, 49],
    ['25', 2_000, 50],
    ['25', 39, 0],
    ['25', 40, 1],
    ['23.976', 1_000, 23],
    ['23.976', 1_001, 24],
    ['29.97DF', 60_060, 1800],
    ['29.97DF', 60_059, 1799],
  ] as const)(
    'at %s after %i ms leaves %i whole frames: a frame that was not over is not counted',
    (...row) => {
      const [timecodeRate, ms, frames] = row;
      const phone = speaker();
      phone.say({ kind: 'day-described', fields: { timecodeRate } });
      does(phone, rollTake(phone.day(), at(0)));
      does(phone, cutTake(phone.day(), at(ms)));
      expect(lastTake(phone.day())).toMatchObject({
        length: { frames, rate: timecodeRate },
        cutAt: MORNING + ms,
      });
    },
  );

  test('before Roll, by a clock set back, leaves no length below zero', () => {
    const phone = speaker();
    does(phone, rollTake(phone.day(), at(0)));
    does(phone, cutTake(phone.day(), at(-5_000)));
    expect(lastTake(phone.day())!.length).toEqual({ frames: 0, rate: '25' });
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
  test.each([
    ['circled', 'noGood'],
    ['noGood', 'circled'],
  ] as const)('a take said to be %s after it was %s is the one and not the other', (later, earlier) => {
    const phone = speaker();
    rollAndCut(phone);
    const { id } = lastTake(phone.day())!;
    does(phone, describeTake(phone.day(), id, { [earlier]: true }));
    does(phone, describeTake(phone.day(), id, { [later]: true }));
    expect(lastTake(phone.day())).toMatchObject({ [later]: true, [earlier]: false });
    // It is said in full, for a phone whose app would not conclude it.
    expect(phone.facts.at(-1)).toMatchObject({ fields: { [later]: true, [earlier]: false } });
    does(phone, undo(phone.day(), 'phonea'));
    expect(lastTake(phone.day())).toMatchObject({ [later]: false, [earlier]: true });
  });

  test('taking the circle off, or NG, leaves the rest', () => {
    const phone = speaker();
    rollAndCut(phone);
    const { id } = lastTake(phone.day())!;
    does(phone, describeTake(phone.day(), id, { noGood: true, tailSlate: true }));
    does(phone, circleTake(phone.day(), id, false));
    expect(lastTake(phone.day())).toMatchObject({ circled: false, noGood: true, tailSlate: true });
    does(phone, describeTake(phone.day(), id, { noGood: false }));
    expect(lastTake(phone.day())).toMatchObject({ circled: false, noGood: false, tailSlate: true });
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

const wanted = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.code);
  return result.value;
};

/** What is said of a take when these fields of its form are typed over. */
const corrected = (day: Day, take: Take, over: Partial<TypedTake>): TakeFields => {
  const showed = typedFrom(take);
  return wanted(readTypedTake({ ...showed, ...over }, showed, rateOfTake(day, take)));
};

describe('a take typed afterwards', () => {
  test('reads every field, and goes where it belongs on the line', () => {
    const phone = speaker();
    rollAndCut(phone);
    const first = lastTake(phone.day())!.id;
    const showed = typedFrom(nextTake(phone.day()));
    const typed = { ...showed, slate: '23c', number: '4', start: '08:59:01:12', length: '1:52', file: 'a' };
    const read = wanted(readTypedTake(typed, showed, '25'));
    expect(read).toEqual({
      slate: { style: 'lettered', scene: '23', setup: 3 },
      number: 4,
      start: { frames: 808_537, rate: '25' },
      length: { frames: 2800, rate: '25' },
      file: 'a',
    });
    does(phone, logTake(phone.day(), read, { before: first }));
    expect(called(phone)).toEqual(['23C/4', '1/1']);
  });

  test.each([
    [{ number: '0' }, 'take-number'],
    [{ number: 'three' }, 'take-number'],
    [{ slate: 'B' }, 'slate-without-number'],
    [{ start: '25:00:00:00' }, 'timecode-out-of-range'],
    [{ length: 'long' }, 'length-unread'],
    [{ file: 'x'.repeat(201) }, 'file-name-too-long'],
  ])('with %o fails with %s', (wrong, code) => {
    const showed = typedFrom(nextTake(speaker().day()));
    expect(readTypedTake({ ...showed, ...wrong }, showed, '25')).toMatchObject({ problem: { code } });
  });
});

describe('a take corrected in its form', () => {
  const numbered: Slate = { style: 'numbered', number: 12, scene: '5A' };

  /** A take of 9.96 s, logged as numbered slate 12 of scene 5A, at 25 before the day came to be lettered and at 24. */
  const changedDay = () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { slateStyle: 'numbered' } });
    does(phone, callSlate(phone.day(), numbered));
    does(phone, rollTake(phone.day(), at(0)));
    does(phone, cutTake(phone.day(), at(9_960)));
    phone.say({ kind: 'day-described', fields: { slateStyle: 'lettered', timecodeRate: '24' } });
    return { day: phone.day(), take: lastTake(phone.day())! };
  };

  test('says nothing when nothing was typed over', () => {
    const { day, take } = changedDay();
    expect(corrected(day, take, {})).toEqual({});
  });

  test('a length corrected after the slates came to be lettered leaves numbered slate 12 of scene 5A', () => {
    const { day, take } = changedDay();
    expect(corrected(day, take, { length: '1:52' })).toEqual({ length: { frames: 2800, rate: '25' } });
  });

  test('a number corrected leaves the length to the frame, though it is shown to the second', () => {
    const { day, take } = changedDay();
    expect(typedFrom(take).length).toBe('0:10');
    expect(take.length).toEqual({ frames: 249, rate: '25' });
    expect(corrected(day, take, { number: '2' })).toEqual({ number: 2 });
  });

  test('a slate or scene typed over is read as the take has it, until another kind of slate is chosen', () => {
    const { day, take } = changedDay();
    expect(corrected(day, take, { scene: '5B' })).toEqual({ slate: { ...numbered, scene: '5B' } });
    expect(corrected(day, take, { slate: '13' })).toEqual({ slate: { ...numbered, number: 13 } });
    expect(corrected(day, take, { style: 'lettered' })).toEqual({
      slate: { style: 'lettered', scene: '12', setup: 0 },
    });
  });

  test('a lettered slate has its scene in itself, and nothing else is read for it', () => {
    const phone = speaker();
    rollAndCut(phone);
    expect(corrected(phone.day(), lastTake(phone.day())!, { scene: '9' })).toEqual({});
  });

  test('a start typed over is read at the rate of the take', () => {
    const { day, take } = changedDay();
    expect(corrected(day, take, { start: '10:00:00:24' })).toEqual({
      start: { frames: 900_024, rate: '25' },
    });
    expect(corrected(day, take, { start: '' })).toEqual({ start: null });
  });

  test('a wild track keeps the slate it was near, whatever was typed there before', () => {
    const { day, take } = changedDay();
    expect(corrected(day, take, { kind: 'wild', slate: 'no slate', number: '3' })).toEqual({
      kind: 'wild',
      number: 3,
    });
  });
});
