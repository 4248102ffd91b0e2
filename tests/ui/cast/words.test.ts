import { describe, expect, test } from 'vitest';
import { readCastList } from '../../../src/callsheet/cast/cast-list.ts';
import { planCast } from '../../../src/commands/cast/plan-cast.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { addedWords, plannedWord, toAddWords } from '../../../src/ui/cast/call-sheet/words.ts';
import { chainWords } from '../../../src/ui/cast/words.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

function wired() {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

describe('the chain of a voice in one breath', () => {
  const chainOf = (phone: ReturnType<typeof wired>, id: string): string => {
    const day = phone.day();
    return chainWords(day.rig, answersNow(day).voices.find(({ voice }) => voice.id === id)!);
  };

  test('is whole from the pack to the input, or a hardline', () => {
    const phone = wired();
    expect(chainOf(phone, 'ines')).toBe('A1 › near 1 › AES 1');
    expect(chainOf(phone, 'boom')).toBe('hardline › in 1');
  });

  test('goes as far as it can, and then says what is missing', () => {
    const phone = wired();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'near1out', to: null }] });
    expect(chainOf(phone, 'ines')).toMatch(/^A1 › near 1: /);
    expect(chainOf(phone, 'dora')).toBe('wears no pack');
  });

  test('of a boom without a lead does not speak of packs', () => {
    const phone = wired();
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: null }] });
    expect(chainOf(phone, 'boom')).not.toMatch(/pack/);
  });
});

describe('a call sheet against the cast', () => {
  const planned = (text: string) => planCast(wired().day(), readCastList(text).entries);

  test('says for each line what adding it would do', () => {
    expect(planned('1 Ines\n2 Dora Veld\n9 Marta').map(plannedWord)).toEqual([
      'already in the cast',
      'was Dora',
      'new',
    ]);
  });

  test('counts what one tap would do, and what it did', () => {
    const both = planned('1 Ines\n2 Dora Veld\n9 Marta');
    expect([toAddWords(both), addedWords(both)]).toEqual(['Add 1, update 1', '1 performer added, 1 updated']);
    const fresh = planned('8 Pia\n9 Marta');
    expect([toAddWords(fresh), addedWords(fresh)]).toEqual(['Add 2 to the cast', '2 performers added']);
    expect(toAddWords(planned('1 Ines'))).toBe('');
    expect(toAddWords(planned('2 Dora Veld'))).toBe('Update 1');
  });
});
