import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../../src/commands/command.ts';
import { carryOver } from '../../../src/commands/day/start-day.ts';
import {
  addRecorder,
  correctRolling,
  loadRoll,
  rollRecorders,
} from '../../../src/commands/line/roll-recorders.ts';
import { changeHead } from '../../../src/commands/line/set-recorder.ts';
import { bringBackPart, strikePart } from '../../../src/commands/rig/strike-part.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Day } from '../../../src/day/model.ts';
import {
  recordersOf,
  rollingAtTake,
  rollingNow,
  rollOfTake,
  rollOn,
} from '../../../src/day/recorders/rolling.ts';
import { MORNING, type Speaker, speaker, take } from '../say.ts';

const onTakes = (day: Day): string[] =>
  day.takeOrder.map((id) =>
    rollingAtTake(day, id)
      .map(({ name }) => name)
      .join(' + '),
  );
const codeOf = (said: CommandResult) => (said.ok ? 'ok' : said.problem.code);

function says(phone: Speaker, command: (day: Day) => CommandResult): void {
  const said = command(phone.day());
  if (!said.ok) throw new Error(said.problem.code);
  phone.say(...said.value);
}

/** A cart with a backup all day, and four takes. */
function backedUp() {
  const phone = speaker();
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  says(phone, (day) => addRecorder(day, 'Backup'));
  const takes = [1, 2, 3, 4].map((number) => phone.id(take('24', 0, number)));
  const backup = phone.day().rig.recorders[0]!.id;
  return { phone, takes, backup };
}

describe('a backup that rolls along', () => {
  test('has every take from where it was added on, and none before', () => {
    const phone = speaker();
    phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
    phone.say(take('24', 0, 1));
    const second = phone.id(take('24', 0, 2));
    phone.say(take('24', 0, 3));
    says(phone, (day) => addRecorder(day, ' Backup ', { before: second }));
    expect(recordersOf(phone.day()).map(({ name }) => name)).toEqual(['Cart', 'Backup']);
    expect(onTakes(phone.day())).toEqual(['Cart', 'Cart + Backup', 'Cart + Backup']);
  });

  test('that missed two takes is corrected at those alone', () => {
    const { phone, takes } = backedUp();
    says(phone, (day) => correctRolling(day, takes[1]!, ['recorder']));
    expect(onTakes(phone.day())).toEqual(['Cart + Backup', 'Cart', 'Cart + Backup', 'Cart + Backup']);
    says(phone, (day) => correctRolling(day, takes[3]!, ['recorder']));
    expect(onTakes(phone.day())).toEqual(['Cart + Backup', 'Cart', 'Cart + Backup', 'Cart']);
    // The next take is on both again: it was those takes that it missed.
    phone.say(take('24', 0, 5));
    expect(onTakes(phone.day()).at(-1)).toBe('Cart + Backup');
  });

  test('two takes in a row that it missed, the later one said first', () => {
    const { phone, takes } = backedUp();
    says(phone, (day) => correctRolling(day, takes[2]!, ['recorder']));
    says(phone, (day) => correctRolling(day, takes[1]!, ['recorder']));
    expect(onTakes(phone.day())).toEqual(['Cart + Backup', 'Cart', 'Cart', 'Cart + Backup']);
  });

  test('alone, for takes that the cart missed', () => {
    const { phone, takes, backup } = backedUp();
    says(phone, (day) => rollRecorders(day, [backup], { before: takes[2]! }));
    expect(onTakes(phone.day())).toEqual(['Cart + Backup', 'Cart + Backup', 'Backup', 'Backup']);
    says(phone, (day) => rollRecorders(day, ['recorder']));
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Cart']);
  });

  test('placed out of order: one late change before a move and one after it', () => {
    const { phone, takes, backup } = backedUp();
    says(phone, (day) => rollRecorders(day, [backup], { before: takes[2]! }));
    says(phone, (day) => correctRolling(day, takes[3]!, ['recorder', backup]));
    says(phone, (day) => rollRecorders(day, ['recorder'], { before: takes[1]! }));
    expect(onTakes(phone.day())).toEqual(['Cart + Backup', 'Cart', 'Backup', 'Cart + Backup']);
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Backup']);
  });

  test('comes along to the next day, rolling', () => {
    const { phone } = backedUp();
    const carried = carryOver(phone.day(), { atMs: MORNING, zone: 0 });
    if (!carried.ok) throw new Error(carried.problem.code);
    const next = speaker('phoneb');
    next.say(...carried.value);
    next.say(take('30', 0, 1));
    expect(onTakes(next.day())).toEqual(['Cart + Backup']);
  });

  test('of a day that never names one is one recorder, the first', () => {
    const phone = speaker();
    phone.say(take('24', 0, 1));
    expect(recordersOf(phone.day())).toEqual([{ id: 'recorder', name: 'Recorder' }]);
    expect(onTakes(phone.day())).toEqual(['Recorder']);
  });
});

describe('the sound rolls of several recorders', () => {
  test('are each their own, from their places on the line on', () => {
    const { phone, takes, backup } = backedUp();
    says(phone, (day) => loadRoll(day, 'recorder', '7A', { before: takes[0]! }));
    says(phone, (day) => loadRoll(day, backup, ' B1 ', { before: takes[0]! }));
    says(phone, (day) => loadRoll(day, backup, 'B2', { before: takes[2]! }));
    says(phone, (day) => rollRecorders(day, [backup], { before: takes[3]! }));
    const day = phone.day();
    expect(takes.map((id) => [rollOn(day, id, 'recorder'), rollOn(day, id, backup)])).toEqual([
      ['7A', 'B1'],
      ['7A', 'B1'],
      ['7A', 'B2'],
      ['7A', 'B2'],
    ]);
    expect(takes.map((id) => rollOfTake(day, id))).toEqual(['7A', '7A', '7A', 'B2']);
  });

  test('need a name, a recorder that is there, and a take that is there', () => {
    const { phone, backup } = backedUp();
    const day = phone.day();
    expect(codeOf(loadRoll(day, backup, ' '))).toBe('roll-name');
    expect(codeOf(loadRoll(day, 'bag', 'B1'))).toBe('not-on-this-day');
    expect(codeOf(loadRoll(day, backup, 'B1', { before: 'none' }))).toBe('not-on-this-day');
  });
});

describe('what is refused of recorders', () => {
  test('two of one name, whichever is named last', () => {
    const { phone } = backedUp();
    expect(codeOf(addRecorder(phone.day(), 'Backup'))).toBe('name-taken');
    expect(codeOf(addRecorder(phone.day(), 'Cart'))).toBe('name-taken');
    expect(codeOf(changeHead(phone.day(), { fields: { recorder: 'Backup' } }))).toBe('name-taken');
    expect(codeOf(addRecorder(phone.day(), '  '))).toBe('name-empty');
  });

  test('none that rolls, one that is not there, a take that is not there, and what is so already', () => {
    const { phone, takes, backup } = backedUp();
    const day = phone.day();
    expect(codeOf(rollRecorders(day, []))).toBe('no-recorder-rolls');
    expect(codeOf(rollRecorders(day, ['bag']))).toBe('not-on-this-day');
    expect(codeOf(rollRecorders(day, ['recorder'], { before: 'none' }))).toBe('not-on-this-day');
    expect(codeOf(correctRolling(day, 'none', ['recorder']))).toBe('not-on-this-day');
    expect(codeOf(correctRolling(day, takes[0]!, [backup, 'recorder']))).toBe('nothing-changed');
  });

  test('deleting one that takes are on; one that no take is on goes, and comes back', () => {
    const { phone, takes, backup } = backedUp();
    expect(strikePart(phone.day(), backup)).toEqual({
      ok: false,
      problem: { code: 'recorder-rolled', name: 'Backup', take: '24/1' },
    });
    says(phone, (day) => rollRecorders(day, ['recorder'], { before: takes[0]! }));
    says(phone, (day) => strikePart(day, backup));
    expect(recordersOf(phone.day()).map(({ name }) => name)).toEqual(['Cart']);
    expect(rollingNow(phone.day()).map(({ name }) => name)).toEqual(['Cart']);
    says(phone, (day) => bringBackPart(day, backup));
    expect(recordersOf(phone.day()).map(({ name }) => name)).toEqual(['Cart', 'Backup']);
  });
});

describe('two phones that say who rolls without knowing of each other', () => {
  test('differ on that link, and what stands holds from where it began', () => {
    const { phone, backup } = backedUp();
    const known = [...phone.facts];
    const other = speaker('phoneb', MORNING + 3_600_000);
    const [one] = phone.say({ kind: 'recorders-rolling', recorders: ['recorder'] });
    const [two] = other.say({ kind: 'recorders-rolling', recorders: [backup] });
    phone.say(take('24', 1, 1));
    const day = foldDay('day-1', [...known, ...phone.facts.slice(known.length), ...other.facts]);
    expect(day.tail.get('rolling')?.rivals).toHaveLength(1);
    phone.say({ kind: 'conflict-resolved', link: 'rolling', among: [one!.id, two!.id], stands: two!.id });
    const settled = foldDay('day-1', [...phone.facts, ...other.facts]);
    expect(rollingNow(settled).map(({ name }) => name)).toEqual(['Backup']);
  });
});
