import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { answersAtTake } from '../../src/day/answers/answers.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, TakeId } from '../../src/day/model.ts';
import { type PlainTake, recordedBy } from './plain-chain.ts';
import { type RandomDay, randomDay } from './random-days.ts';

const TAKES = 16;
const DAYS = 12;

/** What is said of a take with two recorders: by the day's answers, and by the plain reading. */
interface Reading {
  readonly tracks: Record<string, string[]>;
  readonly rolling: readonly string[];
  /** Every voice: which of those that roll hears it, and the tracks on them that it arrives at. */
  readonly voices: Record<string, [string, string[]]>;
}

function asAnswered(day: Day, take: TakeId): Reading {
  const { tracks, recorders, voices } = answersAtTake(day, take);
  const said = tracks.flatMap(({ track, state, heard }): [string, string[]][] =>
    state === 'mix' ? [] : [[track.id, heard.map(({ voice, muted }) => `${voice} ${muted}`)]],
  );
  return {
    tracks: Object.fromEntries(said),
    rolling: recorders.filter(({ rolls }) => rolls).map(({ recorder }) => recorder),
    voices: Object.fromEntries(
      voices.map(({ voice, heardOn, tracks: on }) => [voice.id, [heardOn, on.toSorted()]]),
    ),
  };
}

function asOnTheBench({ bench, day }: RandomDay, { tracks, recorders }: PlainTake): Reading {
  const rolling = recorders ?? ['recorder'];
  const voices = [...day.voices.keys()].map((voice): [string, [string, string[]]] => {
    const arrives = Object.keys(tracks).filter(
      (track) =>
        rolling.includes(bench.recorderOf(track)) && tracks[track]!.some((sound) => sound.voice === voice),
    );
    const hears = (recorder: string | undefined): boolean =>
      arrives.some(
        (track) =>
          bench.recorderOf(track) === recorder &&
          tracks[track]!.some((sound) => sound.voice === voice && !sound.muted),
      );
    const heardOn = hears(rolling[0]) ? 'main' : hears(rolling[1]) ? 'backup' : 'none';
    return [voice, [heardOn, arrives.sort()]];
  });
  return {
    tracks: Object.fromEntries(
      Object.entries(tracks).map(([track, sounds]) => [
        track,
        sounds.map(({ voice, muted }) => `${voice} ${muted}`),
      ]),
    ),
    rolling,
    voices: Object.fromEntries(voices),
  };
}

describe('random days with two recorders, their outputs going to both, against the second reading of the chain', () => {
  let [takes, moves] = [0, 0];

  test.each(STARTING_RIGS.map(({ id }) => id))(
    'every track and voice of every take, beside the rig "%s"',
    (rig) => {
      for (let seed = 1; seed <= DAYS; seed += 1) {
        const made = randomDay(rig, seed, TAKES, true, seed % 2 === 0 ? 'rig' : 'recorder');
        const anew = foldDay(made.day.id, made.day.facts);
        let last = '';
        for (const [take, plain] of recordedBy(made.bench, made.cards)) {
          takes += 1;
          const expected = asOnTheBench(made, plain);
          if (last !== '' && last !== expected.rolling.join()) moves += 1;
          last = expected.rolling.join();
          for (const day of [made.day, anew]) {
            const answered = asAnswered(day, take);
            if (!isDeepStrictEqual(answered, expected))
              expect(answered, `${rig}, seed ${seed}, take ${take}`).toEqual(expected);
          }
        }
      }
    },
  );

  test('500 takes and more, with the unit moving about', () => {
    console.log(`random recorders: ${takes} takes, ${moves} moves`);
    expect(takes).toBeGreaterThan(500);
    expect(moves).toBeGreaterThan(100);
  });
});
