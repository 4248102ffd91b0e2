import { expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { phonesOfDay } from '../../../src/day/phones/phones-of-day.ts';
import type { Fact } from '../../../src/facts/fact.ts';
import { statusOfPhone, titleOfPhone } from '../../../src/ui/phones/words.ts';
import { speaker, take } from '../../day/say.ts';

/** What the page says of every phone of the day, on the mixer's. */
function rows(seenByJon: Record<string, number>, seenByInes: Record<string, number>): string[] {
  const [mixer, jon, ines] = [speaker('phonea'), speaker('phoneb'), speaker('phonec')];
  mixer.say(take('24', 1, 1), take('24', 1, 2));
  const named = (name: string) => ({ kind: 'phone-named' as const, name, job: '' });
  const facts: Fact[] = [
    ...mixer.facts,
    ...jon.say(named('Jon Berg')).map((fact) => ({ ...fact, seen: seenByJon })),
    ...ines.say(named('Ines Roth')).map((fact) => ({ ...fact, seen: seenByInes })),
  ];
  const day = foldDay('day-1', facts);
  return phonesOfDay(day, 'phonea').map(
    (phone) => `${titleOfPhone(phone, 'phonea')}: ${statusOfPhone(day, phone, 'phonea')}`,
  );
}

test('each phone says what it had not seen, and what it has that is not here', () => {
  expect(rows({ phonea: 1, phonec: 9 }, { phonea: 2, phoneb: 9, phoned: 3 })).toEqual([
    'This phone: 2 entries',
    'Jon Berg: last heard at 09:01, 1 entry · had not seen 1 entry of this phone · has entries of its own and of Ines Roth that are not here',
    'Ines Roth: last heard at 09:01, 1 entry · had seen everything of this phone · has entries of its own, of Jon Berg and of another phone that are not here',
    'Another phone: has entries that are not here',
  ]);
});
