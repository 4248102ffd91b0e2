import { expect, test } from 'vitest';
import { micsProposed } from '../../../src/day/season/mics-proposed.ts';
import type { KnownMic } from '../../../src/day/season/season.ts';

const on = (pack: string, place: string): KnownMic => ({
  pack,
  mic: { model: '', colour: '', place, cable: '', rubs: '' },
});
const fresh = (pack: string) => ({ pack, isSaid: false });
const places = (...proposed: ReturnType<typeof micsProposed>) => proposed.map((one) => one?.mic.place);

test('a mic is proposed for the pack it was on, else for one that was not there, each once', () => {
  const known = [on('A1', 'chest'), on('A2', 'hair')];
  expect(places(...micsProposed([fresh('A2'), fresh('A1')], known))).toEqual(['hair', 'chest']);
  expect(places(...micsProposed([fresh('B1'), fresh('A2')], known))).toEqual(['chest', 'hair']);
  expect(places(...micsProposed([fresh('B1'), fresh('B2'), fresh('B3')], known))).toEqual([
    'chest',
    'hair',
    undefined,
  ]);
  expect(places(...micsProposed([{ pack: 'A1', isSaid: true }, fresh('B1')], known))).toEqual([
    undefined,
    'hair',
  ]);
});
