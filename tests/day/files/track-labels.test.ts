import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trackLabels } from '../../../src/day/files/track-labels.ts';
import { speaker } from '../say.ts';

interface SaidTrack {
  readonly name: string;
  readonly mix?: boolean;
}

/** How these tracks, in the order of the recorder, are called. */
function labels(...tracks: (string | SaidTrack)[]): string[] {
  const phone = speaker();
  const said = tracks.map((track) => (typeof track === 'string' ? { name: track } : track));
  phone.say({
    kind: 'rig-laid',
    parts: said.map(({ name, mix = false }, at) => ({
      part: `part${at}`,
      fields: { type: 'track' as const, name, mix, order: at },
    })),
  });
  return [...trackLabels(phone.day().rig).values()];
}

const mix = (name: string): SaidTrack => ({ name, mix: true });

describe('a track', () => {
  test('is called by its name, and a mix that is called by a word by its place', () => {
    expect(labels(mix('Mix'), '2', '3')).toEqual(['1', '2', '3']);
    expect(labels('1', '2', mix('L'), mix('R'))).toEqual(['1', '2', '3', '4']);
  });

  test('bears no number that is on another: mixes L and R before isos that count from 1', () => {
    expect(labels(mix('L'), mix('R'), '1', '2')).toEqual(['L', 'R', '1', '2']);
    expect(labels(mix('L'), mix('R'), '2', '3')).toEqual(['1', 'R', '2', '3']);
  });

  test('is told apart by its place where two phones gave one name', () => {
    expect(labels('1', '2', '2', ' 2 ')).toEqual(['1', '2', '2 (place 3)', '2 (place 4)']);
    expect(labels('a', 'A')).toEqual(['a', 'A (place 2)']);
    expect(labels('2 (place 2)', '2', '2')).toEqual(['2 (place 2)', '2', '2 (place 3)']);
  });

  test('without a name that can be read is called by its place', () => {
    expect(labels('', '\u0000 \u202e', mix(' '))).toEqual(['1', '2', '3']);
    expect(labels('2', '')).toEqual(['2', 'track (place 2)']);
  });

  test('never shares what it is called with another, whatever is typed (seed 61)', () => {
    const name = fc.oneof(
      fc.constantFrom('1', '2', '3', 'L', 'R', 'l', '', ' 1', '１', '1\u0000', '1 (place 2)', 'track'),
      fc.string({ unit: 'binary', maxLength: 6 }),
    );
    const track = fc.record({ name, mix: fc.boolean() });
    fc.assert(
      fc.property(fc.array(track, { maxLength: 12 }), (tracks) => {
        const found = labels(...tracks);
        const read = found.map((label) =>
          label
            .normalize('NFKC')
            .replaceAll(/[\p{C}\s]/gu, '')
            .toUpperCase(),
        );
        expect(found).toHaveLength(tracks.length);
        expect(read).not.toContain('');
        expect(new Set(read).size).toBe(tracks.length);
      }),
      { seed: 61, numRuns: 300 },
    );
  });
});
