import { describe, expect, test } from 'vitest';
import { diceOf } from '../../sample-days/dice.ts';
import type { CommandResult, Moment } from '../../src/commands/command.ts';
import { callSlate, cutTake, logTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { answersAtTake } from '../../src/day/answers/answers.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { sameSlate } from '../../src/day/slate.ts';
import { currentSlate, ownOpenTake, takesInOrder } from '../../src/day/takes.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { framesToMs } from '../../src/time/timecode.ts';
import { LONG, noteFault } from '../browser/faults-table.ts';
import { MORNING, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';
import { ORDERS_OF_THREE, SetPhone } from './three-phones.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;

const worn = (voice: string, transmitter = 'A1'): Draft => ({ kind: 'transmitter-worn', transmitter, voice });

/** Phones that know the small rig, said by the first; their clocks are ahead of the truth by so many ms. */
function phonesOnSet(...ahead: number[]): SetPhone[] {
  const phones = ahead.map((ms, at) => new SetPhone(at, ms));
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) phones[0]!.say(draft, MORNING);
  for (const phone of phones.slice(1)) phone.take(phones[0]!);
  return phones;
}

const onFirstPack = (day: Day, id: string): string =>
  answersAtTake(day, id).tracks.find(({ track }) => track.id === 'tr3')!.name;

describe('the line of a merged day is what happened', () => {
  test('a phone that says more does not come later than what another said after it', () => {
    const [a, b] = phonesOnSet(0, 0) as [SetPhone, SetPhone];
    a.say(worn('ines'), MORNING + MINUTE);
    const first = a.say(take('24', 1, 1), MORNING + 2 * MINUTE);
    for (let at = 0; at < 6; at += 1)
      a.say(
        { kind: 'take-described', take: first.id, fields: { circled: at % 2 === 0 } },
        MORNING + 3 * MINUTE,
      );
    a.say(worn('dora'), MORNING + 60 * MINUTE);
    const later = b.say(take('25', 1, 1), MORNING + 90 * MINUTE);
    a.take(b);
    expect(onFirstPack(a.day(), later.id)).toBe('Dora');
    b.take(a);
    expect(onFirstPack(b.day(), later.id)).toBe('Dora');
  });

  test('a phone whose clock is behind is put by the timecode that both follow', () => {
    const [a, b] = phonesOnSet(0, -10 * MINUTE) as [SetPhone, SetPhone];
    a.tie(MORNING + MINUTE);
    b.tie(MORNING + 2 * MINUTE);
    a.say(worn('ines'), MORNING + 3 * MINUTE);
    const early = b.say(take('24', 1, 1), MORNING + 5 * MINUTE);
    a.say(worn('dora'), MORNING + 8 * MINUTE);
    const late = b.say(take('24', 1, 2), MORNING + 12 * MINUTE);
    a.take(b);
    const day = a.day();
    expect([early, late].map(({ id }) => onFirstPack(day, id))).toEqual(['Ines', 'Dora']);
    expect(day.order?.clocks.get('phoneb')).toMatchObject({ offset: 10 * MINUTE, how: 'timecode' });
  });

  test('without a timecode it is put by the take that both logged', () => {
    const [a, b] = phonesOnSet(0, 7 * MINUTE) as [SetPhone, SetPhone];
    const start = { frames: 3_000_000, rate: '25' };
    a.say(take('24', 1, 1, { start, rolledAt: MORNING + 10 * MINUTE }), MORNING + 10 * MINUTE);
    const more = { start: { ...start, frames: 3_000_020 }, rolledAt: MORNING + 17 * MINUTE + 800 };
    b.say(take('24', 1, 1, more), MORNING + 10 * MINUTE + 800);
    a.take(b);
    expect(a.day().order?.clocks.get('phoneb')).toMatchObject({ offset: -7 * MINUTE - 800, how: 'take' });
  });

  test('without either it is put so that nobody says a thing before what was known then', () => {
    const [a, b] = phonesOnSet(0, -HOUR) as [SetPhone, SetPhone];
    a.say(worn('ines'), MORNING + 2 * MINUTE);
    b.take(a);
    b.say({ kind: 'roll-changed', roll: '1' }, MORNING + 3 * MINUTE);
    const early = b.say(take('24', 1, 1), MORNING + 5 * MINUTE);
    a.say(worn('dora'), MORNING + 20 * MINUTE);
    a.take(b);
    const day = a.day();
    expect(onFirstPack(day, early.id)).toBe('Ines');
    const clock = day.order!.clocks.get('phoneb')!;
    expect(clock.how).toBe('exchange');
    // Said three minutes after the morning, known from two minutes after it: a minute of the hour stays unknown.
    expect(clock.offset).toBe(59 * MINUTE);
  });

  test('clocks of two days say nothing of each other', () => {
    const [a, b] = phonesOnSet(0, -40 * 24 * HOUR) as [SetPhone, SetPhone];
    b.say({ kind: 'roll-changed', roll: '1' }, MORNING + 3 * MINUTE);
    a.take(b);
    expect(a.day().order?.clocks.get('phoneb')).toMatchObject({ offset: 0, how: 'none' });
  });

  test('a day of one phone needs no order but that of its ids', () => {
    const [a] = phonesOnSet(0) as [SetPhone];
    expect(a.day().order).toBe(null);
  });

  test('a file of several phones taken into an empty day, or into that of one of them, is folded as a whole', () => {
    const [a, b] = phonesOnSet(0, -10 * MINUTE) as [SetPhone, SetPhone];
    a.tie(MORNING + MINUTE);
    b.tie(MORNING + 2 * MINUTE);
    a.say(worn('ines'), MORNING + 3 * MINUTE);
    b.say(worn('dora'), MORNING + 5 * MINUTE);
    for (const number of [1, 2, 3]) a.say(take('24', 0, number), MORNING + (6 + number) * MINUTE);
    b.say(take('24', 1, 1), MORNING + 21 * MINUTE);
    const own = a.facts.length;
    a.take(b);
    const facts = a.facts.toSorted((one, other) => (one.id < other.id ? -1 : 1));
    const whole = foldDay('day-1', facts);
    expect(conflictsOf(whole).map(({ kind }) => kind)).toEqual(['link-conflict']);
    for (const known of [[], a.facts.slice(0, own)]) {
      const rest = facts.filter((fact) => !known.includes(fact));
      const day = appendFacts(foldDay('day-1', known), rest);
      expect(day.line.map(({ fact }) => fact.id)).toEqual(whole.line.map(({ fact }) => fact.id));
      expect(conflictsOf(day)).toEqual(conflictsOf(whole));
    }
  });

  test('what a phone says of a merged day is added as it would be folded, whatever its clock says', () => {
    const [a, b] = phonesOnSet(0, 3 * MINUTE) as [SetPhone, SetPhone];
    b.say(worn('ines'), MORNING + 4 * MINUTE);
    a.say(worn('dora'), MORNING + 5 * MINUTE);
    a.take(b);
    let day = a.day();
    for (const [draft, at] of [
      [take('24', 1, 1), 6],
      [worn('tomas'), 20],
      [take('24', 1, 2), 21],
      [{ kind: 'roll-changed', roll: '3' }, 2],
      [take('24', 1, 3), 22],
    ] as const) {
      day = appendFacts(day, [a.say(draft as Draft, MORNING + at * MINUTE)]);
      const anew = foldDay(day.id, a.facts);
      expect(takesInOrder(day)).toEqual(takesInOrder(anew));
      expect(day.line.map(({ fact }) => fact.id)).toEqual(anew.line.map(({ fact }) => fact.id));
      expect([...day.tail]).toEqual([...anew.tail]);
    }
  });
});

const RUNS = LONG ? 600 : 60;

/** A morning on a set where the true order is known: who wears which pack at each take, by the truth. */
function morning(seed: number, phones: readonly SetPhone[], tied: boolean): Map<string, string[]> {
  const dice = diceOf(seed);
  const packs = new Map<string, string>();
  const truth = new Map<string, string[]>();
  let now = MORNING + MINUTE;
  for (const phone of tied ? phones : []) {
    now += 10_000;
    phone.tie(now);
  }
  for (let at = 0; at < 40; at += 1) {
    // Never closer than clocks tied by hand can tell apart.
    now += 4000 + dice.below(5 * MINUTE);
    const phone = dice.pick(phones);
    const chance = dice.next();
    if (chance < 0.15) {
      const other = dice.pick(phones);
      if (other !== phone) phone.take(other);
    } else if (chance < 0.6) {
      const [voice, pack] = [dice.pick(['ines', 'dora', 'tomas']), dice.pick(['A1', 'A2', 'A3'])];
      phone.say(worn(voice, pack), now);
      packs.set(pack, voice);
    } else {
      const logged = phone.say(take('24', at, 1), now);
      truth.set(
        logged.id,
        ['A1', 'A2', 'A3'].map((pack) => packs.get(pack) ?? ''),
      );
    }
  }
  return truth;
}

describe('three phones on a set, exchanging now and then, against what really happened', () => {
  test.each([
    ['clocks that agree, no timecode', false],
    ['clocks minutes apart, tied to the timecode of the set', true],
  ] as const)('%s: every take has the right people, whatever the order of the last exchange', (_, tied) => {
    let [takes, wrong] = [0, 0];
    for (let seed = 1; seed <= RUNS; seed += 1) {
      const dice = diceOf(seed * 7919);
      const ahead = [0, 0, 0].map(() => (tied ? dice.below(20 * MINUTE) - 10 * MINUTE : 0));
      const phones = phonesOnSet(...ahead);
      const truth = morning(seed, phones, tied);
      const merged = ORDERS_OF_THREE.map((order) => {
        const end = new SetPhone(3, 0);
        for (const at of order) end.take(phones[at]!);
        return end.day();
      });
      for (const day of merged) {
        expect(day.line.map(({ fact }) => fact.id)).toEqual(merged[0]!.line.map(({ fact }) => fact.id));
        expect(conflictsOf(day)).toEqual(conflictsOf(merged[0]!));
        for (const [id, wearers] of truth) {
          takes += 1;
          const links = answersAtTake(day, id).links;
          const read = ['A1', 'A2', 'A3'].map((pack) => links.get(`worn:${pack}`)?.value ?? '');
          if (JSON.stringify(read) !== JSON.stringify(wearers)) wrong += 1;
        }
      }
    }
    noteFault(`three phones, ${_}`, `${RUNS} mornings in 6 orders, ${takes} takes`, wrong);
    expect(wrong).toBe(0);
    expect(takes).toBeGreaterThan(RUNS * 50);
  });
});

describe('a colleague’s file that comes in while a take rolls', () => {
  test('leaves Cut, the length and the slate of one’s own as they were, whatever it has', () => {
    let wrong = 0;
    for (let seed = 1; seed <= RUNS * 5; seed += 1) {
      const dice = diceOf(seed);
      const [mine, theirs] = phonesOnSet(0, dice.below(8 * MINUTE) - 4 * MINUTE) as [SetPhone, SetPhone];
      let now = MORNING + MINUTE;
      const does = (phone: SetPhone, command: (day: Day, moment: Moment) => CommandResult): Fact => {
        const moment = { atMs: now, zone: 0, database: phone.database };
        const said = command(phone.day(), moment);
        if (!said.ok) throw new Error(said.problem.code);
        return said.value.map((draft) => phone.say(draft, now)).at(-1)!;
      };
      const slate = { style: 'lettered', scene: '24', setup: dice.below(4) } as const;
      does(mine, (day) => callSlate(day, slate));
      const { id } = does(mine, rollTake);
      const rolledAt = now;
      for (let at = 0; at < 1 + dice.below(4); at += 1) {
        now += 1000 + dice.below(MINUTE);
        does(theirs, (day) => callSlate(day, { style: 'lettered', scene: `${30 + at}`, setup: 0 }));
        does(theirs, dice.next() < 0.5 ? rollTake : (day) => logTake(day, { length: null }));
        if (dice.next() < 0.7) mine.take(theirs);
        const open = ownOpenTake(theirs.day(), theirs.database);
        if (open) does(theirs, cutTake);
      }
      now += 1000 + dice.below(MINUTE);
      mine.take(theirs);
      const rolling = ownOpenTake(mine.day(), mine.database);
      does(mine, cutTake);
      const day = mine.day();
      const length = day.takes.get(id)!.length!;
      const isRight =
        rolling?.id === id &&
        framesToMs(length.frames, length.rate) === Math.floor((now - rolledAt) / 40) * 40 &&
        sameSlate(currentSlate(day, mine.database), slate);
      if (!isRight) wrong += 1;
    }
    noteFault('a file comes in while a take rolls', `${RUNS * 5} takes`, wrong);
    expect(wrong).toBe(0);
  });
});
