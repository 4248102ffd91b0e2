import { describe, expect, test } from 'vitest';
import { loadSample } from '../../../sample-days/load.ts';
import { reportOf } from '../../../src/report/model.ts';
import { matterText } from '../../../src/report/printed/matter-words.ts';
import { placeOf } from '../../../src/ui/wrap/matter-place.ts';
import { take } from '../../day/say.ts';
import { smallDay } from '../../report/report-day.ts';

const TAKES = { takes: ['t1', 't2'], names: ['24/1', '24/1'] };

describe('a matter that is not settled', () => {
  test('leads to the track, from the first take it shows at', () => {
    const { open } = reportOf(loadSample('full'));
    const clash = open.find(({ code }) => code === 'clash')!;
    expect(matterText(clash)).toContain('44/1');
    expect(placeOf(clash)).toEqual({ sheet: 'track', track: clash.track, from: clash.takes![0] });
  });

  test('leads to the take that lacks something', () => {
    const { phone } = smallDay();
    const bare = phone.id(take('26', 0, 1, { start: null }));
    const matter = reportOf(phone.day()).open.find(({ code }) => code === 'takes-without-start')!;
    expect(placeOf(matter)).toEqual({ sheet: 'take', take: bare });
  });

  test.each([
    ['takes-numbered-twice', { sheet: 'take', take: 't2' }],
    ['files-named-twice', { sheet: 'take', take: 't2' }],
    ['takes-without-length', { sheet: 'take', take: 't1' }],
    ['said-open', { sheet: 'day' }],
    ['facts-unknown', { sheet: 'day' }],
    ['take-open', { tab: 'now' }],
    ['clash-on-input', { tab: 'rig' }],
    ['phones-differ', { sheet: 'conflicts' }],
    ['of-a-newer-version', { tab: 'line' }],
  ])('%s has a place', (code, place) => {
    expect(placeOf({ code, ...TAKES })).toEqual(place);
  });

  test('of a voice leads to the voice', () => {
    expect(placeOf({ code: 'voice-unrecorded', voice: 'ines', ...TAKES })).toEqual({
      sheet: 'voice',
      voice: 'ines',
      from: 't1',
    });
  });
});
