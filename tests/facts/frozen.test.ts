import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import * as z from 'zod/mini';
import { answersAtTake } from '../../src/day/answers/answers.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { readDayFile } from '../../src/facts/day-file/day-file.ts';
import { isKnown, KINDS, readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { type Kind, kind } from '../../src/facts/kinds/kind.ts';
import { FIRST_FORM } from '../../src/report/form.ts';
import { reportText } from '../../src/report/formats/text.ts';
import { reportOf } from '../../src/report/model.ts';
import { ENUMERATIONS } from './enumerations.ts';
import { FROZEN_WORDS } from './frozen/words.ts';

const frozenText = (name: string): string => readFileSync(join(import.meta.dirname, 'frozen', name), 'utf8');

/**
 * Whole days as an app of some version wrote them, each with a fact of every kind that version knew, and the report it
 * made of them. Never edited once shipped: a commit that adds a kind, or raises the version of one, adds a day.
 */
const FROZEN_DAYS = [
  'day-1',
  'day-2',
  'day-3',
  'day-4',
  'day-5',
  'day-heard',
  'day-listeners',
  'day-mics',
  'day-phones',
  'day-scenes',
  'day-ticks',
  'day-wrapped',
  'day-writers',
];

/** Facts as apps wrote them before days were frozen. */
const FROZEN_FACTS: readonly Envelope[] = [
  {
    ...{ id: '00000b-phonea00000', day: 'day-1', v: 1, at: 1_791_360_000_000, zone: 120 },
    kind: 'leads-plugged',
    ...{
      leads: [
        { lead: 'lead-2', from: 'out-2', to: null },
        { lead: 'lead-1', from: 'out-1', to: 'in-1', position: 'b' },
      ],
    },
  },
];

function readFrozen(name: string) {
  const read = readDayFile(frozenText(`${name}.txt`));
  if (!read.ok) throw new Error(JSON.stringify(read.problem));
  return read.value;
}

const FROZEN: readonly Envelope[] = [
  ...FROZEN_FACTS,
  ...[...FROZEN_DAYS, 'two-recorders'].flatMap((name) => [...readFrozen(name).stored]),
];

/** The versions of kinds that cannot be lifted to this one, or of which no fact is frozen. */
function unheld(kinds: readonly Kind<string, z.ZodMiniType>[], frozen: readonly Envelope[]): string[] {
  const held = new Set(frozen.map(({ kind, v }) => `${kind} ${v}`));
  return kinds.flatMap(({ name, version, lifts }) =>
    Array.from({ length: version }, (_, index) => index + 1)
      .filter((step) => (step < version && !lifts[step]) || !held.has(`${name} ${step}`))
      .map((step) => `${name} ${step}`),
  );
}

describe('what was written once', () => {
  test('every version of every kind is frozen, and lifted to this one', () => {
    expect(unheld(KINDS, FROZEN)).toEqual([]);
  });

  test('the guard notices a version without a lift, or of which nothing is frozen', () => {
    const step = (body: object) => ({ ...body });
    const thrice = kind('thrice-changed', z.object({}), 3, { 1: step, 2: step });
    const first = { ...FROZEN_FACTS[0]!, kind: 'thrice-changed', v: 1 };
    expect(unheld([thrice], [first])).toEqual(['thrice-changed 2', 'thrice-changed 3']);
    const liftless = kind('roll-burnt', z.object({}), 2);
    const both = [1, 2].map((v) => ({ ...first, kind: 'roll-burnt', v }));
    expect(unheld([liftless], both)).toEqual(['roll-burnt 1']);
  });

  test('every frozen fact is understood', () => {
    const lost = FROZEN.filter((fact) => {
      const read = readFact(fact);
      return !read.ok || !isKnown(read.value);
    });
    expect(lost).toEqual([]);
  });

  // A word that is renamed or left out would be one that only a newer version knows.
  test('every word of an enumeration that a version wrote is known', () => {
    const known = new Map(ENUMERATIONS.map(({ kind, path, words }) => [`${kind} ${path.join('.')}`, words]));
    const lost = Object.entries(FROZEN_WORDS).flatMap(([name, words]) =>
      words.split(' ').filter((word) => !known.get(name)?.includes(word)),
    );
    expect(lost).toEqual([]);
    expect([...known.keys()].filter((name) => !Object.hasOwn(FROZEN_WORDS, name))).toEqual([]);
  });

  // Cart, then the bag, then both: whose an input or a track is, is in the file as it was first written.
  test('the tracks of a day with two recorders are read as they were', () => {
    const { day: id, facts } = readFrozen('two-recorders');
    const day = foldDay(id, facts);
    const read = day.takeOrder.map((take) =>
      answersAtTake(day, take)
        .recorders.filter(({ rolls }) => rolls)
        .map(({ recorder, tracks }) => [
          recorder,
          ...tracks.flatMap(({ track, name }) => (track.mix ? [] : name)),
        ]),
    );
    const cart = ['recorder', 'Boom', 'Ines', 'Dora', ''];
    const bag = ['bag', 'Boom', 'Ines'];
    expect(read).toEqual([[cart], [bag], [cart, bag]]);
  });

  test.each(FROZEN_DAYS)('the report of %s says what it said', (name) => {
    const { day, facts } = readFrozen(name);
    expect(reportText(reportOf(foldDay(day, facts), [], FIRST_FORM))).toBe(frozenText(`${name}-report.txt`));
  });
});
