import { expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { cellsWords } from '../../../src/ui/upkeep/cells-words.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING } from '../../day/say.ts';
import { SetPhone } from '../../day/three-phones.ts';

test('fresh cells say who put them in, if it was somebody else', () => {
  const utility = new SetPhone(1, 0);
  utility.say({ kind: 'phone-named', name: 'Ines Roth', job: 'Utility' }, MORNING);
  utility.say({ kind: 'cells-changed', devices: ['recorder'] } as Draft, MORNING + 60_000);
  const day = foldDay('day-1', utility.facts);
  const upkeep = upkeepAt(day, MORNING + 120_000);
  const recorder = upkeep.devices.find(({ id }) => id === 'recorder')!;
  const now = { atMs: MORNING + 120_000, zone: 0, database: 'phonea' };
  const words = (own: string): string => cellsWords(day, upkeep, recorder, now, own);
  expect(words('phonea')).toContain('fresh 07:01 by Ines Roth');
  expect(words('phoneb')).toContain('fresh 07:01,');
});
