import { describe, expect, test } from 'vitest';
import { describePart } from '../../../src/commands/day/describe.ts';
import { changeHead, setRecorder } from '../../../src/commands/line/set-recorder.ts';
import { fileNamesOf, fileNamesOn } from '../../../src/day/files/file-name.ts';
import { filesOfTakes, filesOn } from '../../../src/day/files/take-files.ts';
import { trackLabels } from '../../../src/day/files/track-labels.ts';
import type { Day } from '../../../src/day/model.ts';
import {
  headerNow,
  rateNow,
  settingsAtTake,
  settingsBefore,
  settingsNow,
} from '../../../src/day/settings/settings.ts';
import { speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { BAG, BAG_BESIDE, CART } from '../two-recorders.ts';

/** The cart at take 1, both at takes 2 and 3, the bag alone at take 4. The bag is set apart before take 3. */
function twoRecorders() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart', timecodeRate: '25' } });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const first = phone.id(take('24', 0, 1));
  phone.say({ kind: 'recorders-rolling', recorders: [CART, BAG] });
  const second = phone.id(take('24', 0, 2));
  phone.say({
    kind: 'recorder-set',
    recorder: BAG,
    settings: { timecodeRate: '24', fileLayout: 'mono', filePattern: '{roll}-{count:3}' },
  });
  phone.say({ kind: 'roll-changed', roll: '7A' }, { kind: 'roll-changed', roll: 'B1', recorder: BAG });
  const third = phone.id(take('24', 0, 3));
  phone.say({ kind: 'recorders-rolling', recorders: [BAG] });
  const fourth = phone.id(take('24', 0, 4));
  return { phone, takes: [first, second, third, fourth] };
}

describe('what two recorders are set to', () => {
  test('is said of each: until it is, the second is set as the first', () => {
    const { phone, takes } = twoRecorders();
    const rates = (recorder?: string) =>
      takes.map((id) => settingsAtTake(phone.day(), id, recorder).timecodeRate);
    expect(rates(CART)).toEqual(['25', '25', '25', '25']);
    expect(rates(BAG)).toEqual(['25', '25', '24', '24']);
  });

  test('of a take it is what the main one is set to, the first of those that roll', () => {
    const { phone, takes } = twoRecorders();
    expect(takes.map((id) => settingsAtTake(phone.day(), id).timecodeRate)).toEqual(['25', '25', '25', '24']);
    expect(rateNow(phone.day())).toBe('24');
    expect(settingsNow(phone.day(), CART).timecodeRate).toBe('25');
  });

  test('what the first is set to later holds for the second too, where nothing was said of it', () => {
    const { phone, takes } = twoRecorders();
    phone.say({
      kind: 'recorder-set',
      settings: { timecodeRate: '30', sampleRate: 96_000 },
      before: takes[1]!,
    });
    const of = (at: number, recorder: string) => {
      const { timecodeRate, sampleRate } = settingsAtTake(phone.day(), takes[at]!, recorder);
      return [timecodeRate, sampleRate];
    };
    expect(of(0, BAG)).toEqual(['25', 48_000]);
    expect(of(1, BAG)).toEqual(['30', 96_000]);
    expect(of(2, BAG)).toEqual(['24', 96_000]);
    expect(of(2, CART)).toEqual(['30', 96_000]);
  });

  test('the next day begins with what the first has, whichever rolls last', () => {
    expect(headerNow(twoRecorders().phone.day()).timecodeRate).toBe('25');
  });
});

describe('setting the second recorder', () => {
  const said = (
    day: Day,
    ...of: Parameters<typeof setRecorder> extends [Day, ...infer Rest] ? Rest : never
  ) => {
    const result = setRecorder(day, ...of);
    return result.ok ? result.value : result.problem.code;
  };

  test('is a change on the line even before anything is recorded', () => {
    const phone = speaker();
    phone.say(...BAG_BESIDE);
    expect(said(phone.day(), { bitDepth: '32f' }, {}, BAG)).toEqual([
      { kind: 'recorder-set', recorder: BAG, settings: { bitDepth: '32f' } },
    ]);
  });

  test('is compared with what it is set to, not the first', () => {
    const { phone, takes } = twoRecorders();
    expect(said(phone.day(), { timecodeRate: '24' }, {}, BAG)).toBe('nothing-changed');
    expect(said(phone.day(), { timecodeRate: '25' }, {}, BAG)).toEqual([
      { kind: 'recorder-set', recorder: BAG, settings: { timecodeRate: '25' } },
    ]);
    expect(said(phone.day(), { timecodeRate: '24' }, { before: takes[1]! }, BAG)).toEqual([
      { kind: 'recorder-set', recorder: BAG, settings: { timecodeRate: '24' }, before: takes[1] },
    ]);
    expect(settingsBefore(phone.day(), takes[1], BAG).timecodeRate).toBe('25');
  });

  test('is refused for a recorder that is not there', () => {
    expect(said(twoRecorders().phone.day(), { bitDepth: '32f' }, {}, 'none')).toBe('not-on-this-day');
  });

  test('two recorders cannot have one name, whichever is renamed', () => {
    const { phone } = twoRecorders();
    const code = (result: ReturnType<typeof describePart>) => (result.ok ? 'ok' : result.problem.code);
    expect(code(describePart(phone.day(), BAG, { name: 'Cart' }))).toBe('name-taken');
    expect(code(describePart(phone.day(), BAG, { name: 'Car bag' }))).toBe('ok');
    expect(code(changeHead(phone.day(), { fields: { recorder: ' Bag ' } }))).toBe('name-taken');
    phone.say({ kind: 'part-described', part: BAG, fields: { name: 'Recorder' } });
    // Without a name the first one is called so.
    expect(code(changeHead(phone.day(), { fields: { recorder: '' } }))).toBe('name-taken');
  });
});

describe('the files of two recorders', () => {
  test('are named by the pattern, the roll and the running number of each', () => {
    const { phone } = twoRecorders();
    const day = phone.day();
    expect([...fileNamesOn(day, CART).values()]).toEqual(['24T1.wav', '24T2.wav', '24T3.wav']);
    expect([...fileNamesOn(day, BAG).values()]).toEqual(['24T2.wav', 'B1-002.wav', 'B1-003.wav']);
    expect([...fileNamesOf(day).values()]).toEqual(['24T1.wav', '24T2.wav', '24T3.wav', 'B1-003.wav']);
  });

  test('hold the tracks of each, and are one or several as each is set', () => {
    const { phone, takes } = twoRecorders();
    const day = phone.day();
    expect(filesOn(day, CART).get(takes[2]!)).toEqual([{ name: '24T3.wav', track: null }]);
    expect(filesOn(day, BAG).get(takes[2]!)).toEqual([{ name: 'B1-002_1.wav', track: 'bag-tr1' }]);
    expect(filesOn(day, CART).has(takes[3]!)).toBe(false);
    expect(filesOfTakes(day).get(takes[3]!)).toEqual([{ name: 'B1-003_1.wav', track: 'bag-tr1' }]);
  });

  test('a typed name is of the main recorder’s file', () => {
    const { phone, takes } = twoRecorders();
    phone.say({ kind: 'take-described', take: takes[1]!, fields: { file: 'T07.wav' } });
    expect(fileNamesOn(phone.day(), CART).get(takes[1]!)).toBe('T07.wav');
    expect(fileNamesOn(phone.day(), BAG).get(takes[1]!)).toBe('24T2.wav');
  });

  test('as the card of one has them says nothing of the other', () => {
    const { phone, takes } = twoRecorders();
    const checked = { files: 3, recordings: 3, open: 0, matched: 3 };
    const names = (take: string, name: string, recorder?: string) => ({
      take,
      files: [{ name }],
      ...(recorder && { recorder }),
    });
    phone.say({
      kind: 'card-checked',
      ...checked,
      names: [names(takes[1]!, 'CART_002.wav', CART), names(takes[1]!, 'BAG_001.wav', BAG)],
    });
    // An earlier version named no recorder: it is the main one of the take.
    phone.say({ kind: 'card-checked', ...checked, names: [names(takes[3]!, 'T004.wav')] });
    const nameOn = (recorder: string, take: string) => filesOn(phone.day(), recorder).get(take)?.[0]?.name;
    expect(nameOn(CART, takes[1]!)).toBe('CART_002.wav');
    expect(nameOn(BAG, takes[1]!)).toBe('BAG_001.wav');
    expect(nameOn(BAG, takes[3]!)).toBe('T004.wav');
  });

  test('tracks of one number on two recorders keep it', () => {
    const labels = trackLabels(twoRecorders().phone.day().rig);
    expect(['tr2', 'bag-tr2'].map((id) => labels.get(id))).toEqual(['2', '2']);
  });
});
