import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../../src/commands/command.ts';
import { describeTake } from '../../../src/commands/line/log-takes.ts';
import {
  decideOrder,
  joinTakes,
  resolveConflict,
  sayFieldAgain,
} from '../../../src/commands/line/resolve-conflict.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day, FactId, TakeId } from '../../../src/day/model.ts';
import { type Conflict, conflictsOf } from '../../../src/day/phones/conflicts.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { MORNING, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { SetPhone } from '../../day/three-phones.ts';

const MINUTE = 60_000;

function twoPhones(): [SetPhone, SetPhone] {
  const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  for (const draft of [...SMALL_RIG, ...SMALL_CAST]) a.say(draft, MORNING);
  b.take(a);
  return [a, b];
}

const worn = (voice: string): Draft => ({ kind: 'transmitter-worn', transmitter: 'A1', voice });
const wearer = (day: Day, id: TakeId) => answersAtTake(day, id).links.get('worn:A1')?.value;

const only = <Kind extends Conflict['kind']>(day: Day, kind: Kind): Extract<Conflict, { kind: Kind }> => {
  const [conflict, ...more] = conflictsOf(day);
  expect(more).toEqual([]);
  if (conflict?.kind !== kind) throw new Error(`${conflict?.kind} is not ${kind}`);
  return conflict as Extract<Conflict, { kind: Kind }>;
};

/** Runs a command on what a phone has, and says what it gives. */
function run(phone: SetPhone, at: number, command: (day: Day) => CommandResult): void {
  const said = command(phone.day());
  if (!said.ok) throw new Error(said.problem.code);
  for (const draft of said.value) phone.say(draft, MORNING + at * MINUTE);
}

/** A pack that two phones put on two people, and six takes after that, with what was said and the merged phone. */
function disputedPack() {
  const [a, b] = twoPhones();
  const ines = a.say(worn('ines'), MORNING + 10 * MINUTE).id;
  const between = a.say(take('24', 1, 9), MORNING + 12 * MINUTE).id;
  const dora = b.say(worn('dora'), MORNING + 15 * MINUTE).id;
  const takes = [1, 2, 3, 4, 5, 6].map(
    (number) => a.say(take('24', 1, number), MORNING + (20 + number) * MINUTE).id,
  );
  a.take(b);
  return { a, ines, dora, between, takes };
}

describe('what two phones said of one link', () => {
  test('is true from where the contradiction began, takes included', () => {
    for (const [chosen, name] of [
      ['ines', 'ines'],
      ['dora', 'dora'],
    ] as const) {
      const { a, between, takes, ...said } = disputedPack();
      const conflict = only(a.day(), 'link-conflict');
      expect(conflict.takes).toEqual([between, ...takes]);
      run(a, 60, (day) => resolveConflict(day, conflict.link, conflict.by, said[chosen]));
      const day = a.day();
      expect([between, ...takes].map((id) => wearer(day, id))).toEqual(Array(7).fill(name));
      expect(answersNow(day).links.get('worn:A1')).toMatchObject({ value: name, by: said[chosen] });
      expect(conflictsOf(day)).toEqual([]);
    }
  });

  test('is in the report under the name that is true, on every take, and the other name nowhere', () => {
    for (const [chosen, name, other] of [
      ['ines', 'Ines', 'Dora'],
      ['dora', 'Dora', 'Ines'],
    ] as const) {
      const { a, ...said } = disputedPack();
      const printed = (): string[] => reportText(reportOf(a.day())).split('\n');
      const conflict = only(a.day(), 'link-conflict');
      expect(printed().join(' ')).toContain(other);
      run(a, 60, (day) => resolveConflict(day, conflict.link, conflict.by, said[chosen]));
      const tracks = reportOf(a.day()).takes.map(
        ({ tracks }) => tracks.find(({ number }) => number === '3')?.name,
      );
      expect(tracks).toEqual(Array(7).fill(name));
      expect(printed().filter((line) => line.includes(other))).toEqual([]);
    }
  });

  test('can both have happened, one after the other', () => {
    const { a, between, takes } = disputedPack();
    const conflict = only(a.day(), 'link-conflict');
    run(a, 60, (day) => resolveConflict(day, conflict.link, conflict.by, null));
    const day = a.day();
    expect(conflictsOf(day)).toEqual([]);
    expect([between, takes[0]!].map((id) => wearer(day, id))).toEqual(['ines', 'dora']);
  });

  test('stays a contradiction of the takes in between when the pack is simply given on', () => {
    const { a, between, takes } = disputedPack();
    a.say(worn('tomas'), MORNING + 50 * MINUTE);
    const later = a.say(take('25', 0, 1), MORNING + 51 * MINUTE).id;
    const conflict = only(a.day(), 'link-conflict');
    expect(conflict.takes).toEqual([between, ...takes]);
    run(a, 60, (day) => resolveConflict(day, conflict.link, conflict.by, conflict.by[1]!));
    const day = a.day();
    expect([takes[0]!, later].map((id) => wearer(day, id))).toEqual(['ines', 'tomas']);
    expect(conflictsOf(day)).toEqual([]);
  });

  test('is none that anybody needs to settle where no take lies between and somebody who knew both spoke', () => {
    const [a, b] = twoPhones();
    a.say(worn('ines'), MORNING + 10 * MINUTE);
    b.say(worn('dora'), MORNING + 11 * MINUTE);
    a.take(b);
    a.say(worn('tomas'), MORNING + 12 * MINUTE);
    expect(conflictsOf(a.day())).toEqual([]);
  });

  test('is back when the resolving is taken back, and when the true word is', () => {
    const { a, ines, between } = disputedPack();
    const conflict = only(a.day(), 'link-conflict');
    run(a, 60, (day) => resolveConflict(day, conflict.link, conflict.by, ines));
    const resolving = a.facts.at(-1)!.id;
    a.say({ kind: 'fact-retracted', targets: [ines], by: 'hand' }, MORNING + 61 * MINUTE);
    expect(wearer(a.day(), between)).toBe(undefined);
    a.say({ kind: 'fact-retracted', targets: [a.facts.at(-1)!.id], by: 'hand' }, MORNING + 62 * MINUTE);
    expect(wearer(a.day(), between)).toBe('ines');
    a.say({ kind: 'fact-retracted', targets: [resolving], by: 'hand' }, MORNING + 63 * MINUTE);
    expect(only(a.day(), 'link-conflict').by).toHaveLength(2);
  });

  test('speaks only of that link, of all that a fact had said', () => {
    const [a, b] = twoPhones();
    const both = a.say(
      {
        kind: 'channels-tuned',
        tunings: [
          { channel: 'near1', transmitter: 'A2' },
          { channel: 'near2', transmitter: 'A1' },
        ],
      },
      MORNING + MINUTE,
    );
    const one = b.say(
      { kind: 'channels-tuned', tunings: [{ channel: 'near1', transmitter: 'A3' }] },
      MORNING + 2 * MINUTE,
    );
    a.take(b);
    run(a, 3, (day) => resolveConflict(day, 'tuned:near1', [both.id, one.id], one.id));
    const { links } = answersNow(a.day());
    expect([links.get('tuned:near1')?.value, links.get('tuned:near2')?.value]).toEqual(['A3', 'A1']);
  });

  test('leaves nothing of the word that is not true: who had the pack, what was in the socket', () => {
    const [a, b] = twoPhones();
    const ines = a.say(worn('ines'), MORNING + 10 * MINUTE).id;
    const dora = b.say(worn('dora'), MORNING + 15 * MINUTE).id;
    const boom = (to: string): Draft => ({
      kind: 'leads-plugged',
      leads: [{ lead: 'boom', from: 'boom', to }],
    });
    const right = a.say(boom('aes2'), MORNING + 16 * MINUTE).id;
    const wrong = b.say(boom('aes1'), MORNING + 17 * MINUTE).id;
    const logged = a.say(take('24', 1, 1), MORNING + 30 * MINUTE).id;
    a.take(b);
    run(a, 60, (day) => resolveConflict(day, 'worn:A1', [dora, ines], ines));
    run(a, 61, (day) => resolveConflict(day, 'lead:boom', [wrong, right], right));
    const { voices, inputs } = answersAtTake(a.day(), logged);
    // Dora never had a pack, so nobody waits for her; what was in AES 1 before is there still.
    expect(voices.find(({ voice }) => voice.id === 'dora')?.state).toBe('off');
    expect(inputs.find(({ input }) => input.id === 'aes1')?.reach.arrival?.lead).toBe('l1');
    expect(inputs.find(({ input }) => input.id === 'aes2')?.reach.arrival?.lead).toBe('boom');
    expect(conflictsOf(a.day())).toEqual([]);
  });

  test('speaks for a socket with the lead that goes into it', () => {
    const [a, b] = twoPhones();
    const into = (lead: string, from: string): Draft => ({
      kind: 'leads-plugged',
      leads: [{ lead, from, to: 'in1' }],
    });
    const theirs = b.say(into('l1', 'near1out'), MORNING + 10 * MINUTE).id;
    const between = a.say(take('24', 1, 9), MORNING + 12 * MINUTE).id;
    const ours = a.say(into('l2', 'near2out'), MORNING + 15 * MINUTE).id;
    const logged = a.say(take('24', 1, 1), MORNING + 30 * MINUTE).id;
    a.take(b);
    run(a, 60, (day) => resolveConflict(day, 'socket:in1', [ours, theirs], ours));
    const inSocket = (id: TakeId) =>
      answersAtTake(a.day(), id).inputs.find(({ input }) => input.id === 'in1')?.reach.arrival?.lead;
    expect([between, logged].map(inSocket)).toEqual(['l2', 'l2']);
  });

  test('must be among what was said', () => {
    const { a, ines, dora } = disputedPack();
    const day = a.day();
    expect(resolveConflict(day, 'worn:A1', [ines, dora], a.facts[0]!.id).ok).toBe(false);
    expect(resolveConflict(day, 'worn:A1', [ines, '0000zz-nobody00000' as FactId], ines).ok).toBe(false);
  });
});

describe('what holds for the whole day, described by two phones', () => {
  test('the later in time stands, whoever said more, and the other is told', () => {
    const [a, b] = twoPhones();
    for (let at = 0; at < 6; at += 1) a.say({ kind: 'roll-changed', roll: `${at}` }, MORNING + MINUTE);
    a.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'INES' } }, MORNING + 2 * MINUTE);
    const renamed = b.say(
      { kind: 'voice-described', voice: 'ines', fields: { part: 'Mrs Halm' } },
      MORNING + 180 * MINUTE,
    );
    a.take(b);
    expect(a.day().voices.get('ines')?.part).toBe('Mrs Halm');
    const conflict = only(a.day(), 'field-conflict');
    expect(conflict).toMatchObject({ of: 'voice', id: 'ines', field: 'part' });
    expect(conflict.by[0]).toBe(renamed.id);
    run(a, 200, (day) => sayFieldAgain(day, conflict.by[1]!, conflict));
    expect(a.day().voices.get('ines')?.part).toBe('INES');
    expect(conflictsOf(a.day())).toEqual([]);
  });

  test('circle against no good is one mark', () => {
    const [a, b] = twoPhones();
    const { id } = a.say(take('24', 1, 1), MORNING + MINUTE);
    b.take(a);
    a.say(
      { kind: 'take-described', take: id, fields: { circled: true, noGood: false } },
      MORNING + 2 * MINUTE,
    );
    b.say(
      { kind: 'take-described', take: id, fields: { noGood: true, circled: false } },
      MORNING + 3 * MINUTE,
    );
    a.take(b);
    expect(a.day().takes.get(id)).toMatchObject({ circled: false, noGood: true });
    const conflict = only(a.day(), 'field-conflict');
    expect(conflict).toMatchObject({ of: 'take', id, field: 'mark' });
    run(a, 10, (day) => sayFieldAgain(day, conflict.by[1]!, conflict));
    expect(a.day().takes.get(id)).toMatchObject({ circled: true, noGood: false });
    expect(conflictsOf(a.day())).toEqual([]);
  });

  test('two thumbs that cut one take a second apart do not contradict each other; half a minute does', () => {
    for (const [frames, found] of [
      [25, 0],
      [750, 1],
    ] as const) {
      const [a, b] = twoPhones();
      const { id } = a.say(take('24', 1, 1, { length: null }), MORNING + MINUTE);
      b.take(a);
      const length = { frames: 1000, rate: '25' as const };
      a.say({ kind: 'take-described', take: id, fields: { length } }, MORNING + 2 * MINUTE);
      const other = { ...length, frames: 1000 + frames };
      b.say({ kind: 'take-described', take: id, fields: { length: other } }, MORNING + 3 * MINUTE);
      a.take(b);
      expect(conflictsOf(a.day())).toHaveLength(found);
    }
  });
});

describe('one take logged by two phones', () => {
  test('becomes one, with the notes and marks of both, also those said later of the other', () => {
    const [a, b] = twoPhones();
    const own = a.say(take('24', 1, 1, { length: null }), MORNING + 10 * MINUTE).id;
    const theirs = b.say(take('24', 1, 1), MORNING + 20 * MINUTE).id;
    a.say({ kind: 'note-added', take: own, text: 'plane' }, MORNING + 21 * MINUTE);
    b.say({ kind: 'note-added', take: theirs, text: 'rustle' }, MORNING + 22 * MINUTE);
    b.say({ kind: 'take-described', take: theirs, fields: { circled: true } }, MORNING + 23 * MINUTE);
    a.take(b);
    expect(only(a.day(), 'take-twice').takes).toHaveLength(2);
    run(a, 30, (day) => joinTakes(day, theirs, own));
    b.say({ kind: 'note-added', take: theirs, text: 'said late' }, MORNING + 40 * MINUTE);
    a.take(b);
    const day = a.day();
    const [one, ...more] = takesInOrder(day);
    expect(more).toEqual([]);
    expect(one).toMatchObject({ id: own, circled: true });
    expect(one?.notes.map(({ text }) => text)).toEqual(['plane', 'rustle', 'said late']);
    expect(conflictsOf(day)).toEqual([]);
    a.say(
      {
        kind: 'fact-retracted',
        targets: [a.facts.find(({ kind }) => kind === 'takes-joined')!.id],
        by: 'hand',
      },
      MORNING + 41 * MINUTE,
    );
    expect(takesInOrder(a.day())).toHaveLength(2);
  });

  test('has what only the other phone logged when it rolled, until somebody says otherwise', () => {
    const start = { frames: 900_000, rate: '25' as const };
    for (const isFirst of [true, false]) {
      const [a, b] = twoPhones();
      const own = a.say(take('24', 1, 1, { start: null, length: null }), MORNING + 10 * MINUTE).id;
      const at = MORNING + (isFirst ? 9 : 11) * MINUTE;
      const theirs = b.say(take('24', 1, 1, { start, circled: true, file: 'T1.wav' }), at).id;
      a.take(b);
      run(a, 30, (day) => joinTakes(day, theirs, own));
      expect(takesInOrder(a.day())).toMatchObject([{ id: own, start, circled: true, file: 'T1.wav' }]);
      expect(reportText(reportOf(a.day()))).toMatch(/\(24A\/1\) +T1\.wav +10:00:00:00/);
      a.say({ kind: 'take-described', take: own, fields: { circled: false } }, MORNING + 31 * MINUTE);
      expect(takesInOrder(a.day())).toMatchObject([{ id: own, start, circled: false }]);
    }
  });

  test('a number made another one leaves both', () => {
    const [a, b] = twoPhones();
    a.say(take('24', 1, 1), MORNING + 10 * MINUTE);
    const theirs = b.say(take('24', 1, 1), MORNING + 20 * MINUTE).id;
    a.take(b);
    run(a, 30, (day) => describeTake(day, theirs, { number: 2 }));
    expect(conflictsOf(a.day())).toEqual([]);
  });

  test('two phones that join each other’s the other way round leave one', () => {
    const [a, b] = twoPhones();
    const own = a.say(take('24', 1, 1), MORNING + 10 * MINUTE).id;
    const theirs = b.say(take('24', 1, 1), MORNING + 20 * MINUTE).id;
    a.take(b);
    b.take(a);
    run(a, 30, (day) => joinTakes(day, theirs, own));
    run(b, 31, (day) => joinTakes(day, own, theirs));
    a.take(b);
    b.take(a);
    expect(takesInOrder(a.day()).map(({ id }) => id)).toEqual([own]);
    expect(takesInOrder(b.day()).map(({ id }) => id)).toEqual([own]);
  });
});

describe('a change and a take of two phones within what their clocks can tell', () => {
  function closeCall(more = false) {
    const [a, b] = twoPhones();
    a.say(worn('ines'), MORNING + MINUTE);
    b.take(a);
    const change = b.say(worn('dora'), MORNING + 10 * MINUTE).id;
    const logged = a.say(take('24', 1, 1), MORNING + 10 * MINUTE + 2000).id;
    if (more) a.say(take('24', 1, 2), MORNING + 15 * MINUTE);
    a.take(b);
    return { a, change, logged };
  }

  test('is a question', () => {
    const { a, change, logged } = closeCall();
    expect(only(a.day(), 'order-unsure')).toEqual({
      kind: 'order-unsure',
      change,
      take: logged,
      isBefore: true,
    });
  });

  test.each([false, true])('is answered either way, with another take after it: %s', (more) => {
    for (const isBefore of [true, false]) {
      const { a, change, logged } = closeCall(more);
      run(a, 20, (day) => decideOrder(day, change, logged, isBefore));
      expect(wearer(a.day(), logged)).toBe(isBefore ? 'dora' : 'ines');
      expect(answersNow(a.day()).links.get('worn:A1')?.value).toBe('dora');
      expect(conflictsOf(a.day())).toEqual([]);
    }
  });

  test('is said anew without its remark on the clock: that was set ahead once', () => {
    const { a, change, logged } = closeCall();
    const day = foldDay(
      'day-1',
      a.facts.map((fact) => (fact.id === change ? { ...fact, ahead: 3_600_000 } : fact)),
    );
    const said = decideOrder(day, change, logged, false);
    expect(said.ok && said.value[1]).toEqual(worn('dora'));
  });

  test('is none where it changes nothing, or where they are further apart than that', () => {
    const [a, b] = twoPhones();
    a.say(worn('ines'), MORNING + MINUTE);
    b.take(a);
    b.say(worn('ines'), MORNING + 10 * MINUTE);
    a.say(take('24', 1, 1), MORNING + 10 * MINUTE + 2000);
    b.say(worn('dora'), MORNING + 20 * MINUTE);
    a.say(take('24', 1, 2), MORNING + 21 * MINUTE);
    a.take(b);
    expect(conflictsOf(a.day())).toEqual([]);
  });
});
