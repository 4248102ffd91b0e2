import { describe, expect, test } from 'vitest';
import { answersNow } from '../../../../src/day/answers/answers.ts';
import { boxPlaces, chainBoxes } from '../../../../src/ui/frame/sheets/chain-boxes.ts';
import { type Speaker, speaker } from '../../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../../day/small-rig.ts';

function wearing(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  return phone;
}

/** Each box with its word; `x` where the chain breaks before it. */
function drawn(phone: Speaker, voice: string): string[][] {
  const day = phone.day();
  const answers = answersNow(day);
  const answer = answers.voices.find((one) => one.voice.id === voice)!;
  return answer.paths.map((path) =>
    chainBoxes(day, answers, answer, path).map(
      ({ name, word, breaksBefore }) => `${breaksBefore ? 'x ' : ''}${name}${word && `: ${word}`}`,
    ),
  );
}

describe('the chain of a voice', () => {
  test('goes from the body by pack, channel, output, selector and input to the track', () => {
    const phone = wearing();
    phone.say({ kind: 'part-described', part: 'near1out', fields: { name: 'out 1' } });
    phone.say({
      kind: 'part-described',
      part: 'sel1',
      fields: { type: 'selector', name: 'selector 1', input: 'aes1', positions: ['cart', 'far box'] },
    });
    expect(drawn(phone, 'ines')).toEqual([
      [
        'Ines: body',
        'A1: pack',
        'near 1: channel',
        'out 1: AES3',
        'selector 1: at cart',
        'AES 1: AES3 input',
        'track 3: iso, pre-fader',
      ],
    ]);
  });

  test('has one box for a channel and an output of one name, and none of the air for a hardline', () => {
    expect(drawn(wearing(), 'ines')[0]).toContain('near 1: channel, AES3');
    expect(drawn(wearing(), 'boom')).toEqual([['Boom: boom', 'in 1: mic input', 'track 2: iso, pre-fader']]);
  });

  test.each<[string, Parameters<Speaker['say']>[0] | null, string, readonly string[]]>([
    ['no pack', null, 'dora', ['Dora: body', 'x no pack']],
    [
      'no channel tuned to the pack',
      { kind: 'channels-tuned', tunings: [{ channel: 'near1', transmitter: null }] },
      'ines',
      ['Ines: body', 'A1: pack', 'x no channel'],
    ],
    [
      'an output without a lead',
      { kind: 'part-described', part: 'near1out', fields: { carries: [] } },
      'ines',
      ['Ines: body', 'A1: pack', 'near 1: channel', 'x no output'],
    ],
    [
      'a lead that hangs free',
      { kind: 'leads-plugged', leads: [{ lead: 'l1', from: 'near1out', to: null }] },
      'ines',
      ['Ines: body', 'A1: pack', 'near 1: channel, AES3', 'x loose lead'],
    ],
    [
      'a lead that another pushed out',
      { kind: 'leads-plugged', leads: [{ lead: 'l2', from: 'near2out', to: 'aes1' }] },
      'ines',
      ['Ines: body', 'A1: pack', 'near 1: channel, AES3', 'x AES 1: another lead'],
    ],
    [
      'an input that feeds no track',
      { kind: 'inputs-sent', routes: [{ input: 'aes1', tracks: [] }] },
      'ines',
      ['Ines: body', 'A1: pack', 'near 1: channel, AES3', 'AES 1: AES3 input', 'x no track'],
    ],
  ])('is broken at %s', (_, said, voice, boxes) => {
    const phone = wearing();
    if (said) phone.say(said);
    expect(drawn(phone, voice)).toEqual([boxes]);
  });

  test('is broken after a selector that is thrown the other way', () => {
    const phone = wearing();
    phone.say({
      kind: 'part-described',
      part: 'sel1',
      fields: { type: 'selector', name: 'selector 1', input: 'aes1' },
    });
    phone.say({ kind: 'selectors-thrown', selectors: ['sel1'], position: 'b' });
    expect(drawn(phone, 'ines')[0]!.slice(3)).toEqual(['selector 1: at B', 'x AES 1: AES3 input']);
  });

  test('names what mutes it, and who shares the track', () => {
    const phone = wearing();
    phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    expect(drawn(phone, 'ines')[0]).toContain('A1: muted');
    const sharing = wearing();
    sharing.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    sharing.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    expect(drawn(sharing, 'ines')[0]!.at(-1)).toBe('track 3: clash');
  });
});

describe('the boxes', () => {
  const laid = (count: number): string[] =>
    boxPlaces(count).map(({ row, column, from }) => `${row}.${column} ${from}`);

  test('stand in one row up to four', () => {
    expect(laid(3)).toEqual(['1.1 none', '1.2 start', '1.3 start']);
  });

  test('go there and back in two rows', () => {
    expect(laid(6)).toEqual(['1.1 none', '1.2 start', '1.3 start', '2.3 top', '2.2 end', '2.1 end']);
    expect(laid(7).slice(3)).toEqual(['1.4 start', '2.4 top', '2.3 end', '2.2 end']);
  });
});
