import { describe, expect, test } from 'vitest';
import { redo, undo } from '../../../src/commands/line/undo.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { undoneWords } from '../../../src/ui/words/actions.ts';
import { type Speaker, speaker, take } from '../../day/say.ts';
import { EXAMPLE_BODIES, TAKE_ID } from '../../facts/example-bodies.ts';

/** A day that has every part, voice and take that the example bodies speak of, each under a name that is not its id. */
function day(): Speaker {
  const phone = speaker();
  const part = (id: string, type: string, name: string) => ({ part: id, fields: { type, name } });
  phone.say({ kind: 'day-described', fields: { production: 'The Salt Road' } });
  phone.say({
    kind: 'rig-laid',
    parts: [
      part('in-1', 'input', 'Input 1'),
      part('tr-2', 'track', '2'),
      part('sel-1', 'selector', 'Switch 1'),
      part('out-1', 'output', 'AES 1'),
      part('ch-1', 'channel', 'near 1'),
      part('ch-2', 'channel', 'near 2'),
      part('tx-1', 'transmitter', 'A1'),
      part('tx-2', 'transmitter', 'A2'),
      part('tx1', 'transmitter', 'A3'),
    ],
  } as Draft);
  phone.say({ kind: 'voice-described', voice: 'v1', fields: { part: 'Ines' } });
  phone.say({ kind: 'voice-described', voice: 'v-1', fields: { part: 'Dora' } });
  phone.say({ kind: 'devices-described', devices: ['slate-1'], fields: { name: 'Slate 1' } });
  while (phone.facts.length < 9) phone.say({ kind: 'roll-changed', roll: '1' });
  expect(phone.id(take('24', 1, 1))).toBe(TAKE_ID);
  const [other] = speaker('phoneb').say(take('24', 1, 2));
  phone.facts.push({ ...other!, id: '00000c-phoneb00000' });
  return phone;
}

/** What the screen says of the undo of the last action, and of the redo after it. */
function undone(phone: Speaker): { back: string; again: string } {
  const sayAll = (command: typeof undo): Fact[] => {
    const said = command(phone.day(), 'phonea');
    if (!said.ok) throw new Error(said.problem.code);
    return phone.say(...said.value);
  };
  const back = undoneWords(phone.day(), sayAll(undo));
  return {
    back,
    again: undoneWords(
      phone.day(),
      sayAll((now, database) => redo(now, database)),
    ),
  };
}

type NoStep =
  | 'report-sent'
  | 'phone-named'
  | 'writer-admitted'
  | 'writer-removed'
  | 'day-passed-on'
  | 'fact-retracted';

/** Every kind that undo can take back. A report that went out is never undone, nor is who holds a phone or may write. */
const WORDS: Record<Exclude<Fact['kind'], NoStep>, string> = {
  'day-described': 'day details: production, day, date and 14 more',
  'voice-described': 'Ines back in the cast',
  'part-described': 'Input 1 renamed',
  'rig-laid': 'rig: 3 parts',
  'transmitter-worn': 'A1 on Ines',
  'channels-tuned': 'near 1 tuned to A1',
  'leads-plugged': 'AES 1 into Input 1',
  'selectors-thrown': 'Switch 1 to A',
  'inputs-sent': 'Input 1 to track 2',
  'mute-set': 'Input 1 muted',
  'gang-declared': 'near 1 and near 2 ganged on track 2',
  'gang-ended': 'near 1 and near 2 not ganged on track 2 any more',
  'track-named': 'track 2 named Crowd by hand',
  'voices-needed': 'scene 24: nobody',
  'scenes-described': 'scene 24 done',
  'roll-changed': 'roll 004',
  'recorders-rolling': 'Recorder rolling',
  'recorder-set': '23.976 fps, 48 kHz, 24-bit, one file of all tracks and file names {slate}T{take}',
  'voice-pinned': 'Dora pinned: A3 and alone on bag',
  'out-marked': 'A3 out of order',
  'moves-weighed': 'what to avoid changed',
  'mic-mounted':
    'mic of Ines on A1: black Omni lavalier, chest, down the back, rubs on necklace, as yesterday',
  'slate-called': 'slate 24B',
  'take-logged': 'take 24B/3',
  'take-described': '24A/1 edited: circle, start and length',
  'note-added': 'note on 24A/1: Plane',
  'clock-followed': 'clock synced to 00:50:03;00 by ear',
  'guards-set': 'minimum spacing set',
  'carrier-described': 'Comms base on 455.500 MHz',
  'band-described': 'Packs A edited',
  'transmitters-switched': 'A1 and A2 switched off',
  'cells-changed': 'fresh batteries in A1',
  'devices-jammed': 'Slate 1 jammed from Recorder',
  'timecode-compared': 'Slate 1 compared with Recorder',
  'devices-described': 'Slate 1 edited',
  'card-described': 'Card A edited',
  'shift-planned': 'hours of the day set',
  'run-described': 'Far box edited',
  'leads-described': '2 leads edited',
  'listener-described': 'Director edited',
  'fact-moved': 'take 24A/1 moved back',
  'conflict-resolved': 'resolved: 24A/1',
  'takes-joined': '24A/1 and 24A/2 as one take',
  'card-checked': 'card checked: 12 files',
  'move-ticked': 'a move ticked',
  'day-wrapped': 'day wrapped',
  'difference-kept': 'log kept against the card: 24BT3.wav',
  'handed-over': 'Card A and Drive 3 handed over to Sam Okafor',
};

describe('undo says what it undid, and redo what it brought back', () => {
  test.each(Object.entries(WORDS))('of %s', (kind, words) => {
    const phone = day();
    phone.say({ kind, ...EXAMPLE_BODIES[kind as Fact['kind']] } as Draft);
    expect(undone(phone)).toEqual({ back: words, again: words });
  });

  test('of a recorder besides the first, by its name', () => {
    const phone = day();
    phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Bag' } });
    phone.say({ kind: 'recorder-set', recorder: 'b', settings: { timecodeRate: '24' } });
    expect(undone(phone).back).toBe('24 fps on Bag');
  });

  test('of what was taken back by hand, and of what was brought back', () => {
    const phone = day();
    const [back] = phone.say({ kind: 'fact-retracted', targets: [TAKE_ID], by: 'hand' });
    expect(undone(phone).back).toBe('take 24A/1 removed');
    phone.say({ kind: 'fact-retracted', targets: [back!.id], by: 'hand' });
    expect(undone(phone).back).toBe('take 24A/1 brought back');
  });

  test('by name also where the name is gone with it: a part, a voice, a device', () => {
    const phone = day();
    const gone = (...drafts: Draft[]): string => {
      phone.say(...drafts);
      return undone(phone).back;
    };
    const tx9 = { type: 'transmitter' as const, name: 'A9' };
    expect(
      gone(
        { kind: 'part-described', part: 'tx-9', fields: tx9 },
        { kind: 'transmitter-worn', transmitter: 'tx-9', voice: 'v1' },
      ),
    ).toBe('A9 added and A9 on Ines');
    expect(gone({ kind: 'voice-described', voice: 'v9', fields: { part: 'Tomas' } })).toBe('Tomas added');
    expect(
      gone(
        { kind: 'devices-described', devices: ['slate-9'], fields: { name: 'Slate 9' } },
        { kind: 'devices-jammed', devices: ['slate-9'], from: 'recorder', atMs: 1 },
      ),
    ).toBe('Slate 9 edited and Slate 9 jammed from Recorder');
    expect(gone({ kind: 'part-described', part: 'tx-1', fields: { struck: true } })).toBe('A1 deleted');
    expect(gone({ kind: 'voice-described', voice: 'v1', fields: { struck: true } })).toBe(
      'Ines removed from the cast',
    );
  });

  test('of an action of many entries: the first of them, and how many more', () => {
    const phone = day();
    phone.say(...[1, 2, 3, 4].map((number) => take('25', 1, number)));
    expect(undone(phone).back).toBe('take 25A/1, take 25A/2 and 2 more entries');
  });

  test('of what one tap says of a take', () => {
    const tapped = (fields: object): string => {
      const phone = day();
      phone.say({ kind: 'take-described', take: TAKE_ID, fields } as Draft);
      return undone(phone).back;
    };
    expect(tapped({ cutAt: 1, length: { frames: 250, rate: '25' } })).toBe('cut of 24A/1');
    expect(tapped({ circled: true })).toBe('24A/1 circled');
    expect(tapped({ circled: false })).toBe('24A/1 not circled');
    expect(tapped({ noGood: true })).toBe('24A/1 NG');
    expect(tapped({ falseStart: true })).toBe('24A/1 a false start');
    expect(tapped({ tailSlate: true })).toBe('tail slate on 24A/1');
  });

  test('in one line, however long the note', () => {
    const phone = day();
    phone.say({ kind: 'note-added', take: TAKE_ID, text: 'Plane over the harbour '.repeat(100) });
    expect(undone(phone).back.length).toBeLessThan(90);
  });
});
