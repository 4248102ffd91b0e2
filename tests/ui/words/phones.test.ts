import { describe, expect, test } from 'vitest';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { otherHolder, whose } from '../../../src/ui/words/phones.ts';
import { speaker, take } from '../../day/say.ts';

const [first] = speaker('phonea').say(take('24', 1, 1));
const [note, named] = speaker('phoneb').say(
  { kind: 'note-added', take: first!.id, text: 'rustle' },
  { kind: 'phone-named', name: 'Jon Berg', job: 'Boom operator' },
);
const day = foldDay('day-1', [first!, { ...note!, seen: { phonea: 1 } }, named!]);

describe('whose an entry is', () => {
  test('is said in sheets of every phone', () => {
    expect(whose(day, first!.id, 'phonea')).toBe('this phone');
    expect(whose(day, note!.id, 'phonea')).toBe('Jon Berg');
    expect(whose(day, first!.id, 'phoneb')).toBe('another phone');
  });

  test('is said on the line where it is somebody else who is known', () => {
    expect(otherHolder(day, first!.id, 'phonea')).toBe('');
    expect(otherHolder(day, note!.id, 'phonea')).toBe('Jon Berg');
    expect(otherHolder(day, first!.id, 'phoneb')).toBe('');
  });
});
