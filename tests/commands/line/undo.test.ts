import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../../src/commands/command.ts';
import { bringBack, moveBefore, takeBack } from '../../../src/commands/line/correct.ts';
import { actionsOf, redo, undo } from '../../../src/commands/line/undo.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { takesInOrder } from '../../../src/day/takes.ts';
import { MORNING, type Speaker, speaker, take } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { SetPhone } from '../../day/three-phones.ts';

const OURS = 'phonea';

const does = (phone: Speaker, said: CommandResult): void => {
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
};

const on = (phone: Speaker): string => answersNow(phone.day()).tracks[2]!.name;

const wired = (): Speaker => {
  const phone = speaker(OURS);
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  for (const voice of ['ines', 'dora', 'tomas'])
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice });
  return phone;
};

describe('undo', () => {
  test('walks back action by action, and redo forward again', () => {
    const phone = wired();
    const seen = [on(phone)];
    for (const step of [undo, undo, redo, redo]) {
      does(phone, step(phone.day(), OURS));
      seen.push(on(phone));
    }
    expect(seen).toEqual(['Tomas', 'Dora', 'Ines', 'Dora', 'Tomas']);
  });

  test('takes back a whole action of many facts at once', () => {
    const phone = wired();
    for (let step = 0; step < 4; step += 1) does(phone, undo(phone.day(), OURS));
    expect(phone.day().rig.tracks).toEqual([]);
    expect(undo(phone.day(), OURS)).toMatchObject({ problem: { code: 'nothing-to-undo' } });
  });

  test('forgets what was undone once something new is said', () => {
    const phone = wired();
    does(phone, undo(phone.day(), OURS));
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: null });
    expect(redo(phone.day(), OURS)).toMatchObject({ problem: { code: 'nothing-to-redo' } });
  });

  test('leaves alone what another phone said', () => {
    const phone = wired();
    const other = speaker('phoneb');
    other.say(take('24', 1, 1));
    const day = foldDay('day-1', [...phone.facts, ...other.facts]);
    expect(actionsOf(day, OURS).done).toHaveLength(4);
    expect(actionsOf(day, 'phoneb').done).toHaveLength(1);
  });

  test('undoes taking back and moving like any other action', () => {
    const phone = wired();
    const [first, second] = [1, 2].map((number) => phone.id(take('24', 1, number)));
    does(phone, moveBefore(phone.day(), second!, first!));
    does(phone, takeBack(phone.day(), [first!]));
    does(phone, undo(phone.day(), OURS));
    does(phone, undo(phone.day(), OURS));
    expect(takesInOrder(phone.day()).map(({ number }) => number)).toEqual([1, 2]);
  });
});

describe('undo at the beginning of a day', () => {
  const begun = (): Speaker => {
    const phone = speaker(OURS);
    phone.say({ kind: 'day-described', fields: { label: 'Day 4' } }, ...SMALL_RIG, ...SMALL_CAST);
    return phone;
  };

  test('stops at what the day was started with', () => {
    const phone = begun();
    expect(actionsOf(phone.day(), OURS)).toEqual({ done: [], undone: [] });
    expect(undo(phone.day(), OURS)).toMatchObject({ problem: { code: 'nothing-to-undo' } });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    does(phone, undo(phone.day(), OURS));
    expect(undo(phone.day(), OURS)).toMatchObject({ problem: { code: 'nothing-to-undo' } });
    expect(phone.day().header.label).toBe('Day 4');
    does(phone, redo(phone.day(), OURS));
    expect(on(phone)).toBe('Ines');
  });

  test('still takes back what is said of the head later, and a log that begins a day', () => {
    const phone = begun();
    phone.say({ kind: 'day-described', fields: { label: 'Day 5' } });
    does(phone, undo(phone.day(), OURS));
    expect(phone.day().header.label).toBe('Day 4');
    const log = speaker(OURS);
    log.say({ kind: 'day-described', fields: { label: 'Card' } }, take('24', 1, 1));
    does(log, undo(log.day(), OURS));
    expect(takesInOrder(log.day())).toEqual([]);
  });

  test('brings back a day that an earlier version emptied', () => {
    const phone = begun();
    phone.say({
      kind: 'fact-retracted',
      targets: phone.facts.map(({ id }) => id),
      by: 'undo',
    });
    expect(phone.day().header.label).toBe('');
    does(phone, redo(phone.day(), OURS));
    expect(phone.day().header.label).toBe('Day 4');
  });
});

describe('taking back by hand', () => {
  test('is refused twice, and bringing back undoes it', () => {
    const phone = wired();
    const id = phone.id(take('24', 1, 1));
    does(phone, takeBack(phone.day(), [id]));
    expect(takeBack(phone.day(), [id])).toMatchObject({ problem: { code: 'already-taken-back' } });
    does(phone, bringBack(phone.day(), [id]));
    expect(takesInOrder(phone.day())).toHaveLength(1);
    expect(bringBack(phone.day(), [id])).toMatchObject({ problem: { code: 'not-taken-back' } });
  });

  test('refuses to move what is not on the line, or a take before itself', () => {
    const phone = wired();
    const id = phone.id(take('24', 1, 1));
    const head = phone.id({ kind: 'day-described', fields: { label: 'Day 2' } });
    expect(moveBefore(phone.day(), id, id)).toMatchObject({ problem: { code: 'before-itself' } });
    expect(moveBefore(phone.day(), head, id)).toMatchObject({ problem: { code: 'not-on-this-day' } });
  });
});

describe('undo of a take on which another phone has built', () => {
  test('asks first, says how much there is, and does it when it is wanted even so', () => {
    const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
    const { id } = a.say(take('24', 1, 1), MORNING);
    b.take(a);
    b.say({ kind: 'take-described', take: id, fields: { circled: true } }, MORNING + 60_000);
    b.say({ kind: 'note-added', take: id, text: 'plane' }, MORNING + 120_000);
    expect(undo(a.day(), 'phonea')).toMatchObject({ ok: true });
    a.take(b);
    const day = a.day();
    expect(undo(day, 'phonea')).toEqual({
      ok: false,
      problem: { code: 'undo-built-on', take: '24A/1', count: 2 },
    });
    expect(undo(day, 'phonea', { evenIfBuiltOn: true })).toMatchObject({ value: [{ targets: [id] }] });
  });

  test('does not ask about what was taken back, or about this phone’s own words', () => {
    const [a, b] = [new SetPhone(0, 0), new SetPhone(1, 0)];
    const { id } = a.say(take('24', 1, 1), MORNING);
    b.take(a);
    const note = b.say({ kind: 'note-added', take: id, text: 'plane' }, MORNING + 120_000);
    b.say({ kind: 'fact-retracted', targets: [note.id], by: 'undo' }, MORNING + 130_000);
    a.take(b);
    expect(undo(a.day(), 'phonea')).toMatchObject({ ok: true });
  });
});
