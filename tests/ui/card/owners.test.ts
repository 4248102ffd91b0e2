import { expect, test } from 'vitest';
import { cardsWords } from '../../../src/ui/card/card-owners.tsx';
import { speaker, take } from '../../day/say.ts';
import { cardOf, recordCard } from '../../reconcile/build-card.ts';

test('cards are called by how many they are, the recorder in the files, and their rolls', async () => {
  const phone = speaker();
  for (const number of [1, 2])
    phone.say(take('24', 0, number, { start: { frames: number * 9000, rate: '25' } }));
  const said = async (originator: string, ...tapes: string[]) =>
    cardsWords({
      recordings: await recordCard(
        cardOf(phone.day()).map((file, at) => ({ ...file, originator, tape: tapes[at] ?? '' })),
      ),
    });
  expect(await said('CART 32', '7A', '7A')).toBe('2 recordings by CART 32, roll 7A');
  expect(await said('', '7A', '7B')).toBe('2 recordings, rolls 7A and 7B');
  expect(await said('')).toBe('2 recordings');
});
