import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileNamesOf } from '../../../src/day/files/file-name.ts';
import { checkPattern } from '../../../src/day/files/file-pattern.ts';
import { safeName } from '../../../src/day/files/safe-name.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { speaker, take } from '../say.ts';

/** File names of a day that logs these takes under this pattern, in order. */
function names(pattern: string | null, ...takes: Draft[]): string[] {
  const phone = speaker();
  phone.say({ kind: 'roll-changed', roll: '7A' });
  phone.say({
    kind: 'day-described',
    fields: { date: '2026-10-07', ...(pattern !== null && { filePattern: pattern }) },
  });
  for (const draft of takes) phone.say(draft);
  return [...fileNamesOf(phone.day()).values()];
}

const wild = (number: number) => take('24', 1, number, { kind: 'wild' });

describe('a file name', () => {
  test('is slate and take where the mixer set nothing', () => {
    expect(names(null, take('24', 1, 3))).toEqual(['24AT3.wav']);
  });

  test.each([
    ['{slate}T{take}', '24AT3.wav'],
    ['{slate}T{take:2}', '24AT03.wav'],
    ['{scene}_{slate}_{take:3}', '24_24A_003.wav'],
    ['{roll}-{count}', '7A-1.wav'],
    ['{date}_{roll}_{count:3}', '2026-10-07_7A_001.wav'],
    ['{slate}T{take}{kind}', '24AT3.wav'],
    ['no token in it', '24AT3.wav'],
    ['{nonsense}', '24AT3.wav'],
  ])('of the pattern %s is %s', (pattern, name) => {
    expect(names(pattern, take('24', 1, 3))).toEqual([name]);
  });

  test('says what sets a take apart: false starts, pickups, wild tracks, room tones', () => {
    const takes = [
      take('24', 1, 1, { falseStart: true }),
      take('24', 1, 1, { falseStart: true }),
      take('24', 1, 1),
      take('24', 1, 2, { kind: 'pickup' }),
      wild(2),
      take('24', 1, 1, { kind: 'tone' }),
    ];
    expect(names('{slate}T{take}', ...takes)).toEqual([
      '24AT1FS.wav',
      '24AT1FS2.wav',
      '24AT1.wav',
      '24AT2PU.wav',
      'WT2.wav',
      'RT1.wav',
    ]);
    expect(names('{slate}_{take:2}_{kind}', ...takes)).toEqual([
      '24A_01_FS.wav',
      '24A_01_FS2.wav',
      '24A_01.wav',
      '24A_02_PU.wav',
      '24A_02_WT.wav',
      '24A_01_RT.wav',
    ]);
  });

  test.each([
    ['{slate}T{take:2}', 'WT02.wav'],
    ['{scene}_{slate}_{take}', '24_WT2.wav'],
    ['{scene}-{take}', '24-WT2.wav'],
    ['{take}-{slate}', 'WT2-24A.wav'],
    ['{slate}_{count}', 'WT_1.wav'],
    ['{roll}_{count:3}', '7A_001.wav'],
  ])('of a wild track under %s is %s', (pattern, name) => {
    expect(names(pattern, wild(2))).toEqual([name]);
  });

  test('is empty for MOS, which the running number leaves out', () => {
    expect(names('{count:3}', take('24', 1, 1), take('24', 2, 1, { kind: 'mos' }), take('24', 3, 1))).toEqual(
      ['001.wav', '', '002.wav'],
    );
  });

  test('typed by hand wins over the pattern', () => {
    expect(names('{slate}T{take}', take('24', 1, 3, { file: ' R0001.WAV ' }))).toEqual(['R0001.WAV']);
  });

  test('carries the roll that held at the take, also after a late correction', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { filePattern: '{roll}_{take}' } });
    const first = phone.id(take('24', 1, 1));
    const second = phone.id(take('24', 1, 2));
    phone.say({ kind: 'roll-changed', roll: '8B', before: second });
    expect([first, second].map((id) => fileNamesOf(phone.day()).get(id))).toEqual(['1.wav', '8B_2.wav']);
  });

  test('of an unknown take there is none', () => {
    expect(fileNamesOf(speaker().day()).has('000001-phonea00000')).toBe(false);
  });
});

describe('a pattern', () => {
  test.each([
    ['', { code: 'pattern-empty' }],
    ['   ', { code: 'pattern-empty' }],
    ['{slate', { code: 'pattern-brace-open', at: 0 }],
    ['{take}}', { code: 'pattern-brace-open', at: 6 }],
    ['{take:4}', { code: 'pattern-token-unknown', token: 'take:4' }],
    ['{slate}/{take}', { code: 'pattern-character-unsafe', found: '/' }],
    ['{slate}\u0000{take}', { code: 'pattern-character-unsafe', found: '\u0000' }],
    ['{slate}{kind}', { code: 'pattern-names-all-alike' }],
  ])('%j is refused with its reason', (pattern, problem) => {
    expect(checkPattern(pattern)).toEqual({ ok: false, problem });
  });

  test('of known tokens and plain text is taken', () => {
    expect(checkPattern('{date} {roll} {scene} {slate} {take:2} {count:3} {kind} ü').ok).toBe(true);
  });
});

// Reserved names and characters: Microsoft Learn, "Naming Files, Paths, and Namespaces".
describe('a safe name', () => {
  test.each([
    ['../../x', 'x.pdf'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a-b-c-d-e-f-g-h-i-j.pdf'],
    ['CON', '_CON.pdf'],
    ['nul.tar', '_nul.tar.pdf'],
    ['LPT1', '_LPT1.pdf'],
    ['COM²', '_COM².pdf'],
    ['console', 'console.pdf'],
    ['ends in a dot. ', 'ends in a dot.pdf'],
    ['.hidden', 'hidden.pdf'],
    ['tab\there\r\nthere', 'tabherethere.pdf'],
    ['right\u202eto left\u200f', 'rightto left.pdf'],
    ['', 'unnamed.pdf'],
    ['...', 'unnamed.pdf'],
    ['Łódź Ωμέγα Заря 🎬', 'Łódź Ωμέγα Заря 🎬.pdf'],
  ])('of %j is %j', (text, name) => {
    expect(safeName(text, 'pdf')).toBe(name);
  });

  test('is safe whatever the text is (seed 7)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const name = safeName(text, 'wav');
        expect(name).toMatch(/^[^\u0000-\u001f\u007f<>:"/\\|?*]+\.wav$/u);
        expect(name).not.toMatch(/^[.\s-]|[.\s]\.wav$|^(con|prn|aux|nul|com\d|lpt\d)\./i);
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(105);
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
