import { expect, test } from 'vitest';
import { plugRun } from '../../../src/commands/rig/plug-run.ts';
import { answersAtTake } from '../../../src/day/answers/answers.ts';
import { take } from '../../day/say.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { layingPhone } from '../rig-day.ts';

test('a hardline plugged in late, before a take at which it was plugged nowhere yet, has no second lead later on', () => {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, { kind: 'voice-described', voice: 'boom', fields: { kind: 'boom', part: 'Boom' } });
  const first = phone.id(take('24', 1, 1));
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'snake1', from: 'boom', to: 'in1' }] });
  const second = phone.id(take('24', 1, 2));
  phone.run((day) => plugRun(day, ['boom'], ['aes1'], 'a', { before: first }));
  const tracksAt = (id: string) =>
    answersAtTake(phone.day(), id).voices.find(({ voice }) => voice.id === 'boom')!.tracks;
  expect(tracksAt(first)).toEqual(['tr3']);
  expect(tracksAt(second)).toEqual(['tr2']);
});
