import { describe, expect, test } from 'vitest';
import { reportOf } from '../../src/report/model.ts';
import { unusedTracks, usedTracks } from '../../src/report/printed/layout-words.ts';
import { trackKey, trackNumber } from '../../src/report/track-lines.ts';
import { type Speaker, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

const wear = (voice: string | null) => ({ kind: 'transmitter-worn', transmitter: 'A1', voice }) as const;
const mos = { kind: 'mos', start: null, length: null };
function wired(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  return phone;
}
/** What track 3 carried, as runs of takes. */
const spansOf = (phone: Speaker) =>
  reportOf(phone.day()).layout[2]!.spans.map(
    ({ from, to, fromText, line }) => `${from}-${to} ${fromText} ${line?.name ?? 'nobody'}`,
  );

describe('what a track carried', () => {
  test('is one run over takes that say the same, and MOS neither starts, ends nor breaks it', () => {
    const phone = wired();
    phone.say(wear('ines'));
    phone.say(take('24', 1, 1, mos));
    phone.say(take('24', 1, 2), take('24', 1, 3, mos), take('24', 1, 4), take('24', 1, 5, mos));
    expect(spansOf(phone)).toEqual(['1-3 24A/2 Ines']);
  });

  test('has a hole where nobody was on it, before, between and after', () => {
    const phone = wired();
    phone.say(take('24', 1, 1), take('24', 1, 2));
    phone.say(wear('ines'));
    phone.say(take('24', 1, 3));
    phone.say(wear(null));
    phone.say(take('24', 1, 4, mos), take('24', 1, 5), take('24', 1, 6));
    phone.say(wear('ines'));
    phone.say(take('24', 1, 7));
    phone.say(wear(null));
    phone.say(take('24', 1, 8));
    expect(spansOf(phone)).toEqual([
      '0-1 24A/1 nobody',
      '2-2 24A/3 Ines',
      '4-5 24A/5 nobody',
      '6-6 24A/7 Ines',
      '7-7 24A/8 nobody',
    ]);
  });

  test('begins anew where the name or the state changes', () => {
    const phone = wired();
    phone.say(wear('ines'));
    phone.say(take('24', 1, 1));
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    phone.say(take('24', 1, 2));
    phone.say(wear('dora'));
    phone.say(take('24', 1, 3));
    expect(spansOf(phone)).toEqual(['0-0 24A/1 Ines', '1-1 24A/2 Ines', '2-2 24A/3 Dora']);
  });

  test('is the rig as it stands before the first take, and nothing where all takes are MOS', () => {
    const phone = wired();
    phone.say(wear('ines'));
    expect(spansOf(phone)).toEqual(['-1--1  Ines']);
    expect(reportOf(phone.day()).layout[2]!.spans[0]!.fromTake).toBeNull();
    phone.say(take('24', 1, 1, mos));
    expect(spansOf(phone)).toEqual([]);
  });

  test('in words names the takes from the second run on, and leaves out who was not there at first', () => {
    const phone = wired();
    phone.say(take('24', 1, 1));
    phone.say(wear('ines'));
    phone.say(take('24', 1, 2));
    phone.say(wear(null));
    phone.say(take('24', 1, 3));
    const { layout } = reportOf(phone.day());
    expect(usedTracks(layout).find(({ number }) => number === '3')?.lines).toEqual([
      'from 24A/2: Ines',
      'from 24A/3: nobody',
    ]);
    expect(unusedTracks(layout)).toEqual(['4', '5']);
  });
});

describe('how a track is called', () => {
  test('is its label, its own name where it is struck, and its id where nobody knows it', () => {
    const phone = wired();
    phone.say({ kind: 'part-described', part: 'tr3', fields: { name: ' Iso\tC ' } });
    const numberOf = (id: string) => trackNumber(phone.day(), id);
    expect([numberOf('tr2'), numberOf('tr3'), numberOf('tr99')]).toEqual(['2', 'Iso C', 'tr99']);
  });

  test('and who is on it, muted or not, tells two lines apart', () => {
    const line = { track: 't', number: '5', name: 'A', state: 'single' as const, typed: false, voices: [] };
    const other = [
      { ...line, name: 'B' },
      { ...line, state: 'gang' as const },
      { ...line, typed: true },
      { ...line, voices: [{ voice: 'v', name: 'A', muted: false }] },
      { ...line, voices: [{ voice: 'v', name: 'A', muted: true }] },
    ];
    expect(new Set([line, ...other].map(trackKey)).size).toBe(6);
    expect(trackKey({ ...line, track: 'u', number: '6' })).toBe(trackKey(line));
  });
});
