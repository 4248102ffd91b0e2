import { expect, test } from 'vitest';
import { notFresh } from '../../../src/commands/upkeep/keep-up.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { cellsRound } from '../../../src/upkeep/due/cells-round.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING } from '../../day/say.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { SetPhone } from '../../day/three-phones.ts';

const HOUR = 3_600_000;
const fresh = (...devices: string[]): Draft => ({ kind: 'cells-changed', devices });

function packs(): SetPhone {
  const phone = new SetPhone(0, 0);
  for (const draft of SMALL_RIG) phone.say(draft, MORNING);
  const fields = { runtimeHours: 5 };
  phone.say({ kind: 'devices-described', devices: ['A1', 'A2', 'A3'], fields }, MORNING);
  return phone;
}

/** The names of those to do, and of those done with a tick. */
function roundAt(phone: SetPhone, atMs: number): string {
  const day = phone.day();
  return cellsRound(day, upkeepAt(day, atMs), atMs)
    .map(({ device, doneBy }) => (doneBy ? `${device.name} ✓` : device.name))
    .join(', ');
}

test('a round has what was never fresh and what is due, and keeps what was done within the hour', () => {
  const phone = packs();
  expect(roundAt(phone, MORNING)).toBe('A1, A2, A3');
  phone.say(fresh('A1', 'A2', 'A3'), MORNING);
  expect(roundAt(phone, MORNING + HOUR)).toBe('A1 ✓, A2 ✓, A3 ✓');
  expect(roundAt(phone, MORNING + HOUR + 1)).toBe('');
  // Due after 4 of 5 hours, with the usual margin.
  expect(roundAt(phone, MORNING + 4 * HOUR)).toBe('A1, A2, A3');
  phone.say(fresh('A2'), MORNING + 4 * HOUR);
  expect(roundAt(phone, MORNING + 4 * HOUR)).toBe('A1, A2 ✓, A3');
});

test('a tick taken off leaves what the same entry said of others', () => {
  const phone = packs();
  phone.say(fresh('A1'), MORNING);
  phone.say(fresh('A1', 'A2', 'A3'), MORNING + 4 * HOUR);
  const said = notFresh(phone.day(), 'A1');
  if (!said.ok) throw new Error(said.problem.code);
  for (const draft of said.value) phone.say(draft, MORNING + 4.1 * HOUR);
  expect(phone.day().upkeep.cells.get('A1')?.atMs).toBe(MORNING);
  expect(phone.day().upkeep.cells.get('A2')?.atMs).toBe(MORNING + 4 * HOUR);
  expect(roundAt(phone, MORNING + 4.1 * HOUR)).toBe('A1, A2 ✓, A3 ✓');
  expect(notFresh(phone.day(), 'A9')).toMatchObject({ ok: false });
});
