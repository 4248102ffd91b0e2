import { describe, expect, test } from 'vitest';
import { sayAgain } from '../../src/commands/say-again.ts';
import { clockRemarks } from '../../src/day/clock-remarks.ts';
import { conflictsOf } from '../../src/day/conflicts.ts';
import { foldDay } from '../../src/day/fold.ts';
import { sentTo, tunedTo } from '../../src/day/links.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { MORNING, speaker } from '../day/say.ts';

/** The day after its owner, who knows all of it, has said something more. */
function withMore(day: Day, drafts: readonly Draft[]): Day {
  const ids = idSource('phoneawin02');
  for (const { id } of day.facts) ids.see(id);
  const seen = Object.fromEntries([...day.highest].filter(([database]) => database !== 'phonea'));
  const more = stampFacts(drafts, { day: day.id, at: MORNING, zone: 120, seen, nextId: ids.next });
  return foldDay(day.id, [...day.facts, ...more]);
}

describe('saying one alternative again', () => {
  test('settles the contradiction, for either alternative', () => {
    const [a, b] = [speaker('phonea'), speaker('phoneb')];
    a.say({ kind: 'roll-changed', roll: 'A1' });
    b.say({ kind: 'roll-changed', roll: 'B1' });
    const day = foldDay('day-1', [...a.facts, ...b.facts]);
    const [conflict] = conflictsOf(day);
    expect(conflict).toMatchObject({ kind: 'said-twice', link: 'roll' });
    for (const fact of [...a.facts, ...b.facts]) {
      const said = sayAgain(day, fact.id, 'roll');
      if (!said.ok) throw new Error(said.problem.code);
      expect(said.value).toEqual([{ kind: 'roll-changed', roll: fact.kind === 'roll-changed' && fact.roll }]);
      expect(conflictsOf(withMore(day, said.value))).toEqual([]);
    }
  });

  test('says nothing again of what else the fact had said: only the disputed link', () => {
    const [a, b] = [speaker('phonea'), speaker('phoneb')];
    const [first] = a.say({
      kind: 'channels-tuned',
      tunings: [
        { channel: 'c1', transmitter: 't1' },
        { channel: 'c2', transmitter: 't2' },
      ],
    });
    a.say({ kind: 'channels-tuned', tunings: [{ channel: 'c1', transmitter: 't9' }] });
    b.say({ kind: 'channels-tuned', tunings: [{ channel: 'c2', transmitter: 't3' }] });
    const day = foldDay('day-1', [...a.facts, ...b.facts]);
    const said = sayAgain(day, first!.id, 'tuned:c2');
    if (!said.ok) throw new Error(said.problem.code);
    const settled = withMore(day, said.value);
    expect(conflictsOf(settled)).toEqual([]);
    expect(tunedTo(settled.tail, 'c1')?.value).toBe('t9');
    expect(tunedTo(settled.tail, 'c2')?.value).toBe('t2');
    expect(sentTo(settled.tail, 'i1')).toBeUndefined();
  });

  test('says nothing again of the clock: that was set ahead once, before the first time', () => {
    const HOUR = 3_600_000;
    const [a, b] = [speaker('phonea'), speaker('phoneb')];
    const [before] = a.say({ kind: 'roll-changed', roll: 'A0' });
    const [said] = a.say({ kind: 'roll-changed', roll: 'A1' });
    b.say({ kind: 'roll-changed', roll: 'B1' });
    const day = foldDay('day-1', [before!, { ...said!, ahead: HOUR }, ...b.facts]);
    const again = sayAgain(day, said!.id, 'roll');
    if (!again.ok) throw new Error(again.problem.code);
    expect(again.value).toEqual([{ kind: 'roll-changed', roll: 'A1' }]);
    expect(clockRemarks(withMore(day, again.value)).filter(({ kind }) => kind === 'set-ahead')).toEqual([
      { kind: 'set-ahead', by: said!.id, ms: HOUR },
    ]);
  });

  test('refuses a fact that says nothing of the link', () => {
    const a = speaker('phonea');
    const id = a.id({ kind: 'roll-changed', roll: 'A1' });
    expect(sayAgain(a.day(), id, 'worn:t1')).toMatchObject({ problem: { code: 'not-on-this-day' } });
  });
});
