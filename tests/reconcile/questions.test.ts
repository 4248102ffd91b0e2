import { describe, expect, test } from 'vitest';
import { assign } from '../../src/matching/assignment.ts';
import { dayAxis, labelDayMs } from '../../src/reconcile/log-and-card/label-time.ts';
import { loggedTakes } from '../../src/reconcile/log-and-card/logged.ts';
import { recordedOf } from '../../src/reconcile/log-and-card/recorded.ts';
import { bestFit } from '../../src/reconcile/pairing/best-fit.ts';
import { type Candidate, candidatePairs } from '../../src/reconcile/pairing/candidates.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import { LEAST_POINTS, scorePair } from '../../src/reconcile/pairing/score-pair.ts';
import type { Recording } from '../../src/wave/recording/recordings.ts';
import { speaker, take } from '../day/say.ts';
import { type CardFile, cardOf, recordCard } from './build-card.ts';
import { byFile, checkFiles, openOn, settle, told } from './check-card.ts';
import { filmDay, seeded } from './film-day.ts';

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
  test('are asked about where nothing tells the two files apart', async () => {
    const { phone, first, second, files } = falseStart();
    const match = matchRecordings(phone.day(), await recordCard(files));
    expect(match.pairs).toEqual([]);
    expect(match.recordingsWithout).toEqual([]);
    expect(match.questions.map((one) => one.take)).toEqual([first, second]);
    for (const { choices } of match.questions)
      expect(choices.map(({ recording }) => fileOf(recording)).sort()).toEqual(['A001.wav', 'A002.wav']);
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

  test('are settled by naming the file of one of them', async () => {
    const { phone, files } = falseStart();
    const [question] = await checkFiles(phone.day(), files);
    expect(question).toMatchObject({ code: 'match-unsure', is: ['A001.wav', 'A002.wav'] });
    settle(phone, byFile(question!));
    const recordings = await recordCard(files);
    expect(openOn(phone.day(), recordings).map(({ code }) => code)).not.toContain('match-unsure');
    expect(matchRecordings(phone.day(), recordings).pairs).toHaveLength(2);
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
  test.each([1, 2, 3, 4, 5])(
    'never misses a pair that scoring them all would find (seed %i)',
    async (seed) => {
      const random = seeded(seed);
      const day = filmDay({ takes: 30, seed, fromHour: 23 }).day();
      const files = cardOf(day).flatMap((file): CardFile[] => {
        const start = file.start! + Math.floor((random() - 0.5) * 60 * SECOND);
        const scene = random() < 0.3 ? '24' : file.scene!;
        const name = random() < 0.5 ? `F${Math.floor(random() * 1e6)}.wav` : file.name;
        return random() < 0.1 ? [] : [{ ...file, start: Math.max(0, start), scene, name }];
      });
      const recorded = (await recordCard(files)).map(recordedOf);
      const takes = loggedTakes(day);
      const dayMs = labelDayMs('25');
      const axis = dayAxis(
        recorded.flatMap(({ startMs }) => startMs ?? []),
        dayMs,
      );
      const all = takes.flatMap((logged, at) =>
        recorded.flatMap((one, other) => {
          const { points } = scorePair(logged, one, (ms) => ms, dayMs);
          return points >= LEAST_POINTS ? [`${at}/${other}`] : [];
        }),
      );
      const looked = candidatePairs(takes, recorded, (ms) => ms, axis);
      expect(looked.map((one) => `${one.take}/${one.recording}`)).toEqual(all);
      expect(all.length).toBeGreaterThan(10);
    },
  );

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
              score: { points: LEAST_POINTS + Math.floor(random() * 40), reasons: [] },
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
        const gained = choice ? choice.score.points - LEAST_POINTS : 0;
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
        return pair ? pair.score.points - LEAST_POINTS : 0;
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
      score: { points: LEAST_POINTS + 5, reasons: [] },
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
      score: { points: LEAST_POINTS + points, reasons: [] },
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
