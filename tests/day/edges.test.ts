import { describe, expect, test } from 'vitest';
import { answersNow } from '../../src/day/answers/answers.ts';
import { isGangAt, stretchOf } from '../../src/day/answers/gang-reach.ts';
import { markedName } from '../../src/day/files/file-name.ts';
import { safeName, safeStem } from '../../src/day/files/safe-name.ts';
import { namesTogether } from '../../src/day/files/take-files.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { newIds } from '../../src/day/new-ids.ts';
import { parseSlate } from '../../src/day/slate.ts';
import { currentSlate, nextNumber, openTakes, ownOpenTake } from '../../src/day/takes.ts';
import { lengthMs } from '../../src/day/wrap/day-totals.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { MORNING, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

const open = (number: number): Draft => take('24', 1, number, { rolledAt: MORNING, length: null });

describe('an open take of one phone', () => {
  test('is the last of several, and of nobody else', () => {
    const [one, other] = [speaker('phonea'), speaker('phoneb')];
    one.say(open(1), open(2));
    other.say(open(7));
    const day = foldDay('day-1', [...one.facts, ...other.facts]);
    expect(openTakes(day).map(({ number }) => number)).toEqual([1, 7, 2]);
    expect([ownOpenTake(day, 'phonea')?.number, ownOpenTake(day, 'phoneb')?.number]).toEqual([2, 7]);
    expect([ownOpenTake(day, 'phonec'), ownOpenTake(day)?.number]).toEqual([undefined, 2]);
  });

  test('keeps its slate while it rolls, until another is called here', () => {
    const phone = speaker('phonea');
    phone.say(open(1));
    phone.say(take('30', 2, 1));
    const slateOf = () => {
      const slate = currentSlate(phone.day(), 'phonea');
      return 'scene' in slate ? slate.scene : slate;
    };
    expect(slateOf()).toBe('24');
    phone.say({ kind: 'slate-called', slate: { style: 'lettered', scene: '31', setup: 0 } });
    expect(slateOf()).toBe('31');
  });
});

test('a day without a slate begins with scene 1, or number 1', () => {
  const phone = speaker();
  expect(currentSlate(phone.day())).toMatchObject({ style: 'lettered', scene: '1', setup: 0 });
  phone.say({ kind: 'day-described', fields: { slateStyle: 'numbered' } });
  expect(currentSlate(phone.day())).toEqual({ style: 'numbered', number: 1, scene: '' });
  expect(nextNumber(phone.day(), 'take', currentSlate(phone.day()))).toBe(1);
});

describe('who is wired and arrives on no track', () => {
  const stateWith = (need?: 'needed' | 'resting' | 'done') => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: [] }] });
    if (need) phone.say({ kind: 'voices-needed', voices: [{ voice: 'ines', need }] });
    return answersNow(phone.day()).voices.find(({ voice }) => voice.id === 'ines')?.state;
  };

  test('is missed unless they rest or are done', () => {
    expect([stateWith(), stateWith('needed'), stateWith('resting'), stateWith('done')]).toEqual([
      'unrecorded',
      'unrecorded',
      'off',
      'off',
    ]);
  });
});

describe('how far a track stays as it is', () => {
  const gang = (sources: string[]): Draft => ({ kind: 'gang-declared', track: 'tr3', sources });
  function shared() {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    for (const [transmitter, voice] of [
      ['A1', 'ines'],
      ['A2', 'dora'],
    ] as const)
      phone.say({ kind: 'transmitter-worn', transmitter, voice });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    return phone;
  }
  const told = (phone: ReturnType<typeof speaker>, first: string) => {
    const { takes, until, alike } = stretchOf(phone.day(), 'tr3', first);
    const numbers = (list: readonly { number: number }[]) => list.map(({ number }) => number);
    return [numbers(takes), until && (phone.day().takes.get(until)?.number ?? until), numbers(alike)];
  };

  test('is to the end of the day, while it is so still', () => {
    const phone = shared();
    const first = phone.id(take('24', 1, 1));
    phone.say(take('24', 1, 2));
    expect(told(phone, first)).toEqual([[1, 2], null, []]);
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: true });
    expect(told(phone, first)).toEqual([[1, 2], 'end', []]);
    phone.say(take('24', 1, 3));
    expect(told(phone, first)).toEqual([[1, 2], 3, []]);
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: false });
    phone.say(take('24', 1, 4));
    expect(told(phone, first)).toEqual([[1, 2], 3, [4]]);
  });

  test('a gang holds from where it is declared to where it is ended, for its very sources', () => {
    const phone = shared();
    const first = phone.id(take('24', 1, 1));
    phone.say(gang(['near1', 'near2']));
    const isGang = (at: string, sources = ['near2', 'near1']) => isGangAt(phone.day(), at, 'tr3', sources);
    expect([isGang(first), isGang('end'), isGang('end', ['near1'])]).toEqual([false, true, false]);
    const second = phone.id(take('24', 1, 2));
    phone.say({ kind: 'gang-ended', track: 'tr3', sources: ['near1', 'near2'] });
    expect([isGang(first), isGang(second), isGang('end')]).toEqual([false, true, false]);
  });

  test('is to where a gang of these sources is ended, or every gang of the track', () => {
    const ends: Draft[] = [gang([]), { kind: 'gang-ended', track: 'tr3', sources: ['near2', 'near1'] }];
    for (const ended of ends) {
      const phone = shared();
      const first = phone.id(take('24', 1, 1));
      phone.say({ kind: 'gang-ended', track: 'tr4', sources: ['near1', 'near2'] });
      phone.say({ kind: 'gang-declared', track: 'tr4', sources: [] });
      phone.say(take('24', 1, 2));
      phone.say(ended);
      expect(told(phone, first)).toEqual([[1, 2], 'end', []]);
      phone.say(take('24', 1, 3));
      expect(told(phone, first)).toEqual([[1, 2], 3, []]);
    }
  });
});

describe('a name for any disk', () => {
  test.each([
    ['a', 1],
    ['\u007f', 0],
    ['\u0080', 0],
    ['é', 2],
    ['\u07ff', 2],
    ['\u0800', 3],
    ['音', 3],
    ['\uffee', 3],
    ['🎬', 4],
  ])('counts %j as %i bytes', (character, bytes) => {
    const fits = bytes === 0 ? 0 : Math.floor(20 / bytes);
    expect([...safeStem(character.repeat(30), 20)]).toHaveLength(fits);
  });

  test('is a hundred bytes before its ending, and never one that a system keeps for a device', () => {
    expect(safeName('x'.repeat(101), 'wav')).toBe(`${'x'.repeat(100)}.wav`);
    for (const kept of 'con PRN aux nul com0 COM9 com¹ lpt3 LPT² conin$ CONOUT$ nul.x'.split(' '))
      expect(safeName(kept, 'wav')).toBe(`_${kept}.wav`);
    for (const free of 'cone com lpt com10 xnul'.split(' '))
      expect(safeName(free, 'wav')).toBe(`${free}.wav`);
    expect([safeName('..', 'wav'), safeName('', 'wav', 'take-3')]).toEqual(['unnamed.wav', 'take-3.wav']);
  });

  test('keeps its ending and its mark where it is cut', () => {
    expect(markedName('24BT3.wav', '_5')).toBe('24BT3_5.wav');
    expect(markedName('24BT3', '_5')).toBe('24BT3_5');
    expect(markedName('a.b.wave5', '_5')).toBe('a.b_5.wave5');
    expect(markedName('a.toolong', '_5')).toBe('a.toolong_5');
    expect(markedName(`${'x'.repeat(120)}.wav`, '_12')).toBe(`${'x'.repeat(97)}_12.wav`);
  });

  test('of several files is said in one breath where they begin alike', () => {
    expect(namesTogether([])).toBe('');
    expect(namesTogether(['a_1.wav'])).toBe('a_1.wav');
    expect(namesTogether(['a_1.wav', 'a_2.wav', 'a_16.wav'])).toBe('a_1, _2, _16.wav');
    expect(namesTogether(['a-L.wav', 'a-R.wav'])).toBe('a-L, -R.wav');
    expect(namesTogether(['a L.wav', 'a R.wav'])).toBe('a L,  R.wav');
    expect(namesTogether(['a.L.wav', 'a.R.wav'])).toBe('a.L, .R.wav');
    expect(namesTogether(['_1.wav', '_2.wav'])).toBe('_1.wav, _2.wav');
    expect(namesTogether(['a_1.wav', 'b_1.wav'])).toBe('a_1.wav, b_1.wav');
    expect(namesTogether(['a_1.wav', 'a_1.bwf'])).toBe('a_1.wav, a_1.bwf');
    expect(namesTogether(['a_1', 'a_2'])).toBe('a_1, _2');
    expect(namesTogether(['ab1.wav', 'ab2.wav'])).toBe('ab1.wav, ab2.wav');
  });
});

test('a new id is one that nothing had, of 64 characters at most', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG);
  const newId = newIds(phone.day());
  expect([newId('sel'), newId('sel'), newId('sel')]).toEqual(['sel', 'sel.2', 'sel.3']);
  expect([newId('aes1'), newId('aes1.2')]).toEqual(['aes1.2', 'aes1.3']);
  const long = 'x'.repeat(64);
  expect([newId(long), newId(long)]).toEqual([long, `${'x'.repeat(58)}.2`]);
});

test('slates are typed up to six digits, 200 characters of scene and 20,000 setups', () => {
  const read = (typed: string, style: 'lettered' | 'numbered' = 'lettered') => {
    const slate = parseSlate(typed, style, ' 24 ');
    return slate.ok ? slate.value : slate.problem.code;
  };
  expect(read('999999', 'numbered')).toEqual({ style: 'numbered', number: 999_999, scene: '24' });
  expect(read('1000000', 'numbered')).toBe('slate-not-a-number');
  expect(read('1a', 'numbered')).toBe('slate-not-a-number');
  expect(read(`${'1'.repeat(200)}B`)).toMatchObject({ setup: 2 });
  expect(read('1'.repeat(201))).toBe('slate-too-long');
  // 24 letters, O and I left out: 20,000 is AKSH (13,824 + 10 × 576 + 17 × 24 + 8).
  expect([read('1AKSH'), read('1AKSJ')]).toEqual([
    { style: 'lettered', scene: '1', setup: 20_000 },
    'slate-too-long',
  ]);
  expect([read('B'), read('24O'), read('24i')]).toEqual([
    'slate-without-number',
    'slate-letter-unused',
    'slate-letter-unused',
  ]);
});

test('a take lasted as long as its frames say, and nobody knows how long without them', () => {
  const of = (length: object | null) => lengthMs({ length } as never);
  expect([of({ frames: 25, rate: '25' }), of({ frames: 30, rate: '29.97' }), of(null)]).toEqual([
    1000,
    1001,
    null,
  ]);
});
