import { expect, test } from 'vitest';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { speaker } from './say.ts';

test('a day of two phones taken in at once by one that had nothing of it is that day, contradictions and all', () => {
  const [a, b] = [speaker('phonea'), speaker('phoneb')];
  a.say({ kind: 'slate-called', slate: { style: 'lettered', scene: '1', setup: 0 } });
  a.say({ kind: 'roll-changed', roll: 'A1' });
  b.say({ kind: 'roll-changed', roll: 'B1' });
  const facts = [...a.facts, ...b.facts].sort((one, other) => (one.id < other.id ? -1 : 1));
  const once = foldDay('day-1', facts);
  const taken = appendFacts(foldDay('day-1', []), facts);
  expect(taken.line.map(({ fact }) => fact.id)).toEqual(once.line.map(({ fact }) => fact.id));
  expect(conflictsOf(once)).toHaveLength(1);
  expect(conflictsOf(taken)).toEqual(conflictsOf(once));
});
