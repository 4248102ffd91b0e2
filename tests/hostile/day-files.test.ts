import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import { takesInOrder } from '../../src/day/takes.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { type Draft, readFact } from '../../src/facts/fact.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { isSameFact } from '../../src/facts/stored.ts';
import { idSource } from '../../src/shared/ids.ts';
import { damageWords } from '../../src/ui/days/imported-words.ts';
import { sentenceFor } from '../../src/ui/words/problems.ts';
import { noteFault } from '../browser/faults-table.ts';
import { MORNING, take } from '../day/say.ts';
import { DAY, envelopeOf, everyKind, sealed } from '../facts/day-file-samples.ts';
import { damaged, unharmed, wellSealed } from '../facts/hostile-day-files.ts';
import { CASES, isUnpolluted, NASTY_TEXTS, SHARE } from './cases.ts';
import { phoneWith } from './phone.ts';

const SEED = 20_261_011;
const MANY = SHARE * 100_000;
const CIRCLES = SHARE * 2000;
const KNOWN: readonly Envelope[] = Object.freeze(everyKind().slice(0, 12));

const hostileFile = fc.oneof(
  { weight: 5, arbitrary: wellSealed },
  { weight: 3, arbitrary: damaged },
  { weight: 1, arbitrary: unharmed },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 300 }) },
);

interface Outcome {
  readonly let: 'in' | 'in part' | 'out';
  readonly wrong: readonly string[];
}

/** Takes one text in as the sheet, the share sheet and a pasted text do, and says what does not hold afterwards. */
async function importFile(text: string, name: string): Promise<Outcome> {
  const { app, journal, held } = await phoneWith(KNOWN);
  const before = await held();
  const read = readAsFarAsPossible(name, text);
  const imported = await app.importFiles([read]);
  const wrong: string[] = [];
  const check = (holds: boolean, what: string): void => void (holds || wrong.push(what));
  const problem = imported.refused[0]?.problem ?? (read.file ? undefined : read.damage?.problem);
  if (!read.file || problem) {
    check((await held()) === before, 'a refused file left something behind');
    check(problem !== undefined && !sentenceFor(problem).includes(`(${problem.code})`), 'no words');
    check(damageWords(read).length < 400, 'words that go on and on');
    return { let: 'out', wrong };
  }
  const kept = (await journal.read(DAY)) as Envelope[];
  const day = read.file.day;
  const stored = (day === DAY ? kept : await journal.read(day)) as Envelope[];
  const byId = new Map(stored.map((fact) => [fact.id, fact]));
  const same = (fact: Envelope): boolean => byId.has(fact.id) && isSameFact(byId.get(fact.id)!, fact);
  check(
    KNOWN.every((fact) => kept.some(({ id }) => id === fact.id)),
    'a known fact is gone',
  );
  check(read.file.stored.every(same), 'a fact of the file is missing');
  check(stored.length === imported.fresh + (day === DAY ? KNOWN.length : 0), 'something else came along');
  check(imported.verified === imported.entries, 'not all verified');
  check(
    stored.every((fact) => readFact(fact).ok),
    'something unreadable was kept',
  );
  return { let: read.damage ? 'in part' : 'in', wrong };
}

describe(`hostile day files, seed ${SEED}`, () => {
  test(`${CASES.dayFiles} generated ones are refused whole and in words, or imported whole`, async () => {
    const came = { in: 0, 'in part': 0, out: 0 };
    let cases = 0;
    let harmed = 0;
    await fc.assert(
      fc.asyncProperty(hostileFile, fc.constantFrom(...NASTY_TEXTS), async (text, name) => {
        const { let: how, wrong } = await importFile(text, name);
        came[how] += 1;
        cases += 1;
        harmed += Number(wrong.length > 0);
        expect(wrong).toEqual([]);
      }),
      { seed: SEED, numRuns: CASES.dayFiles, endOnFailure: true },
    );
    const { in: whole, 'in part': part, out } = came;
    noteFault('hostile day files', `${cases} files: ${out} refused, ${part} in part, ${whole} whole`, harmed);
    expect(cases).toBe(CASES.dayFiles);
    // Every way out of the reader was taken many times.
    expect(Math.min(whole, part, out)).toBeGreaterThan(SHARE * 300);
    expect(isUnpolluted()).toBe(true);
  }, 240_000);

  test('an id that is known with another body refuses the whole file, and the other facts of it stay out', async () => {
    const { app, held } = await phoneWith(KNOWN);
    const before = await held();
    const forged = { ...KNOWN[3]!, at: KNOWN[3]!.at + 1 };
    const fresh = envelopeOf(500, 'roll-changed', { roll: 'forged' });
    const imported = await app.importFiles([
      readAsFarAsPossible('forged.txt', writeDayFile(DAY, '', [forged, fresh])),
    ]);
    expect(imported.refused).toMatchObject([{ problem: { code: 'fact-id-twice' } }]);
    expect(await held()).toBe(before);
  });

  test(`${MANY} facts are imported whole, folded and answered, and one of them forged refuses them all`, async () => {
    const many = Array.from({ length: MANY }, (_, at) =>
      envelopeOf(at + 100, 'roll-changed', { roll: `${at}` }),
    );
    const text = writeDayFile(DAY, 'Many', many);
    const { app, journal } = await phoneWith(KNOWN);
    const imported = await app.importFiles([readAsFarAsPossible('many.txt', text)]);
    expect(imported).toMatchObject({ fresh: MANY, verified: MANY, refused: [] });
    expect(await journal.read(DAY)).toHaveLength(MANY + KNOWN.length);
    expect((await app.open(DAY)).day.value.line.length).toBeGreaterThanOrEqual(MANY);

    const other = await phoneWith(KNOWN);
    const before = await other.held();
    const forged = [...many, { ...KNOWN[0]!, at: 1 }];
    const refused = await other.app.importFiles([
      readAsFarAsPossible('many.txt', writeDayFile(DAY, '', forged)),
    ]);
    expect(refused.refused).toHaveLength(1);
    expect(await other.held()).toBe(before);
  }, 240_000);

  test('numbers beyond what a field may be, and nesting beyond the limit, refuse the file with line and field', () => {
    const roll = JSON.stringify(envelopeOf(700, 'roll-changed', { roll: 'A' }));
    const lines = [
      roll.replace('"zone":120', '"zone":1e308'),
      roll.replace('"zone":120', '"zone":-99999999999999999999'),
      roll.replace(/"at":\d+/, `"at":${'9'.repeat(400)}`),
      roll.replace('"v":1', '"v":0.5'),
      roll.replace('"roll":"A"', '"roll":9007199254740993'),
      roll.replace('"roll":"A"', `"roll":${'['.repeat(100_000)}${']'.repeat(100_000)}`),
    ];
    for (const line of lines) {
      const read = readDayFile(sealed([line]));
      expect(read.ok).toBe(false);
      if (!read.ok) expect(sentenceFor(read.problem)).toMatch(/[Ll]ine 2/);
    }
  });
});

/** Takes and rolls that are put before each other, before themselves and before what is none, in circles. */
const circles = fc.record({
  takes: fc.integer({ min: 2, max: 12 }),
  moves: fc.array(fc.record({ what: fc.nat(30), to: fc.nat(30), back: fc.boolean() }), {
    minLength: 1,
    maxLength: 30,
  }),
});

function circling({
  takes,
  moves,
}: typeof circles extends fc.Arbitrary<infer Value> ? Value : never): Envelope[] {
  const ids = idSource('phonea00000');
  const say = (draft: Draft): Envelope =>
    stampFacts([draft], { day: DAY, at: MORNING, zone: 120, nextId: ids.next })[0]!;
  const facts = Array.from({ length: takes }, (_, at) => say(take('24', 1, at + 1)));
  const idAt = (at: number): string => facts[at % facts.length]!.id;
  for (const { what, to, back } of moves) {
    facts.push(
      back
        ? say({ kind: 'fact-retracted', targets: [idAt(what), idAt(to)], by: 'hand' })
        : say({ kind: 'fact-moved', target: idAt(what), to: idAt(to) }),
    );
  }
  // A first fact that says it stands before a take that stands before it, as no honest phone would.
  facts[0] = { ...facts[0]!, before: facts[1]!.id };
  facts[1] = { ...facts[1]!, before: facts[0]!.id };
  return facts;
}

test(`${CIRCLES} days whose facts refer to each other in circles have every fact on the line once (seed ${SEED + 1})`, () => {
  fc.assert(
    fc.property(circles, (wanted) => {
      const file = readDayFile(writeDayFile(DAY, '', circling(wanted)));
      if (!file.ok) throw new Error(JSON.stringify(file.problem));
      const day = foldDay(DAY, file.value.facts);
      const ids = day.line.map(({ fact }) => fact.id);
      expect(new Set(ids).size).toBe(ids.length);
      expect(ids).toHaveLength(wanted.takes);
      expect(takesInOrder(day).length).toBeLessThanOrEqual(wanted.takes);
      expect(answersNow(day).tracks).toEqual([]);
    }),
    { seed: SEED + 1, numRuns: CIRCLES },
  );
});
