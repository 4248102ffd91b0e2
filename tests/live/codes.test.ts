import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { askingCode, invitationCode, readAsking, readInvitation } from '../../src/app/live/join-codes.ts';
import { placeCode, readPlaceCode } from '../../src/app/live/place-code.ts';

const PLACE = { path: '/live', user: 'phone', password: 'word' };
const WORD = '0123456789abcdef';
const KEY = 'ab'.repeat(32);

describe('live codes', () => {
  test('come back as they were written', () => {
    expect(readPlaceCode(` ${placeCode(PLACE)}\n`)).toEqual(PLACE);
    const invitation = {
      day: 'day-1',
      secrets: new Map([
        [1, new Uint8Array(32).fill(7)],
        [2, new Uint8Array(32).fill(9)],
        [4, new Uint8Array(32).fill(1)],
      ]),
      firstOwner: KEY,
      offer: 'writer',
      word: WORD,
      place: PLACE,
    } as const;
    expect(readInvitation(invitationCode(invitation))).toEqual(invitation);
    for (const [name, job] of [
      ['Mira Holm', 'Boom operator'],
      ['', ''],
      ['Ксенија 100%', ''],
    ] as const) {
      const asking = { key: KEY, agreement: KEY, word: WORD, database: 'abc123', name, job };
      expect(readAsking(askingCode(asking))).toEqual(asking);
      const older = { ...asking, agreement: undefined };
      expect(readAsking(askingCode(older))).toEqual(older);
    }
  });

  test.each([
    ['another host', 'rollbook-live //elsewhere.example/live phone word'],
    ['an address', 'rollbook-live https://elsewhere.example/ phone word'],
    ['no password', 'rollbook-live /live phone'],
    ['more than there is', 'rollbook-live /live phone word more'],
    ['another word', 'rollbook /live phone word'],
  ])('name no server where there is %s', (_, code) => {
    expect(readPlaceCode(code)).toBeNull();
  });

  test('of one kind are none of another, nor is anything else', () => {
    const codes = [
      placeCode(PLACE),
      invitationCode({
        day: 'day-1',
        secrets: new Map([[1, new Uint8Array(32)]]),
        firstOwner: KEY,
        offer: 'writer',
        word: WORD,
        place: PLACE,
      } as const),
      askingCode({ key: KEY, word: WORD, database: 'abc123', name: 'Mira', job: '' }),
    ];
    const kinds = [readPlaceCode, readInvitation, readAsking];
    for (const [nth, code] of codes.entries())
      expect(kinds.map((read) => read(code) !== null)).toEqual(kinds.map((_, at) => at === nth));
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom('rollbook-live', 'rollbook-join', 'rollbook-write'),
        (text, word) => {
          for (const read of kinds) expect(read(`${word} ${text.replaceAll('/', '')}`)).toBeNull();
        },
      ),
      { numRuns: 200 },
    );
  });
});
