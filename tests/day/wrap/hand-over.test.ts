import { expect, test } from 'vitest';
import { sizeOnCards } from '../../../src/day/wrap/hand-over.ts';
import { speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

test('what is on the cards, as logged, is what every recorder wrote', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } });
  const long = { length: { frames: 250, rate: '25' } };
  phone.say(take('24', 0, 1, long));
  const once = sizeOnCards(phone.day());
  expect(once).toMatchObject({ files: 1, isFromCard: false });
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b'] }, take('24', 0, 2, long));
  expect(sizeOnCards(phone.day())).toEqual({ files: 3, bytes: 3 * once.bytes, isFromCard: false });
  expect(once.bytes).toBeGreaterThan(0);
});
