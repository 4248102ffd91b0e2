import { describe, expect, test } from 'vitest';
import { filesOfTakes, namesTogether } from '../../../src/day/files/take-files.ts';
import { dayTotals } from '../../../src/day/wrap/day-totals.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { MIXES_BY_WORD } from '../../report/mixes-by-word.ts';
import { type Speaker, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

/** The mix, the boom and Ines on tracks 1 to 3; nobody on 4 and 5. */
function monoDay(...said: Draft[]): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  for (const one of said) phone.say(one);
  return phone;
}

const files = (phone: Speaker): string[][] =>
  [...filesOfTakes(phone.day()).values()].map((list) => list.map(({ name }) => name));
const pattern = (filePattern: string): Draft => ({ kind: 'day-described', fields: { filePattern } });

describe('the files of a take of mono files', () => {
  test('are as many as its recorded tracks, each with a name of its own, and are counted so', () => {
    const phone = monoDay(take('24', 1, 1), { kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    phone.say(take('24', 1, 2, { falseStart: true }));
    phone.say(take('24', 1, 3, { kind: 'wild' }), take('24', 2, 1, { kind: 'mos' }));
    expect(files(phone)).toEqual([
      ['24AT1_1.wav', '24AT1_2.wav', '24AT1_3.wav'],
      ['24AT2FS_1.wav', '24AT2FS_2.wav', '24AT2FS_3.wav', '24AT2FS_4.wav'],
      ['WT3_1.wav', 'WT3_2.wav', 'WT3_3.wav', 'WT3_4.wav'],
      [],
    ]);
    expect(dayTotals(phone.day()).files).toBe(11);
    expect([...filesOfTakes(phone.day()).values()][0]!.map(({ track }) => track)).toEqual([
      'tr1',
      'tr2',
      'tr3',
    ]);
  });

  test('are one a take where the recorder writes poly files, and again mono when that is said later', () => {
    const phone = monoDay(take('24', 1, 1), { kind: 'day-described', fields: { fileLayout: 'poly' } });
    expect(files(phone)).toEqual([['24AT1.wav']]);
    expect(dayTotals(phone.day()).files).toBe(1);
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    expect(dayTotals(phone.day()).files).toBe(3);
  });

  test('are marked with what each track is called, and no two alike', () => {
    expect(files(monoDay(MIXES_BY_WORD, take('24', 1, 1)))).toEqual([
      ['24AT1_L.wav', '24AT1_R.wav', '24AT1_1.wav', '24AT1_2.wav'],
    ]);
    const odd = monoDay(take('24', 1, 1));
    for (const [part, name] of [
      ['tr1', 'a/b'],
      ['tr2', 'A:B'],
      ['tr3', 'Ω mix?'],
    ] as const)
      odd.say({ kind: 'part-described', part, fields: { name, mix: false } });
    odd.say({ kind: 'track-named', track: 'tr1', name: 'by hand', before: [...odd.day().takes.keys()][0]! });
    expect(files(odd)).toEqual([['24AT1_a-b.wav', '24AT1_A-B-2.wav', '24AT1_Ω-mix.wav']]);
  });

  test('of a track that was named by hand are there, as the name says that it was recorded', () => {
    const named = { kind: 'track-named', track: 'tr5', name: 'Door' } as const;
    expect(files(monoDay(named, take('24', 1, 1)))[0]).toContain('24AT1_5.wav');
  });

  test.each([
    ['{slate}T{take}_{track}', '24AT1_3.wav'],
    ['{slate}T{take}_tr{track:2}', '24AT1_tr03.wav'],
    ['{slate}-{take:2}.{track}', '24A-01.3.wav'],
    ['{slate}T{take}{track:2}', '24AT103.wav'],
    ['{track}_{slate}T{take}', '3_24AT1.wav'],
  ])('have the mark where the pattern %s says', (text, name) => {
    expect(files(monoDay(pattern(text), take('24', 1, 1)))[0]![2]).toBe(name);
  });

  test.each([
    ['{slate}T{take}_tr{track}', '24AT1.wav'],
    ['{track}_{slate}T{take}', '24AT1.wav'],
  ])('of a poly day have no mark, whatever the pattern %s says', (text, name) => {
    const poly: Draft = { kind: 'day-described', fields: { fileLayout: 'poly' } };
    expect(files(monoDay(poly, pattern(text), take('24', 1, 1)))).toEqual([[name]]);
  });

  test('keep their marks where the name must be cut', () => {
    const [names] = files(monoDay(take('9'.repeat(150), 1, 1)));
    expect(new Set(names).size).toBe(3);
    for (const name of names!) expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(104);
  });

  test('have a name typed by hand before their marks; it is the whole name of one file', () => {
    expect(files(monoDay(take('24', 1, 1, { file: 'R0001.WAV' })))).toEqual([
      ['R0001_1.WAV', 'R0001_2.WAV', 'R0001_3.WAV'],
    ]);
    const alone = monoDay(
      { kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: null }] },
      { kind: 'transmitter-worn', transmitter: 'A1', voice: null },
      take('24', 1, 1, { file: 'R0001_1.WAV' }),
    );
    expect(files(alone)).toEqual([['R0001_1.WAV']]);
  });

  test('is one where nothing is known of tracks, and counted so', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    phone.say(take('24', 1, 1));
    expect(files(phone)).toEqual([['24AT1.wav']]);
    expect(dayTotals(phone.day()).files).toBe(1);
  });
});

describe('a name typed for a take without sound', () => {
  test('is that of a file, and counted', () => {
    const phone = monoDay(take('24', 1, 1, { kind: 'mos', file: 'X.WAV' }));
    expect(files(phone)).toEqual([['X.WAV']]);
    expect(dayTotals(phone.day()).files).toBe(1);
  });
});

describe('names in one breath', () => {
  test.each([
    [[], ''],
    [['24AT1.wav'], '24AT1.wav'],
    [['24AT1_1.wav', '24AT1_2.wav', '24AT1_16.wav'], '24AT1_1, _2, _16.wav'],
    [['24AT1_1.wav', '24AT1_10.wav', '24AT1_11.wav'], '24AT1_1, _10, _11.wav'],
    [['24AT1_tr1.wav', '24AT1_tr2.wav'], '24AT1_tr1, _tr2.wav'],
    [['24A_T1_L.wav', '24A_T1_R.wav'], '24A_T1_L, _R.wav'],
    [['3_24A.wav', '4_24A.wav'], '3_24A.wav, 4_24A.wav'],
    [['24A_1.wav', '24A_2.WAV'], '24A_1.wav, 24A_2.WAV'],
    [['24A.wav', '24A_2.wav'], '24A.wav, 24A_2.wav'],
    [['R1', 'R2'], 'R1, R2'],
  ])('of %j are %j', (names, text) => {
    expect(namesTogether(names)).toBe(text);
  });
});
