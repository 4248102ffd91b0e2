import { describe, expect, test } from 'vitest';
import { generateDay } from '../../../sample-days/generate.ts';
import { answersAtTake, answersFrom } from '../../../src/day/answers/answers.ts';
import { clashesWithoutGang } from '../../../src/day/answers/gang-reach.ts';
import { linksAtTake } from '../../../src/day/chain/links.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { type Speaker, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

/** Ines on A1 and Tomas on A3, each on a track of their own. */
function wired(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A3', voice: 'tomas' });
  return phone;
}

describe('takes between which something changed', () => {
  test('share the answers of whatever it does not concern', () => {
    const phone = wired();
    const first = phone.id(take('24', 1, 1));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'dora' });
    const second = phone.id(take('24', 1, 2));
    const day = phone.day();
    const [one, other] = [answersAtTake(day, first), answersAtTake(day, second)];
    const shared = one.tracks.filter((track, at) => track === other.tracks[at]);
    const names = (tracks: typeof shared) => tracks.map(({ name }) => name).filter(Boolean);
    expect(names(shared)).toContain('Tomas');
    expect(names(other.tracks.filter((track) => !shared.includes(track)))).toEqual(['Dora']);
    const apart = other.voices.filter((voice, at) => voice !== one.voices[at]);
    expect(apart.map(({ voice }) => voice.id).sort()).toEqual(['dora', 'ines']);
  });

  test('have the answers that each would have alone, in whatever order they are asked for', () => {
    const { day: id, facts } = generateDay({
      seed: 11,
      takes: 80,
      tracks: 16,
      performers: 12,
      isTwice: true,
    });
    const day = foldDay(id, facts);
    const takes = takesInOrder(day);
    for (const [at] of takes.entries()) {
      const { id: asked } = takes[(at * 37) % takes.length]!;
      const { links: _, ...answers } = answersAtTake(day, asked);
      const { links: __, ...alone } = answersFrom(day, linksAtTake(day, asked));
      expect(answers).toEqual(alone);
    }
  });

  test('may share a track in a gang, of which only one keeps it where that is ended, by a further gang', () => {
    const phone = wired();
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: ['tr3'] }] });
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near3'] });
    const first = phone.id(take('24', 1, 1));
    phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2', 'near3'] });
    const second = phone.id(take('24', 1, 2));
    const day = phone.day();
    const trackAt = (at: string) => answersAtTake(day, at).tracks.find(({ track }) => track.id === 'tr3');
    expect(trackAt(first)).toMatchObject({ state: 'gang' });
    expect(trackAt(second)).toBe(trackAt(first));
    expect(clashesWithoutGang(day, 'tr3', first).map(({ id }) => id)).toEqual([first]);
  });
});
