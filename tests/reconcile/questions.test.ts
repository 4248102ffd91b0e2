import { describe, expect, test } from 'vitest';
import { assign } from '../../src/matching/assignment.ts';
import { bestFit } from '../../src/reconcile/pairing/best-fit.ts';
import type { Candidate } from '../../src/reconcile/pairing/candidates.ts';
import { LEAST_BITS } from '../../src/reconcile/pairing/likelihood.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import type { Recording } from '../../src/wave/recording/recordings.ts';
import { speaker, take } from '../day/say.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, checkFiles, openOn, settle, told } from './check-card.ts';
import { seeded } from './film-day.ts';

const SECOND = 48_000;

const fileOf = (recording: Recording | null): string => recording?.files.at(0)?.name ?? 'none';

/** Two takes of one slate and number, the first a false start, with whatever else is known of them. */
function falseStart(more: object = {}) {
  const phone = speaker();
  const first = phone.id(take('24', 1, 1, { falseStart: true, start: null, length: null, ...more }));
  const second = phone.id(take('24', 1, 1, { start: null, length: null, ...more }));
  const file: CardFile = { ...cardOf(phone.day())[0]!, types: [], length: 12 * SECOND };
  const files = [
    { ...file, name: 'A001.wav', start: 40_000 * SECOND },
    { ...file, name: 'A002.wav', start: 40_060 * SECOND },
  ];
  return { phone, first, second, files };
}

describe('a false start and a take of one slate and number', () => {
  test('are told apart by the order of the files where nothing else does', async () => {
    const { phone, first, second, files } = falseStart();
    const { pairs, questions } = matchRecordings(phone.day(), await recordCard(files));
    expect(questions).toEqual([]);
    expect(pairs.map(({ take: id, recording }) => [id, fileOf(recording)])).toEqual([
      [first, 'A001.wav'],
      [second, 'A002.wav'],
    ]);
  });

  test('are told apart by what the file says of itself', async () => {
    const { phone, first, files } = falseStart();
    const [one, other] = files;
    const recordings = await recordCard([{ ...one!, types: ['FALSE_START'] }, other!]);
    const { pairs, questions } = matchRecordings(phone.day(), recordings);
    expect(questions).toEqual([]);
    expect(fileOf(pairs.find((pair) => pair.take === first)!.recording)).toBe('A001.wav');
  });

  test('are told apart by their starts', async () => {
    const { phone, first, second, files } = falseStart();
    const start = (id: string, seconds: number) =>
      phone.say({
        kind: 'take-described',
        take: id,
        fields: { start: { frames: seconds * 25, rate: '25' } },
      });
    start(first, 40_000);
    start(second, 40_060);
    const { pairs, questions } = matchRecordings(phone.day(), await recordCard(files));
    expect(questions).toEqual([]);
    expect(pairs.map(({ recording }) => recording.files[0]!.name)).toEqual(['A001.wav', 'A002.wav']);
  });
});

describe('one take and two files that are alike', () => {
  const oneTake = () => {
    const { phone, second, files } = falseStart();
    phone.say({ kind: 'fact-retracted', targets: [second], by: 'hand' });
    return { phone, files };
  };

  test('are asked about, with both to choose from', async () => {
    const { phone, files } = oneTake();
    const match = matchRecordings(phone.day(), await recordCard(files));
    expect([match.pairs, match.recordingsWithout]).toEqual([[], []]);
    const [question] = match.questions;
    expect(question!.choices.map(({ recording }) => fileOf(recording)).sort()).toEqual([
      'A001.wav',
      'A002.wav',
    ]);
  });

  test('are settled by naming the file', async () => {
    const { phone, files } = oneTake();
    const [question] = await checkFiles(phone.day(), files);
    expect(question).toMatchObject({ code: 'match-unsure', is: ['A001.wav', 'A002.wav'] });
    settle(phone, byFile(question!));
    const recordings = await recordCard(files);
    const codes = openOn(phone.day(), recordings).map(({ code }) => code);
    expect(codes).not.toContain('match-unsure');
    expect(codes).toContain('recording-not-logged');
    expect(matchRecordings(phone.day(), recordings).pairs).toHaveLength(1);
  });
});

describe('a setup without sound', () => {
  const mos = () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const silent = phone.id(take('24', 2, 1, { kind: 'mos', start: null, length: null }));
    return { phone, silent, files: cardOf(phone.day()) };
  };

  test('expects no file', async () => {
    const { phone, files } = mos();
    expect(await checkFiles(phone.day(), files)).toEqual([]);
  });

  test('that was recorded after all is told, and becomes a take with the times of the file', async () => {
    const { phone, silent, files } = mos();
    const extra = { ...files[0]!, name: 'X.wav', scene: '24B', take: '1', start: 4000 * SECOND };
    const recordings = await recordCard([...files, extra]);
    const [found, ...others] = openOn(phone.day(), recordings);
    expect([found!.code, found!.take, others.length]).toEqual(['mos-recorded', silent, 0]);
    settle(phone, byFile(found!));
    expect(phone.day().takes.get(silent)).toMatchObject({
      kind: 'take',
      start: { frames: 100_000, rate: '25' },
    });
    expect(told(phone.day(), openOn(phone.day(), recordings))).toEqual([
      'file-name-differs at 1: "24BT1.wav" / "X.wav"',
    ]);
  });
});

describe('the best overall fit', () => {
  /** Points for some pairs of five takes and five recordings. */
  const randomCandidates = (seed: number): Candidate[] => {
    const random = seeded(seed);
    return Array.from({ length: 25 }, (_, at) => at).flatMap((at) =>
      random() < 0.45
        ? []
        : [
            {
              take: Math.floor(at / 5),
              recording: at % 5,
              bits: LEAST_BITS + Math.floor(random() * 40),
            },
          ],
    );
  };

  /** The most points above the least that any fit has, with these pairs made or (null) not made. */
  function mostPoints(
    candidates: readonly Candidate[],
    forced?: { take: number; recording: number | null },
  ): number {
    const walk = (at: number, used: ReadonlySet<number>): number => {
      if (at === 5) return 0;
      const mine = candidates.filter(({ take: one }) => one === at);
      const choices: (Candidate | null)[] = [null, ...mine];
      const totals = choices.map((choice) => {
        const recording = choice?.recording ?? null;
        if (forced?.take === at && forced.recording !== recording) return -Infinity;
        if (recording !== null && used.has(recording)) return -Infinity;
        const gained = choice ? choice.bits - LEAST_BITS : 0;
        return gained + walk(at + 1, recording === null ? used : new Set([...used, recording]));
      });
      return Math.max(...totals);
    };
    return walk(0, new Set());
  }

  test.each(Array.from({ length: 40 }, (_, at) => at + 1))(
    'is the best of all fits, and knows what every other choice would cost (seed %i)',
    (seed) => {
      const candidates = randomCandidates(seed);
      const fitted = bestFit(candidates);
      const points = ({ take: at, recording }: { take: number; recording: number | null }): number => {
        const pair = candidates.find((one) => one.take === at && one.recording === recording);
        return pair ? pair.bits - LEAST_BITS : 0;
      };
      const best = mostPoints(candidates);
      expect(fitted.reduce((sum, one) => sum + points(one), 0)).toBe(best);
      for (const { take: at, others } of fitted) {
        for (const { recording, loss } of others)
          expect([at, recording, loss]).toEqual([
            at,
            recording,
            best - mostPoints(candidates, { take: at, recording }),
          ]);
        const mine = candidates.filter((one) => one.take === at).length;
        expect(others).toHaveLength(mine);
      }
    },
  );

  test('asks about everything where more takes are alike than can be fitted', () => {
    const alike = Array.from({ length: 401 * 3 }, (_, at) => ({
      take: Math.floor(at / 3),
      recording: (Math.floor(at / 3) + (at % 3)) % 401,
      bits: LEAST_BITS + 5,
    }));
    const fitted = bestFit(alike);
    expect(fitted).toHaveLength(401);
    for (const { recording, others } of fitted) {
      expect(recording).toBeNull();
      expect(others.map(({ loss }) => loss)).toEqual([0, 0, 0]);
    }
  });

  test('prefers the better whole to more pairs', () => {
    const pair = (at: number, recording: number, points: number): Candidate => ({
      take: at,
      recording,
      bits: LEAST_BITS + points,
    });
    const fitted = bestFit([pair(0, 0, 90), pair(0, 1, 5), pair(1, 0, 6)]);
    expect(fitted.map(({ recording }) => recording)).toEqual([0, null]);
    expect(
      assign({
        rows: 2,
        columns: 2,
        costs: [
          [-90, -5],
          [-6, Infinity],
        ],
      }),
    ).toMatchObject({
      value: { matched: 2 },
    });
  });
});
