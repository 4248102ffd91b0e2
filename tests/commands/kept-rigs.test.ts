import { expect, test } from 'vitest';
import { copyRig } from '../../src/commands/day/copy-rig.ts';
import { carryOver, rigOf } from '../../src/commands/day/start-day.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { MORNING } from '../day/say.ts';
import { crowdPhone } from '../plan/crowd-scene.ts';
import { laidRig } from './rig-day.ts';

// What is laid, carried into the next day and copied onto another, fact by fact, as it was. A rig that is meant to be another is
// looked at, and kept with `npx vitest run --project unit tests/commands/kept-rigs.test.ts --update`.

/** A line for every fact, and one for every part, lead or route in it. */
const told = (drafts: readonly Draft[]): string =>
  drafts
    .map(({ kind, ...said }) => {
      const lists = Object.entries(said).filter(
        ([, value]) => Array.isArray(value) && typeof value[0] === 'object',
      );
      const rest = Object.fromEntries(
        Object.entries(said).filter(([name]) => !lists.some(([list]) => list === name)),
      );
      const items = lists.flatMap(([, list]) =>
        (list as object[]).map((one) => `  ${JSON.stringify(one)}\n`),
      );
      return `${kind}${Object.keys(rest).length > 0 ? ` ${JSON.stringify(rest)}` : ''}\n${items.join('')}`;
    })
    .join('');

test.each(STARTING_RIGS)('$name is laid as it was', async ({ id, name, about, lay }) => {
  const said = lay();
  const drafts = said.ok ? said.value : [];
  await expect(`${name}: ${about}\n${told(drafts)}`).toMatchFileSnapshot(`kept/${id}.txt`);
  expect(rigOf(laidRig(id).day()).length).toBeGreaterThan(0);
});

test('a day that was worked is carried into the next, and its rig copied onto another, as it was', async () => {
  const phone = crowdPhone(2, 'cart', 6);
  phone.say(
    {
      kind: 'day-described',
      fields: { production: 'Salt Road', label: 'day 7', date: '2026-10-07', mixer: 'N. Aske' },
    },
    { kind: 'gang-declared', track: 'tr2', sources: ['cart-ch1', 'cart-ch2'] },
    { kind: 'voice-described', voice: 'voice2', fields: { struck: true } },
    { kind: 'part-described', part: 'line12', fields: { struck: true } },
    { kind: 'guards-set', guards: { carrierKhz: 350 } },
    { kind: 'run-described', run: 'r1', fields: { type: 'dc', metres: 12 } },
  );
  const carried = carryOver(phone.day(), { atMs: MORNING + 86_400_000, zone: 120 });
  await expect(told(carried.ok ? carried.value : [])).toMatchFileSnapshot('kept/carried.txt');
  const copied = copyRig(phone.day(), laidRig('modules').day());
  await expect(told(copied.ok ? copied.value : [])).toMatchFileSnapshot('kept/copied.txt');
});
