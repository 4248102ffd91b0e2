import { expect, test } from 'vitest';
import { batchOf, type Envelope, isEnvelope, knew } from '../../../src/facts/kinds/envelope.ts';
import { TAKE_ID } from '../example-bodies.ts';
import { factIdText, idText, type Limit, moment, oneOf, whole } from '../limit.ts';

const plain = { id: '00000b-phonea00000', day: 'day-1', kind: 'take-logged', v: 1, at: 0, zone: 0 };

const LIMITS: Readonly<Record<string, Limit>> = {
  id: factIdText,
  day: idText,
  kind: oneOf(['a', `a${'-'.repeat(40)}`], ['', `a${'-'.repeat(41)}`, 'A', '-a', 'a1']),
  v: whole(1, 1000),
  at: moment,
  zone: whole(-900, 900),
  ahead: whole(1, 253_402_300_799_999),
  batch: factIdText,
  before: factIdText,
  seen: oneOf(
    [{}, { phoneb: 0 }, { phoneb: 500_000_000, phonec: 1 }],
    [{ phoneb: -1 }, { phoneb: 500_000_001 }, { phone: 1 }, { phonebb: 1 }, { PHONEB: 1 }],
  ),
};

test.each(Object.entries(LIMITS))('what every fact carries: the limits of %s', (field, { good, bad }) => {
  for (const value of good) expect(isEnvelope({ ...plain, [field]: value }), `${value}`).toBe(true);
  for (const value of bad) expect(isEnvelope({ ...plain, [field]: value }), `${value}`).toBe(false);
});

test('a fact alone is an action of its own', () => {
  expect(batchOf(plain as Envelope)).toBe(plain.id);
  expect(batchOf({ ...plain, batch: TAKE_ID } as Envelope)).toBe(TAKE_ID);
});

test('a fact knew what its own phone had said before it, from whichever window, and itself', () => {
  const fact = { id: '00000b-phonea00000' };
  expect(knew(fact, '00000a-phonea00001')).toBe(true);
  expect(knew(fact, fact.id)).toBe(true);
  expect(knew(fact, '00000c-phonea00000')).toBe(false);
});

test('of another phone a fact knew what is under its seen, and nothing where there is none', () => {
  const fact = { id: '00000b-phonea00000', seen: { phoneb: 9 } };
  expect(knew(fact, '000009-phoneb00000')).toBe(true);
  expect(knew(fact, '00000a-phoneb00000')).toBe(false);
  expect(knew(fact, '000001-phonec00000')).toBe(false);
  expect(knew({ id: fact.id }, '000001-phoneb00000')).toBe(false);
});
