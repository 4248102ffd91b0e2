import { describe, expect, test } from 'vitest';
import { foldDay } from '../../src/day/fold/fold.ts';
import { dayTotals } from '../../src/day/wrap/day-totals.ts';
import { readFact } from '../../src/facts/fact.ts';
import { reportOf } from '../../src/report/model.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { trackText } from '../../src/report/printed/words.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { smallDay } from './report-day.ts';

const report = (phone: { day(): ReturnType<typeof foldDay> }) => reportOf(phone.day());

describe('a report', () => {
  test('follows a late correction in every line it touches and in no other', () => {
    const { phone, second } = smallDay();
    const before = report(phone);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'tomas', before: second });
    const after = report(phone);
    const name = (model: typeof before) => model.takes.map(({ tracks }) => tracks[2]?.name);
    expect(name(before)).toEqual(['Ines', 'Ines', 'Tomas', 'Tomas, Dora', undefined, 'Tomas, Dora']);
    expect(name(after)).toEqual(['Ines', 'Tomas', 'Tomas', 'Tomas, Dora', undefined, 'Tomas, Dora']);
    expect(after.layout[2]!.spans.map(({ fromText, line }) => [fromText, line?.name])).toEqual([
      ['24A/1', 'Ines'],
      ['24A/2', 'Tomas'],
      ['24B/1', 'Tomas, Dora'],
    ]);
  });

  test('spells a corrected name right everywhere', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'voice-described', voice: 'tomas', fields: { part: 'Tomás' } });
    expect(JSON.stringify(report(phone))).not.toMatch(/Tomas/);
  });

  test('lets MOS neither carry tracks nor break what a track carried', () => {
    const { layout, takes } = report(smallDay().phone);
    expect(takes[4]).toMatchObject({ kind: 'mos', file: '', tracks: [], status: ['mos'] });
    expect(layout[1]!.spans).toMatchObject([{ from: 0, to: 5 }]);
  });

  test('shows from which take a track was given up', () => {
    const { layout } = report(smallDay().phone);
    expect(layout[3]!.spans.map(({ from, to, line }) => [from, to, line?.state ?? null])).toEqual([
      [0, 1, 'single'],
      [2, 2, 'muted'],
      [3, 5, null],
    ]);
  });

  test('tells who of several is muted', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A2', muted: true });
    phone.say(take('25', 0, 1));
    expect(report(phone).takes.at(-1)!.tracks[2]).toMatchObject({
      state: 'single',
      name: 'Tomas, Dora',
      voices: [
        { name: 'Tomas', muted: false },
        { name: 'Dora', muted: true },
      ],
    });
  });

  test('lists the takes of a numbered day with their scene', () => {
    const phone = speaker();
    phone.say(take('', 0, 4, { slate: { style: 'numbered', number: 118, scene: '24' } }));
    expect(report(phone).takes[0]).toMatchObject({ text: '118/4', scene: '24', slate: '118', take: '4' });
  });

  test('numbers tracks by their name, and a mix that is called by a word by its place', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'part-described', part: 'tr1', fields: { name: 'Mix L' } });
    expect(report(phone).takes[0]!.tracks[0]).toMatchObject({ number: '1', name: 'Mix L', state: 'mix' });
  });

  test('holds names typed by hand as exceptions, also where nobody is', () => {
    const { phone } = smallDay();
    phone.say({ kind: 'track-named', track: 'tr5', name: 'Door' });
    phone.say(take('25', 0, 1));
    expect(report(phone).takes.at(-1)!.tracks.at(-1)).toMatchObject({
      name: 'Door',
      typed: true,
      state: 'empty',
    });
  });
});

describe('what is not settled', () => {
  const codes = (phone: { day(): ReturnType<typeof foldDay> }) => report(phone).open.map(({ code }) => code);

  test('is nothing on a settled day', () => {
    expect(codes(smallDay().phone)).toEqual([]);
  });

  test('is a take that has not been cut, which lacks no length yet', () => {
    const { phone } = smallDay();
    phone.say(take('25', 0, 1, { length: null, rolledAt: MORNING }));
    expect(codes(phone)).toEqual(['take-open']);
  });

  test('is a voice that is waited for and reaches no track', () => {
    const { phone, third } = smallDay();
    phone.say({ kind: 'voices-needed', voices: [{ voice: 'ines', need: 'needed' }], before: third });
    expect(report(phone).open).toEqual([
      expect.objectContaining({
        code: 'voice-unrecorded',
        voice: 'ines',
        names: ['24B/1 FS', '24B/1', 'WT1'],
      }),
    ]);
  });

  test('is every input on which two voices arrive, also where several do at the same takes', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'inputs-sent', routes: ['aes1', 'aes2'].map((input) => ({ input, tracks: [] })) });
    for (const output of ['near1out', 'near2out'])
      phone.say({ kind: 'part-described', part: output, fields: { carries: ['near1', 'near2'] } });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    phone.say(take('24', 1, 1));
    const found = report(phone).open.filter(({ code }) => code === 'clash-on-input');
    expect(found.map(matterText)).toEqual([
      'Two voices on AES 1, which feeds no track: 24A/1.',
      'Two voices on AES 2, which feeds no track: 24A/1.',
    ]);
  });

  test('is a typed name whose voice has gone to somebody else', () => {
    const { phone, first } = smallDay();
    phone.say({ kind: 'track-named', track: 'tr3', name: 'Ines alone', before: first });
    expect(report(phone).open.map(matterText)).toEqual([
      'Track 3 is named Ines alone by hand, but Tomas was on it: 24B/1 FS.',
      'Track 3 is named Ines alone by hand, but Tomas, Dora was on it: 24B/1, WT1.',
    ]);
  });

  test('is a fact from a newer version', () => {
    const { phone } = smallDay();
    const newer = readFact({
      id: '00zzzz-phoneb00000',
      day: 'day-1',
      kind: 'drone-launched',
      v: 1,
      at: MORNING,
      zone: 0,
    });
    if (!newer.ok) throw new Error('refused');
    const model = reportOf(foldDay('day-1', [...phone.facts, newer.value]));
    expect(model.open).toEqual([{ code: 'facts-unknown', count: 1 }]);
  });
});

describe('totals', () => {
  test('agree with a table added up by hand', () => {
    expect(dayTotals(smallDay().phone.day())).toMatchObject({
      takes: 6,
      circled: 2,
      files: 5,
      recordedMs: 100_000,
      withoutLength: 0,
      longest: { ms: 60_000 },
      bytes: 47_520_000,
    });
  });

  test('of no takes are nothing', () => {
    expect(dayTotals(speaker().day())).toMatchObject({ takes: 0, recordedMs: 0, longest: null, bytes: 0 });
  });

  test('say of how many files the length is not known', () => {
    const { phone, first } = smallDay();
    phone.say({ kind: 'take-described', take: first, fields: { length: null } });
    expect(dayTotals(phone.day())).toMatchObject({ withoutLength: 1, recordedMs: 90_000 });
  });
});

describe('a clean line', () => {
  test('drops control characters, direction orders and half characters from every field', () => {
    const { phone, first } = smallDay();
    const hostile = 'a\u0000b\u202ec\u2066d\ud800e\u001b[31mf\r\ng';
    phone.say({ kind: 'day-described', fields: { production: hostile } });
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: hostile } });
    phone.say({ kind: 'note-added', take: first, text: hostile });
    const model = report(phone);
    expect(model.head.production).toBe('abcde[31mf g');
    expect(model.takes[0]!.tracks[2]!.name).toBe('abcde[31mf g');
    expect(model.takes[0]!.notes[0]!.text).toBe('abcde[31mf\ng');
  });
});

describe('one pack on two channels that reach one track', () => {
  test('is one voice, said to be there twice, and no open matter', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near2', transmitter: 'A1' }] });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    phone.say(take('24', 0, 1));
    const { takes, open } = report(phone);
    const line = takes[0]!.tracks.find(({ track }) => track === 'tr3')!;
    expect(line.voices).toEqual([{ voice: 'ines', name: 'Ines', muted: false, twice: true }]);
    expect(trackText(line)).toBe('Ines (Ines twice)');
    expect(open.map(({ code }) => code)).not.toContain('clash');
  });
});

describe('what the head lacks', () => {
  const lacking = (fields: object, roll?: string): string[] => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields }, ...(roll ? [{ kind: 'roll-changed', roll } as const] : []));
    return reportOf(phone.day()).open.map(matterText);
  };

  test('is not settled: production, mixer, roll and date', () => {
    expect(lacking({})).toEqual(['Not entered: production, mixer, roll, date.']);
    expect(lacking({ production: 'Salt Road', date: '2026-10-07' })).toEqual(['Not entered: mixer, roll.']);
    expect(lacking({ production: 'Salt Road', date: '2026-10-07', mixer: 'N. Aske' }, '7A')).toEqual([]);
  });
});
