import { describe, expect, test } from 'vitest';
import { diceOf } from '../../../sample-days/dice.ts';
import { generateDay } from '../../../sample-days/generate.ts';
import { loadSample } from '../../../sample-days/load.ts';
import { markOut, pinVoice } from '../../../src/commands/line/plan-ahead.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { pinsOf } from '../../../src/day/chain/links.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day, VoiceId } from '../../../src/day/model.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { setupFacts } from '../../../src/plan/day/setup-plans.ts';
import { idSource } from '../../../src/shared/ids.ts';
import { planNextSetup } from '../at-once.ts';

let said = 0;

/** The day after these drafts were said on another phone that knows all of it. */
function after(day: Day, drafts: readonly Draft[]): Day {
  said += 1;
  const ids = idSource(`planer0000${said % 10}`, 600_000 + said * 1000);
  const seen = Object.fromEntries(day.highest);
  const facts = stampFacts(drafts, { day: day.id, at: day.lastAt + 1, zone: 0, seen, nextId: ids.next });
  return foldDay(day.id, [...day.facts, ...facts]);
}

const drafts = (result: { ok: boolean; value?: readonly Draft[] }): readonly Draft[] => result.value ?? [];

const planFor = (day: Day, wanted: ReadonlySet<VoiceId>) => {
  const plan = planNextSetup(problemOf(day, wanted));
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};

const performers = (day: Day): VoiceId[] =>
  [...day.voices.values()].filter(({ kind, struck }) => kind === 'performer' && !struck).map(({ id }) => id);

/** Everybody the plan records is recorded in the day, alone or ganged as it said, and nobody wanted clashes. */
function holds(day: Day, wanted: ReadonlySet<VoiceId>): void {
  const plan = planFor(day, wanted);
  const then = after(day, setupFacts(day, { wanted }, [plan]));
  const before = answersNow(day);
  const answers = answersNow(then);
  for (const { voice, track, gangedWith } of plan.recorded) {
    const answer = answers.voices.find((one) => one.voice.id === voice)!;
    expect([voice, answer.state]).toEqual([voice, gangedWith.length > 0 ? 'gang' : 'alone']);
    // Somebody who wears two packs may stay on a second track; nobody comes onto one the plan does not name.
    const packs = day.rig.transmitters.filter(({ id }) => then.tail.get(`worn:${id}`)?.value === voice);
    const were = before.voices.find((one) => one.voice.id === voice)!.tracks;
    const others = packs.length > 1 ? were.filter((one) => one !== track && answer.tracks.includes(one)) : [];
    expect([...answer.tracks].sort()).toEqual([track, ...others].sort());
  }
  for (const { voice } of plan.leftOut) {
    expect(['unrecorded', 'muted']).toContain(answers.voices.find((one) => one.voice.id === voice)!.state);
  }
  expect(planFor(then, wanted).moves).toEqual([]);
}

describe('a plan on a day', () => {
  const SEED = 31;

  test(`records on the day whom it says it records, and asked again moves nothing (seed ${SEED})`, () => {
    const day = loadSample('full');
    const dice = diceOf(SEED);
    for (let round = 0; round < 12; round += 1) {
      const wanted = new Set(performers(day).filter(() => dice.below(10) < 6));
      holds(day, wanted);
    }
  });

  test('holds on generated days of several sizes', () => {
    for (const size of [
      { seed: 1, takes: 12, tracks: 8, performers: 6 },
      { seed: 2, takes: 20, tracks: 16, performers: 12 },
    ]) {
      const { day, facts } = generateDay(size);
      const folded = foldDay(day, facts);
      holds(folded, new Set(performers(folded)));
      holds(folded, new Set(performers(folded).slice(0, 3)));
    }
  });

  test('is one action, with the packs freed before they are given', () => {
    const day = loadSample('full');
    const wanted = new Set(performers(day));
    const kinds = setupFacts(day, { wanted }, [planFor(day, wanted)]).flatMap((draft) =>
      draft.kind === 'transmitter-worn' ? [[draft.transmitter, draft.voice] as const] : [],
    );
    const worn = new Map(
      day.rig.transmitters.map(({ id }) => [id, day.tail.get(`worn:${id}`)?.value ?? null]),
    );
    for (const [transmitter, voice] of kinds) {
      if (voice !== null) expect(worn.get(transmitter)).toBeNull();
      worn.set(transmitter, voice);
    }
  });

  test('leaves a pinned voice as it is and goes round a pack that is out of order', () => {
    const day = loadSample('full');
    const worn = answersNow(day).voices.filter(
      ({ voice, state }) => voice.kind === 'performer' && state === 'alone',
    );
    const [pinned, broken] = worn.map(({ voice, paths }) => ({ id: voice.id, pack: paths[0]!.transmitter! }));
    const told = after(day, [
      ...drafts(pinVoice(day, pinned!.id, { transmitter: pinned!.pack })),
      ...drafts(markOut(broken!.pack, true)),
    ]);
    expect(pinsOf(answersNow(told).links, pinned!.id)?.value).toEqual({ transmitter: pinned!.pack });
    const wanted = new Set(worn.map(({ voice }) => voice.id));
    const plan = planFor(told, wanted);
    const on = new Map(plan.recorded.map(({ voice, transmitter }) => [voice, transmitter]));
    expect(on.get(pinned!.id)).toBe(pinned!.pack);
    expect(on.get(broken!.id)).toBeDefined();
    expect(on.get(broken!.id)).not.toBe(broken!.pack);
    holds(told, wanted);
  });

  test('accepted in part does only that part', () => {
    const day = loadSample('full');
    const wanted = new Set(performers(day));
    const plan = planFor(day, wanted);
    const part = plan.moves.slice(0, 1);
    const facts = setupFacts(day, { wanted }, [plan], [part]);
    expect(facts.filter(({ kind }) => kind !== 'voices-needed')).toHaveLength(1);
  });
});
