import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { tickMove } from '../../../src/commands/line/plan-ahead.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { tickable, ticksOf } from '../../../src/day/phones/ticks.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { MORNING, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';
import { ORDERS_OF_THREE, SetPhone } from '../three-phones.ts';

const MINUTE = 60_000;
const worn = (transmitter: string, voice: string | null): Draft => ({
  kind: 'transmitter-worn',
  transmitter,
  voice,
});
const onInes = worn('A1', 'ines');
const ticked = (move: Draft, is = true): Draft => ({ kind: 'move-ticked', ...tickable(move), ticked: is });

describe('the tick of a move', () => {
  test('is anybody’s, and stands until somebody takes it off', () => {
    const [mixer, utility] = [new SetPhone(0, 0), new SetPhone(1, 3_600_000)];
    mixer.say(take('24', 1, 1), MORNING);
    utility.take(mixer);
    const tick = utility.say(ticked(onInes), MORNING + MINUTE);
    mixer.take(utility);
    expect(ticksOf(mixer.day())(tickable(onInes))).toBe(tick.id);
    expect(ticksOf(mixer.day())(tickable(worn('A1', 'dora')))).toBeUndefined();
    mixer.say(ticked(onInes, false), MORNING + 2 * MINUTE);
    utility.take(mixer);
    expect(ticksOf(utility.day())(tickable(onInes))).toBeUndefined();
  });

  test('is spent once the move is made, or another of that pack; taken back, the move is ticked again', () => {
    for (const made of [onInes, worn('A1', 'dora')]) {
      const phone = speaker();
      phone.say(...SMALL_RIG, ...SMALL_CAST);
      const tick = phone.id(ticked(onInes));
      phone.say(worn('A2', 'dora'));
      expect(ticksOf(phone.day())(tickable(onInes))).toBe(tick);
      phone.say(made);
      expect(ticksOf(phone.day())(tickable(onInes))).toBeUndefined();
      const undone = undo(phone.day(), 'phonea');
      if (!undone.ok) throw new Error(undone.problem.code);
      phone.say(...undone.value);
      expect(ticksOf(phone.day())(tickable(onInes))).toBe(tick);
      // The same move in the afternoon is another one.
      phone.say(onInes);
      phone.say(worn('A1', null));
      expect(ticksOf(phone.day())(tickable(onInes))).toBeUndefined();
    }
  });

  test('is one step of undo, and is set once', () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const said = tickMove(phone.day(), tickable(onInes), true);
    expect(said).toEqual({ ok: true, value: [ticked(onInes)] });
    phone.say(ticked(onInes));
    expect(tickMove(phone.day(), tickable(onInes), true)).toEqual({ ok: true, value: [] });
    const undone = undo(phone.day(), 'phonea');
    expect(undone).toMatchObject({ value: [{ targets: [phone.facts.at(-1)!.id] }] });
  });

  test('changes nothing of the line and the report', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say(onInes);
    phone.say(take('24', 1, 1));
    const before = phone.day();
    const [report, items] = [reportText(reportOf(before)), before.line.length];
    phone.say(ticked(worn('A2', 'dora')));
    expect(reportText(reportOf(phone.day()))).toBe(report);
    expect(phone.day().line.length).toBe(items);
  });

  test('is the same on three phones in every order of exchange', () => {
    const said = fc.array(
      fc.record({
        who: fc.nat({ max: 2 }),
        what: fc.constantFrom(ticked(onInes), ticked(onInes, false), onInes, worn('A1', 'dora'), null),
        from: fc.nat({ max: 2 }),
      }),
      { minLength: 3, maxLength: 14 },
    );
    fc.assert(
      fc.property(said, fc.constantFrom(...ORDERS_OF_THREE), (deeds, [one, two, three]) => {
        const phones = [0, 1, 2].map((which) => new SetPhone(which, which * 90_000));
        for (const [at, { who, what, from }] of deeds.entries()) {
          if (what) phones[who]!.say(what, MORNING + at * MINUTE);
          else phones[who]!.take(phones[from]!);
        }
        for (const [to, from] of [
          [two, one],
          [three, two],
          [one, three],
          [two, one],
        ] as const)
          phones[to]!.take(phones[from]!);
        const ticks = phones.map(({ facts }) => ticksOf(foldDay('day-1', facts))(tickable(onInes)));
        expect(new Set(ticks).size).toBe(1);
      }),
      { numRuns: 150 },
    );
  });
});

test('a move to a long list is named by its beginning', () => {
  const tracks = Array.from({ length: 64 }, (_, at) => `track-${at}`);
  const sent: Draft = { kind: 'inputs-sent', routes: [{ input: 'in1', tracks }] };
  expect(tickable(sent)).toMatchObject({ link: 'sent:in1' });
  expect(tickable(sent).to).toHaveLength(400);
});
