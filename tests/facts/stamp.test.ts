import { describe, expect, test } from 'vitest';
import type { Draft } from '../../src/facts/fact.ts';
import { type Saying, stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';

const AT = 1_791_360_000_000;
const saying = (more: Partial<Saying> = {}): Saying => ({
  day: 'day-1',
  at: AT,
  zone: -210,
  nextId: idSource('phonea00000').next,
  ...more,
});
const roll = (value: string): Draft => ({ kind: 'roll-changed', roll: value });

describe('what one action says', () => {
  test('has one moment and one batch, named by its first fact, which alone tells of a clock set ahead', () => {
    const facts = stampFacts(
      [roll('1'), { ...roll('2'), before: '00000a-phonea00000' }],
      saying({ ahead: 5000 }),
    );
    const shared = { day: 'day-1', kind: 'roll-changed', v: 1, at: AT, zone: -210 };
    expect(facts).toEqual([
      { ...shared, id: '000001-phonea00000', ahead: 5000, roll: '1' },
      {
        ...shared,
        id: '000002-phonea00000',
        batch: '000001-phonea00000',
        before: '00000a-phonea00000',
        roll: '2',
      },
    ]);
  });

  test('says which facts of other phones were known, in every fact, and nothing where none were', () => {
    const known = stampFacts([roll('1'), roll('2')], saying({ seen: { phoneb: 4 } }));
    expect(known.map(({ seen }) => seen)).toEqual([{ phoneb: 4 }, { phoneb: 4 }]);
    for (const seen of [{}, undefined]) {
      const [alone] = stampFacts([roll('1')], saying(seen ? { seen } : {}));
      expect(Object.keys(alone!)).not.toContain('seen');
      expect(Object.keys(alone!)).not.toContain('ahead');
    }
  });

  test('may be nothing', () => {
    expect(stampFacts([], saying())).toEqual([]);
  });
});
