import { describe, expect, test } from 'vitest';
import { cardWords, logWords } from '../../src/ui/words/card.ts';
import { speaker, take } from '../day/say.ts';
import { cardOf } from '../reconcile/build-card.ts';
import { checkFiles } from '../reconcile/check-card.ts';

describe('log and card side by side', () => {
  test('of takes before the first roll was named say no roll, as the report does', async () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    const [file] = cardOf(phone.day());
    const [found] = await checkFiles(phone.day(), [{ ...file!, tape: '7A' }]);
    expect(found!.code).toBe('roll-differs');
    expect([logWords(found!), cardWords(found!)]).toEqual(['no roll', '7A']);
  });

  test('of anything else that is not there say nothing', () => {
    expect(logWords({ code: 'file-name-differs', was: '' })).toBe('nothing');
    expect(cardWords({ code: 'file-name-differs', is: null })).toBe('nothing');
  });
});
