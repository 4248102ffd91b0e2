import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readCastList } from '../../src/callsheet/cast/cast-list.ts';
import { addCast } from '../../src/commands/day/describe.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { readFact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { reportHtml } from '../../src/report/formats/html.ts';
import { reportOf } from '../../src/report/model.ts';
import { idSource } from '../../src/shared/ids.ts';
import { sentenceFor } from '../../src/ui/words/problems.ts';
import { noteFault } from '../browser/faults-table.ts';
import { MORNING } from '../day/say.ts';
import { CASES, isUnpolluted, NASTY_TEXTS } from './cases.ts';

const SEED = 20_261_021;

const cell = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...NASTY_TEXTS) },
  { weight: 3, arbitrary: fc.constantFrom('INES', 'Anna Berg', 'Old Man', '1', '12A', 'W', '0630', 'CAST') },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  { weight: 1, arbitrary: fc.integer().map(String) },
);
const line = fc
  .tuple(
    fc.array(cell, { minLength: 1, maxLength: 5 }),
    fc.constantFrom('\t', ';', ',', ' - ', '  ', '"', ': '),
  )
  .map(([cells, between]) => cells.join(between));
const castList = fc.array(line, { maxLength: 12 }).map((lines) => lines.join('\n'));

/** The day after somebody pasted the text and added what was read of it; nothing where nothing was. */
function dayAfter(text: string) {
  const ids = idSource('phonea00000');
  const { entries } = readCastList(text);
  if (entries.length === 0) return undefined;
  const said = addCast(foldDay('day-1', []), entries, () => `e${ids.next()}`);
  if (!said.ok) return said.problem;
  return stampFacts(said.value, { day: 'day-1', at: MORNING, zone: 120, nextId: ids.next });
}

/** Whole characters; none is unseen or turns the line round, but for the two joiners that scripts need. */
const isPlain = (name: string): boolean =>
  name.isWellFormed() && !/(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u.test(name);

describe(`hostile cast lists, seed ${SEED}`, () => {
  test(`${CASES.castLists} generated ones become plain names that a day can keep, or are left unread with why`, () => {
    let cases = 0;
    let added = 0;
    let harmed = 0;
    fc.assert(
      fc.property(castList, (text) => {
        cases += 1;
        const wrong: string[] = [];
        const facts = dayAfter(text);
        if (facts && 'code' in facts) {
          if (sentenceFor(facts).includes(`(${facts.code})`)) wrong.push('no words');
        } else if (facts) {
          added += 1;
          const day = foldDay('day-1', facts);
          if (!facts.every((fact) => readFact(fact).ok)) wrong.push('a fact that no day file can bring');
          const file = readDayFile(writeDayFile('day-1', '', facts));
          if (!file.ok) wrong.push(`no day file: ${file.problem.code}`);
          for (const { part, person, number } of day.voices.values()) {
            if (!isPlain(part + person + number)) wrong.push('a name with what is not seen');
          }
          const page = added % 20 === 0 ? reportHtml(reportOf(day)) : '';
          if (/<(script|img|svg)\b/i.test(page)) wrong.push('markup in the report');
        }
        harmed += Number(wrong.length > 0);
        expect(wrong).toEqual([]);
      }),
      { seed: SEED, numRuns: CASES.castLists, endOnFailure: true },
    );
    noteFault('hostile cast lists', `${cases} lists, names added from ${added}`, harmed);
    expect(cases).toBe(CASES.castLists);
    expect(added).toBeGreaterThan(CASES.castLists / 2);
    expect(isUnpolluted()).toBe(true);
  }, 240_000);
});
