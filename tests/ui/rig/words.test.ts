import { expect, test } from 'vitest';
import { readRigSpec } from '../../../src/commands/rig/rig-spec.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { inputStateWords, inputsWords, inputWords } from '../../../src/ui/rig/words.ts';
import { specWords } from '../../../src/ui/words/rig-spec.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

const understood = (typed: string): string => {
  const spec = readRigSpec(typed);
  return spec.ok ? specWords(spec.value) : spec.problem.code;
};

test('a recorder that is described is repeated as it was understood', () => {
  expect(understood('9 tracks, 4 mic, 4 AES3')).toBe(
    'Track 1 is the mix, 8 iso tracks. 8 inputs: 4 mic, 4 AES3. Each input has a track of its own.',
  );
  expect(understood('3 tracks, 1 mic, 2 return')).toMatch(
    /3 inputs: 1 mic, 2 returns\. The last 2 inputs share/,
  );
  expect(understood('1 track, 2 mic')).toMatch(/No input has an iso track\.$/);
});

function wired() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

test('an input says what reaches it, back to the body, and where it goes', () => {
  const phone = wired();
  phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes3', tracks: [] }] });
  const day = phone.day();
  const words = Object.fromEntries(
    answersNow(day).inputs.map((one) => [one.input.name, inputWords(day, one)]),
  );
  expect(words).toEqual({
    'in 1': 'Boom, hardline › track 2',
    'AES 1': 'near 1, A1, Ines › track 3',
    'AES 2': 'near 2, A2 › track 4',
    'AES 3': 'near 3, A3 › no track',
  });
});

test('inputs are counted by kind, and each says its state', () => {
  const day = wired().day();
  expect(inputsWords(day.rig.inputs)).toBe('1 mic, 3 AES3');
  expect(answersNow(day).inputs.map(inputStateWords)).toEqual(['mic', 'AES3', 'AES3, idle', 'AES3, idle']);
});
