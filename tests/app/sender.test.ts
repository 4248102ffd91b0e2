import { describe, expect, test } from 'vitest';
import { readAsFarAsPossible } from '../../src/app/import-files.ts';
import { readDayFile, writeDayFile } from '../../src/facts/day-file/day-file.ts';
import { speaker, take } from '../day/say.ts';

const { facts } = (() => {
  const phone = speaker();
  phone.say(take('24', 1, 1));
  phone.say(take('24', 1, 2));
  return phone;
})();

describe('a day file', () => {
  test('says who sent it', () => {
    const read = readDayFile(writeDayFile('day-1', 'Day 4', facts, 'Jon Berg'));
    expect(read).toMatchObject({ ok: true, value: { title: 'Day 4', sender: 'Jon Berg' } });
  });

  test('says it of what is left of a damaged one', () => {
    const damaged = writeDayFile('day-1', 'Day 4', facts, 'Jon Berg').split('\n').toSpliced(2, 1).join('\n');
    expect(readAsFarAsPossible('a.txt', damaged).file).toMatchObject({ title: 'Day 4', sender: 'Jon Berg' });
  });

  test('is written as before by a phone that nobody named', () => {
    const text = writeDayFile('day-1', 'Day 4', facts);
    expect(text).not.toContain('sender');
    expect(readDayFile(text)).not.toHaveProperty('value.sender');
  });
});
