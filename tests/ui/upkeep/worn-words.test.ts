import { expect, test } from 'vitest';
import { wornWords } from '../../../src/ui/upkeep/worn-words.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

test('a pack is named with whoever wears it now, and by itself when it comes off', () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  expect(['A1', 'A2', 'recorder'].map((id) => wornWords(phone.day(), id))).toEqual([
    'A1 on Ines',
    'A2',
    'Recorder',
  ]);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: null });
  expect(wornWords(phone.day(), 'A1')).toBe('A1');
});
