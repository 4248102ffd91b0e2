import { describe, expect, test } from 'vitest';
import { answersAt } from '../../src/day/answers/answers.ts';
import { applyWrites, CHECKPOINT_EVERY, linksAt } from '../../src/day/chain/links.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day, Link } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { expectSame } from '../expect-same.ts';
import { MORNING, speaker, take } from './say.ts';

/** A line of so many items: a pack that goes from one to the other, and a take after every eight. */
function lineOf(items: number): { day: Day; changes: string[]; takes: string[] } {
  const phone = speaker();
  const changes: string[] = [];
  const takes: string[] = [];
  for (let at = 0; at < items; at += 1) {
    if (at % 8 === 7) takes.push(phone.id(take('24', 1, at)));
    else changes.push(phone.id({ kind: 'transmitter-worn', transmitter: `A${at % 3}`, voice: `v${at}` }));
  }
  return { day: phone.day(), changes, takes };
}

/** The links at every place of a line, replayed from its beginning. */
function replayed({ line }: Day): Map<string, Link>[] {
  const links = new Map<string, Link>();
  return [...line, null].map((item) => {
    const before = new Map(links);
    if (item && !item.takenBack) applyWrites(links, item.fact);
    return before;
  });
}

/** Copies of the links as they must stand: one at the beginning and one after every 1024 items. */
const copiesOf = (day: Day): Map<string, Link>[] =>
  replayed(day).filter((_, at) => at % CHECKPOINT_EVERY === 0 && at < day.line.length);

function expectRightCopies(day: Day): void {
  expectSame(day.memory.checkpoints, copiesOf(day));
  const all = replayed(day);
  for (const at of [0, 1, 1023, 1024, 1025, 2047, 2048, 2049, day.line.length])
    if (at <= day.line.length) expectSame(linksAt(day, at), all[at], `at ${at}`);
}

const EDGES = [0, 1, 1023, 1024, 1025, 2047, 2048, 2049];

describe('a line at multiples of 1024 items', () => {
  test('1024 items lie between two copies of the links', () => {
    expect(CHECKPOINT_EVERY).toBe(1024);
  });

  test.each(EDGES)('of %i items has its links at every place, with a copy after every 1024', (items) => {
    const { day } = lineOf(items);
    expect(day.line).toHaveLength(items);
    expectRightCopies(day);
  });

  test.each(EDGES)('of %i items is the same when the items come one by one', (items) => {
    const { day } = lineOf(items);
    let grown = foldDay('day-1', []);
    for (const fact of day.facts) grown = appendFacts(grown, [fact]);
    expectRightCopies(grown);
    expect(grown.line.map(({ chainBefore }) => chainBefore)).toEqual(
      day.line.map(({ chainBefore }) => chainBefore),
    );
  });

  /** Says one more fact of the same phone. */
  const say = (day: Day, draft: Draft): Day => {
    const ids = idSource('phonea00000', 9000 + day.facts.length);
    return appendFacts(day, stampFacts([draft], { day: day.id, at: MORNING, zone: 0, nextId: ids.next }));
  };

  test.each([1023, 1024, 1025, 2047, 2048, 2049])(
    'taking back the item at place %i lays the line again from there',
    (place) => {
      const { day, changes } = lineOf(2060);
      const target = day.line[place]!.fact.id;
      const undone = say(day, { kind: 'fact-retracted', targets: [target], by: 'hand' });
      expectRightCopies(undone);
      expect(undone.line[place]!.takenBack).toBe(true);
      expect(linksAt(undone, 2060)).toEqual(foldDay('day-1', undone.facts).tail);
      expect(changes.length).toBeGreaterThan(0);
    },
  );

  test.each([1023, 1024, 1025, 2047, 2048])(
    'a change put before the take nearest place %i moves what follows',
    (place) => {
      const { day, takes } = lineOf(2060);
      const before = takes.find((id) => day.takeItems.get(id)!.place >= place)!;
      const at = day.takeItems.get(before)!.place;
      const corrected = say(day, { kind: 'transmitter-worn', transmitter: 'A9', voice: 'late', before });
      expect(corrected.line).toHaveLength(2061);
      expectRightCopies(corrected);
      expect(corrected.takeOrder).toEqual(takes);
      expect(linksAt(corrected, at).has('worn:A9')).toBe(false);
      expect(linksAt(corrected, at + 1).get('worn:A9')?.value).toBe('late');
    },
  );

  test('answers asked on the way, behind a copy and back again are those of the links there', () => {
    const { day } = lineOf(2400);
    for (const at of [0, 1023, 1024, 1025, 1100, 2200, 2201, 2398, 10, 2048, 2400])
      expectSame(answersAt(day, at).links, linksAt(day, at), `at ${at}`);
  });
});
