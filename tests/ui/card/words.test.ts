import { describe, expect, test } from 'vitest';
import { cardWords, logWords, settlementWords } from '../../../src/ui/card/words.ts';
import { speaker, take } from '../../day/say.ts';
import { cardOf } from '../../reconcile/build-card.ts';
import { checkFiles } from '../../reconcile/check-card.ts';

describe('log and card side by side', () => {
  test('of takes before the first roll was named say no roll, as the report does', async () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const [found] = await checkFiles(phone.day(), [{ ...file!, tape: '7A' }]);
    expect(found!.code).toBe('roll-differs');
    expect([logWords(found!), cardWords(found!)]).toEqual(['no roll', '7A']);
  });

  test('are settled in words that say what one tap does to the files', () => {
    const phone = speaker();
    const mono = { kind: 'describe-day', fields: { filePattern: '{slate}T{take}_tr{track}' } } as const;
    expect(settlementWords(phone.day(), mono)).toBe('Use the card’s file names');
    const named = { kind: 'describe-takes', takes: [{ take: 'x', fields: { file: 'X.wav' } }] } as const;
    expect(settlementWords(phone.day(), named)).toBe('It is X.wav');
    phone.say({ kind: 'day-described', fields: { fileLayout: 'mono' } });
    expect(settlementWords(phone.day(), named)).toBe('It is X');
  });

  test('of anything else that is not there say nothing', () => {
    expect(logWords({ code: 'file-name-differs', was: '' })).toBe('nothing');
    expect(cardWords({ code: 'file-name-differs', is: null })).toBe('nothing');
  });
});
