import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { readsOnly } from '../../../src/day/phones/reads-only.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { speaker } from '../say.ts';

const by = { owner: '0f'.repeat(16), signature: 'a9'.repeat(64) };
const admitted = (
  number: number,
  database: string,
  role: 'owner' | 'writer' | 'onlooker' = 'writer',
): Draft => ({
  ...{ kind: 'writer-admitted', number, role, key: 'b7'.repeat(32), database, name: '', job: '', ...by },
});
const removed: Draft = {
  ...{
    kind: 'writer-removed',
    number: 3,
    writer: '1e'.repeat(16),
    database: 'phoneb',
    counted: 1,
    upTo: 1,
    ...by,
  },
};
const passedOn: Draft = { kind: 'day-passed-on', number: 3, to: '1e'.repeat(16), counted: 4, ...by };

function whyOf(drafts: readonly Draft[], database: string, looksOn = false) {
  return readsOnly(foldDay('day-1', speaker('phonea').say(...drafts)), database, looksOn);
}

describe('a phone only reads a day', () => {
  const shared = [admitted(1, 'phonea', 'owner'), admitted(2, 'phoneb')];

  test('never where nobody shared it, nor where the owner admitted it', () => {
    expect(whyOf([], 'phoneb')).toBeNull();
    expect(whyOf(shared, 'phonea')).toBeNull();
    expect(whyOf(shared, 'phoneb')).toBeNull();
  });

  test('that it joined to look on, until it is admitted to write', () => {
    expect(whyOf(shared, 'phonec', true)).toBe('looks-on');
    expect(whyOf([...shared, admitted(3, 'phonec')], 'phonec', true)).toBeNull();
    expect(whyOf([...shared, admitted(3, 'phonec', 'onlooker')], 'phonec')).toBe('looks-on');
  });

  test('from which it was removed, until it is admitted anew', () => {
    expect(whyOf([...shared, removed], 'phoneb')).toBe('removed');
    expect(whyOf([...shared, removed], 'phonea')).toBeNull();
    expect(whyOf([...shared, removed, admitted(4, 'phoneb')], 'phoneb')).toBeNull();
  });

  test('that it handed over', () => {
    expect(whyOf([...shared, passedOn], 'phonea')).toBe('handed-over');
    expect(whyOf([...shared, passedOn], 'phoneb')).toBeNull();
  });
});
