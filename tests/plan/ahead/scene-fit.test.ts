import { describe, expect, test } from 'vitest';
import { type SceneFit, sceneFits } from '../../../src/plan/ahead/scene-fit.ts';
import { fitSentences, fitWord } from '../../../src/ui/cast/scenes/fit-words.ts';
import { type Speaker, speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';

/** Three packs, three channels and four tracks, one of them the boom's; five performers. */
function day(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'voice-described', voice: 'mila', fields: { part: 'Mila', number: '4', priority: 5 } });
  phone.say({
    kind: 'scenes-described',
    scenes: [
      { scene: 's1', fields: { number: '1', voices: ['ines', 'dora'], order: 1 } },
      { scene: 's2', fields: { number: '2', voices: ['ines', 'dora', 'tomas', 'mila'], order: 2 } },
      {
        scene: 's3',
        fields: { number: '3', voices: ['ines', 'dora', 'tomas', 'mila'], order: 3, state: 'moved' },
      },
    ],
  });
  return phone;
}

const fitsOf = (phone: Speaker): SceneFit[] => [...sceneFits(phone.day())].filter((fit) => fit !== undefined);

describe('the scenes of a day against the rig', () => {
  test('say what each needs of what there is; those done or moved are not asked about', () => {
    const [first, second, ...others] = fitsOf(day());
    expect(others).toEqual([]);
    expect(first).toMatchObject({
      scene: 's1',
      needs: { packs: 2, channels: 2, tracks: 3 },
      there: { packs: 3, channels: 3, tracks: 4 },
      leftOut: [],
    });
    expect(second).toMatchObject({ scene: 's2', needs: { packs: 4, channels: 4, tracks: 5 } });
  });

  test('the one that does not fit is named with who is left out, and what would make it fit', () => {
    const phone = day();
    const [first, second] = fitsOf(phone) as [SceneFit, SceneFit];
    expect(fitWord(first)).toBe('');
    expect(fitSentences(phone.day(), first)).toEqual([]);
    expect(second.leftOut.map(({ voice }) => voice)).toEqual(['mila']);
    expect(second.exact).toBe(true);
    expect(fitWord(second)).toBe('does not fit');
    const said = fitSentences(phone.day(), second);
    expect(said[0]).toBe('Mila would not be recorded.');
    expect(said).toContain('Or with 1 lavalier fewer: a plant or the boom for Mila.');
  });

  test('one more of what is short makes it fit, if that alone does', () => {
    const phone = day();
    phone.say({ kind: 'part-described', part: 'tr6', fields: { type: 'track', name: '6' } });
    phone.say({
      kind: 'rig-laid',
      parts: [
        { part: 'aes4', fields: { type: 'input', name: 'AES 4', inputKind: 'aes3' } },
        { part: 'near4', fields: { type: 'channel', name: 'near 4', receiver: 'near' } },
        {
          part: 'near4out',
          fields: {
            type: 'output',
            name: 'near 4',
            receiver: 'near',
            outputKind: 'aes3',
            carries: ['near4'],
          },
        },
      ],
    });
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes4', tracks: ['tr6'] }] });
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l4', from: 'near4out', to: 'aes4' }] });
    const second = fitsOf(phone)[1]!;
    expect(second.leftOut.map(({ voice, why }) => [voice, why.code])).toEqual([
      ['mila', 'no-transmitter-left'],
    ]);
    expect(second.addition).toEqual({ kind: 'transmitter', voices: ['mila'] });
    expect(fitSentences(phone.day(), second)[1]).toBe(
      'It fits better with one more pack: that records Mila.',
    );
    phone.say({
      kind: 'part-described',
      part: 'A4',
      fields: { type: 'transmitter', name: 'A4', wear: 'pack' },
    });
    expect(fitsOf(phone)[1]!.leftOut).toEqual([]);
  });
});
