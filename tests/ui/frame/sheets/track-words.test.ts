import { expect, test } from 'vitest';
import { answersBefore } from '../../../../src/day/answers/answers.ts';
import { takeText } from '../../../../src/day/slate.ts';
import { takesInOrder } from '../../../../src/day/takes.ts';
import { notThereWords, trackTitle, trackUnder } from '../../../../src/ui/frame/sheets/track-words.ts';
import { bigDay } from '../../../day/big-day.ts';

const day = bigDay().day();
const idOf = (name: string) => takesInOrder(day).find((take) => takeText(take) === name)!.id;
const on = (track: string, before?: string) =>
  answersBefore(day, before).tracks.find((one) => one.track.id === track)!;

test('a shared track is named with what is wrong, and who is on it since when', () => {
  expect(trackTitle(on('tr22'))).toBe('Track 22: clash');
  expect(trackUnder(day, on('tr22'), undefined)).toBe('Marek and Usher, since 45A/1');
  expect(trackTitle(on('tr24'))).toBe('Track 24: gang');
  expect(trackTitle(on('tr23'))).toBe('Track 23: nobody');
  expect(trackUnder(day, on('tr23'), undefined)).toBe('');
});

test('at an earlier place it is the same track as it was there, and what is missing there is said', () => {
  const before = idOf('44/3');
  expect(trackTitle(on('tr22', before))).toBe('Track 22: Marek');
  expect(trackUnder(day, on('tr22', before), before)).toBe('before 44/3 · Marek, since 44/1');
  expect(notThereWords(day, 'clash', on('tr22', before), before)).toBe('No clash on track 22 before 44/3.');
  expect(notThereWords(day, 'clash', on('tr22'), undefined)).toBe('');
  expect(notThereWords(day, 'single', on('tr22', before), before)).toBe('');
});
