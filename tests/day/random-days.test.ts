import { describe, expect, test } from 'vitest';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { answersAtTake } from '../../src/day/answers/answers.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, TakeId } from '../../src/day/model.ts';
import { rollingAtTake, rollOfTake, rollOn } from '../../src/day/recorders/rolling.ts';
import { settingsAtTake } from '../../src/day/settings/settings.ts';
import { type PlainTake, recordedBy, type Sound } from './plain-chain.ts';
import { randomDay } from './random-days.ts';

/** What these days are set to before anything is said on the line. */
const AS_THE_HEAD = {
  sampleRate: 48_000,
  bitDepth: '24',
  timecodeRate: '25',
  fileLayout: 'poly',
  filePattern: '{slate}T{take}',
};

const TAKES = 24;
const DAYS = 72;

/** What the day says each iso track hears on a take. */
function heardOn(day: Day, take: TakeId): Record<string, Sound[]> {
  const { tracks } = answersAtTake(day, take);
  const isos = tracks.filter(({ state }) => state !== 'mix');
  return Object.fromEntries(
    isos.map(({ track, heard }) => [track.id, heard.map(({ voice, muted }) => ({ voice, muted }))]),
  );
}

/**
 * The names in the order of the inputs, each once, as they are to be read on a track; of somebody with several packs
 * the pack too, where only one of them is on it.
 */
function namesOf(day: Day, { tracks, packs, worn }: PlainTake, track: string): string {
  const voices = [...new Set(tracks[track]!.map(({ voice }) => voice))];
  return voices
    .map((voice) => {
      const own = new Set(packs[track]!.filter((_, at) => tracks[track]![at]!.voice === voice));
      const [pack] = own;
      const name = day.voices.get(voice)!.part;
      return pack && own.size === 1 && worn.get(voice)!.length > 1
        ? `${name} ${day.rig.byId.get(pack)!.name}`
        : name;
    })
    .join(', ');
}

describe('random days made by commands, a third of their changes late, against a second reading of the chain', () => {
  let [takes, wrong] = [0, 0];

  test.each(STARTING_RIGS.map(({ id }) => id))('every track of every take, on the rig "%s"', (rig) => {
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const { day, bench, cards } = randomDay(rig, seed, TAKES, seed % 2 === 0);
      const plain = recordedBy(bench, cards);
      expect([...day.takeOrder].sort()).toEqual([...plain.keys()].sort());
      const anew = foldDay(day.id, day.facts);
      for (const [take, laid] of plain) {
        const { tracks, settings, roll, recorders } = laid;
        takes += 1;
        const isRight =
          JSON.stringify(heardOn(day, take)) === JSON.stringify(tracks) &&
          JSON.stringify(heardOn(anew, take)) === JSON.stringify(tracks);
        if (!isRight) {
          wrong += 1;
          expect(heardOn(day, take), `${rig}, seed ${seed}, take ${take}`).toEqual(tracks);
          expect(heardOn(anew, take), `${rig}, seed ${seed}, take ${take}, folded anew`).toEqual(tracks);
        }
        const answers = answersAtTake(day, take);
        for (const one of [day, anew]) {
          expect(settingsAtTake(one, take), `${rig}, seed ${seed}, take ${take}`).toEqual({
            ...AS_THE_HEAD,
            ...settings,
          });
          expect(rollOn(one, take, 'recorder')).toBe(roll);
          expect(answersAtTake(one, take).roll).toBe(rollOfTake(one, take));
          expect(rollingAtTake(one, take).map(({ id }) => id)).toEqual(recorders ?? ['recorder']);
        }
        for (const { track, name, state } of answers.tracks) {
          if (state !== 'mix') expect(name).toBe(namesOf(day, laid, track.id));
        }
        for (const { voice, tracks: on } of answers.voices) {
          const heard = Object.keys(tracks).filter((id) => tracks[id]!.some((one) => one.voice === voice.id));
          expect([...on].sort(), `the tracks of ${voice.part}`).toEqual(heard.sort());
        }
      }
    }
  });

  test('none of 5,000 takes is wrong', () => {
    console.log(`random days: ${wrong} of ${takes} takes wrong`);
    expect(takes).toBeGreaterThan(5000);
    expect(wrong).toBe(0);
  });
});
