import { describe, expect, test } from 'vitest';
import { castInOrder, holderOf, isFoundBy, struckFrom } from '../../src/day/cast-in-order.ts';
import type { VoiceFields } from '../../src/facts/kinds/voice-described.ts';
import { speaker } from './say.ts';

function dayWith(...cast: (VoiceFields & { id: string })[]) {
  const phone = speaker();
  for (const { id, ...fields } of cast) phone.say({ kind: 'voice-described', voice: id, fields });
  return phone.day();
}
const ids = (voices: readonly { id: string }[]) => voices.map(({ id }) => id);

describe('the order of the cast', () => {
  test('puts performers by priority, then booms, plants and feeds', () => {
    const day = dayWith(
      { id: 'feed', kind: 'feed', part: 'Playback', priority: 1 },
      { id: 'plant', kind: 'plant', part: 'Bar top', priority: 1 },
      { id: 'boom', kind: 'boom', part: 'Boom', priority: 1 },
      { id: 'second', part: 'Dora', number: '1', priority: 2 },
      { id: 'first', part: 'Ines', number: '9', priority: 1 },
    );
    expect(ids(castInOrder(day))).toEqual(['first', 'second', 'boom', 'plant', 'feed']);
  });

  test('puts cast numbers of one priority as numbers, and those without one last', () => {
    const day = dayWith(
      { id: 'none', part: 'A', number: '' },
      { id: 'ten', part: 'B', number: '10' },
      { id: 'twoA', part: 'C', number: '2A' },
      { id: 'two', part: 'D', number: '2' },
    );
    expect(ids(castInOrder(day))).toEqual(['two', 'twoA', 'ten', 'none']);
  });

  test('leaves those struck off out, and lists them apart', () => {
    const day = dayWith({ id: 'here', part: 'Ines' }, { id: 'gone', part: 'Dora', struck: true });
    expect(ids(castInOrder(day))).toEqual(['here']);
    expect(ids(struckFrom(day))).toEqual(['gone']);
  });

  test('tells who has a cast number, struck off or not, and nobody for none', () => {
    const day = dayWith({ id: 'a', part: 'Ines', number: '2A', struck: true }, { id: 'b', part: 'Dora' });
    expect(holderOf(day, ' 2a ')?.id).toBe('a');
    expect(holderOf(day, '')).toBeUndefined();
    expect(holderOf(day, '2')).toBeUndefined();
  });
});

describe('finding somebody', () => {
  const day = dayWith({
    id: 'zoe',
    part: 'Zoë of the Mill',
    person: "Ada O'Neil",
    number: '12',
    place: 'yard',
  });
  const [zoe] = castInOrder(day);

  test.each(['', ' ', 'zoe', 'ZOË', 'mill', 'ada', 'neil', '12', '1', 'yard', 'ad zo'])(
    'finds her by “%s”',
    (typed) => {
      expect(isFoundBy(zoe!, typed)).toBe(true);
    },
  );

  test.each(['ill', 'dora', 'zoe dora', '2', '('])('does not find her by “%s”', (typed) => {
    expect(isFoundBy(zoe!, typed)).toBe(false);
  });
});
