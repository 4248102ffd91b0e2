import { expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { clockRemarks } from '../../../src/day/phones/clock-remarks.ts';
import { stampFacts } from '../../../src/facts/stamp.ts';
import { idSource } from '../../../src/shared/ids.ts';
import { clockWords, zoneName } from '../../../src/ui/line/clock-words.ts';
import { MORNING, take } from '../../day/say.ts';

test.each([
  [0, 'UTC+0'],
  [120, 'UTC+2'],
  [-210, 'UTC-3:30'],
  [345, 'UTC+5:45'],
])('%i minutes east are %s', (minutes, name) => {
  expect(zoneName(minutes)).toBe(name);
});

/** What is remarked of two takes, said at these times in these zones. */
function remarked(...said: readonly { readonly at: number; readonly zone: number }[]): string[] {
  const ids = idSource('phonea00000');
  const facts = said.flatMap(({ at, zone }, index) =>
    stampFacts([take('24', 0, index + 1)], { day: 'day-1', at, zone, nextId: ids.next }),
  );
  const day = foldDay('day-1', facts);
  return clockRemarks(day).map((remark) => clockWords(day, remark));
}

test('a clock set back says by how much, and before when', () => {
  const back = remarked({ at: MORNING, zone: 120 }, { at: MORNING - 30 * 60_000, zone: 120 });
  expect(back).toEqual(["The phone's clock was set back 30 min before 08:30"]);
});

test('another zone says from which to which', () => {
  const moved = remarked({ at: MORNING, zone: 120 }, { at: MORNING + 60_000, zone: 60 });
  expect(moved).toEqual(["The phone's zone went from UTC+2 to UTC+1 before 08:01"]);
});
