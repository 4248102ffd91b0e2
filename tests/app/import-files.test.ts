import { describe, expect, test } from 'vitest';
import { importFiles, readAsFarAsPossible } from '../../src/app/import-files.ts';
import { writeDayFile } from '../../src/facts/day-file/day-file.ts';
import type { DayFile } from '../../src/facts/day-file/day-file-facts.ts';
import type { Envelope } from '../../src/facts/kinds/envelope.ts';
import { mergeFacts } from '../../src/facts/merge-facts.ts';
import { damageWords, importedWords } from '../../src/ui/days/imported-words.ts';
import { seededNumbers } from '../browser/faults-table.ts';
import { speaker, take } from '../day/say.ts';

/** A phone whose disk is a list of facts. */
function phone(stored: Envelope[] = []) {
  return {
    stored,
    merge: async (file: DayFile) => {
      const merged = mergeFacts(stored, file.stored);
      if (!merged.ok) return merged;
      stored.push(...merged.value.fresh);
      return { ok: true as const, value: { fresh: merged.value.fresh.length } };
    },
    read: async (day: string) => stored.filter((fact) => fact.day === day),
  };
}

function dayOf(writer: string, takes: number) {
  const one = speaker(writer);
  for (let number = 1; number <= takes; number += 1) one.say(take('24', 1, number));
  return one.facts;
}
const fileOf = (facts: readonly Envelope[]): string => writeDayFile('day-1', 'Harbour Lights', facts);

describe('a set of day files', () => {
  test('rebuilds a day from parts of it in any order, and counts every entry on the disk (seed 71)', async () => {
    const facts = dayOf('phonea', 40);
    const random = seededNumbers(71);
    for (let round = 0; round < 50; round += 1) {
      const parts = [0, 1, 2].map((part) => facts.filter((_, at) => at % 3 === part || random() < 0.3));
      parts.sort(() => random() - 0.5);
      const reads = parts.map((part, at) => readAsFarAsPossible(`part ${at}`, fileOf(part)));
      const empty = phone();
      const imported = await importFiles(empty, reads);
      expect(imported).toEqual({ days: ['day-1'], entries: 40, fresh: 40, verified: 40, refused: [] });
      expect(new Set(empty.stored.map(({ id }) => id))).toEqual(new Set(facts.map(({ id }) => id)));
    }
  });

  test('gives what can be read of a damaged one, and says how much that is', async () => {
    const facts = dayOf('phonea', 10);
    const lines = fileOf(facts).split('\n');
    lines[4] = lines[4]!.slice(0, 30);
    const reads = [readAsFarAsPossible('torn.txt', lines.join('\n'))];
    expect(damageWords(reads[0]!)).toBe(
      'Line 5 of the file cannot be read. 9 entries can be read, 1 cannot.',
    );
    const imported = await importFiles(phone(), reads);
    expect(imported).toMatchObject({ entries: 9, fresh: 9, verified: 9 });
    expect(importedWords(reads, imported)).toBe(
      '9 entries of 1 day: all checked one by one on this phone, 9 of them new. 1 entry was damaged in its file.',
    );
  });

  test('has what a damaged one lost from another, and leaves out one that contradicts', async () => {
    const facts = dayOf('phonea', 10);
    const torn = fileOf(facts).split('\n').slice(0, 6).join('\n');
    const forged = fileOf([{ ...facts[0]!, at: facts[0]!.at + 1 }]);
    const reads = [
      readAsFarAsPossible('torn.txt', torn),
      readAsFarAsPossible('rest.txt', fileOf(facts.slice(4))),
      readAsFarAsPossible('forged.txt', forged),
      readAsFarAsPossible('letter.txt', 'Dear all, tomorrow we meet at six.'),
    ];
    const imported = await importFiles(phone(), reads);
    expect(imported).toMatchObject({ entries: 10, fresh: 10, verified: 10 });
    expect(imported.refused.map(({ name }) => name)).toEqual(['forged.txt']);
    expect(damageWords(reads[3]!)).toContain('Nothing in it can be read.');
    expect(importedWords(reads, imported)).toContain(
      '5 entries were damaged in their file, and came where another file has them. 1 file could not be read at all.',
    );
  });

  test('is never called imported where the disk does not have it', async () => {
    const forgetful = { ...phone(), read: async () => [] };
    const reads = [readAsFarAsPossible('a.txt', fileOf(dayOf('phonea', 3)))];
    const imported = await importFiles(forgetful, reads);
    expect(imported).toMatchObject({ entries: 3, verified: 0 });
    expect(importedWords(reads, imported)).toContain('3 are not saved yet');
  });
});
