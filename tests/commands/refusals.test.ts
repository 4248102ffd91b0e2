import { describe, expect, test } from 'vitest';
import {
  movedBy,
  nextRank,
  rankVoices,
  reinstateVoice,
  strikeVoice,
} from '../../src/commands/cast/change-cast.ts';
import { type CommandResult, together } from '../../src/commands/command.ts';
import { addCast } from '../../src/commands/day/describe.ts';
import {
  declareGang,
  dissolveGang,
  giveTransmitter,
  markNeed,
  nameTrack,
  sendInput,
  setMute,
  throwSelectors,
  tuneChannel,
} from '../../src/commands/line/change-chain.ts';
import { bringBack, moveBefore, takeBack } from '../../src/commands/line/correct.ts';
import { addNote, cutTake, describeTake, rollTake } from '../../src/commands/line/log-takes.ts';
import { pinVoice } from '../../src/commands/line/plan-ahead.ts';
import { addOutput, addSend, addTracks, unfedTracks } from '../../src/commands/rig/grow-rig.ts';
import { addReceiver, addSelectors, plugBlock, tuneBlock } from '../../src/commands/rig/lay-rig.ts';
import { freeNames } from '../../src/commands/rig/part-names.ts';
import { inputsFrom, likelyInput, outputsFor, pairUp, plugRun } from '../../src/commands/rig/plug-run.ts';
import { describeLeads, putOnSnake } from '../../src/commands/upkeep/describe-runs.ts';
import { jamDevices } from '../../src/commands/upkeep/keep-up.ts';
import { markOccupied } from '../../src/commands/upkeep/plan-radio.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import type { Day } from '../../src/day/model.ts';
import { MORNING, speaker, take } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';
import { laidRig, problemOf } from './rig-day.ts';

const NOW = { atMs: MORNING, zone: 120 };
const phone = speaker();
phone.say(...SMALL_RIG, ...SMALL_CAST, { kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
const takeId = phone.id(take('24', 1, 1));
const day = phone.day();
const said = <T = unknown>(command: CommandResult): T => (command.ok ? command.value : command.problem) as T;

describe('a command that names what is not there is refused, and one that names what is, is not', () => {
  test.each<[string, string, (id: string) => CommandResult, wrong: string, right: string]>([
    ['a pack given', 'transmitter', (id) => giveTransmitter(day, id, 'ines'), 'none', 'A1'],
    ['who gets a pack', 'voice', (id) => giveTransmitter(day, 'A1', id), 'none', 'dora'],
    ['a channel tuned', 'channel', (id) => tuneChannel(day, id, 'A1'), 'none', 'near1'],
    ['what it is tuned to', 'transmitter', (id) => tuneChannel(day, 'near1', id), 'none', 'A2'],
    ['what a lead is plugged from', 'output', (id) => plugRun(day, [id], [null]), 'none', 'near1out'],
    ['a hardline', 'output', (id) => plugRun(day, [id], [null]), 'none', 'boom'],
    ['where a lead is plugged', 'input', (id) => plugRun(day, ['near1out'], [id]), 'tr2', 'in1'],
    ['an input that is sent', 'input', (id) => sendInput(day, id, []), 'tr2', 'in1'],
    ['where an input is sent', 'iso track', (id) => sendInput(day, 'in1', [id]), 'tr1', 'tr2'],
    ['another place an input is sent', 'iso track', (id) => sendInput(day, 'in1', ['tr2', id]), 'in1', 'tr3'],
    ['what is muted', 'input', (id) => setMute(day, id, true), 'tr2', 'A1'],
    ['an input that is muted', 'input', (id) => setMute(day, id, true), 'none', 'in1'],
    ['a track whose gang ends', 'track', (id) => dissolveGang(day, id), 'none', 'tr3'],
    ['a track that is named', 'track', (id) => nameTrack(day, id, 'x'), 'none', 'tr3'],
    ['who is needed', 'voice', (id) => markNeed(day, ['ines', id], 'needed'), 'none', 'dora'],
    ['who is struck', 'voice', (id) => strikeVoice(day, id), 'none', 'dora'],
    ['who is back', 'voice', (id) => reinstateVoice(day, id), 'none', 'dora'],
    ['who is ranked', 'voice', (id) => rankVoices(day, ['tomas', id]), 'none', 'ines'],
    ['who is pinned', 'voice', (id) => pinVoice(day, id, { alone: true }), 'none', 'ines'],
    ['a take that is described', 'take', (id) => describeTake(day, id, {}), 'none', takeId],
    ['a take with a note', 'take', (id) => addNote(day, id, 'x'), 'none', takeId],
    ['where a change goes', 'take', (id) => moveBefore(day, phone.facts[9]!.id, id), 'none', takeId],
    [
      'a receiver',
      'receiver',
      (id) => addOutput(day, id, { name: 'x', kind: 'aes3', channel: null }, 'x'),
      'in1',
      'near',
    ],
    [
      'a channel of an output',
      'channel',
      (id) => addOutput(day, 'near', { name: 'x', kind: 'aes3', channel: id }, 'x'),
      'none',
      'near1',
    ],
    ['what a run is from', 'output', (id) => plugRun(day, [id], ['in1']), 'none', 'near1out'],
    ['where a run goes', 'input', (id) => plugRun(day, ['near1out'], [id]), 'tr2', 'in1'],
    ['an input with a selector', 'input', (id) => addSelectors(day, [id], ['a', 'b']), 'tr2', 'in1'],
    ['what is jammed', 'device', (id) => jamDevices(day, [id], NOW), 'in1', 'A1'],
    ['what it is jammed from', 'device', (id) => jamDevices(day, ['A1'], NOW, id), 'in1', 'A2'],
  ])('%s', (_, what, command, wrong, right) => {
    expect(problemOf(command(wrong))).toEqual({ code: 'not-on-this-day', what, id: wrong });
    expect(command(right).ok).toBe(true);
  });

  test.each<[string, CommandResult]>([
    ['not-on-this-day', throwSelectors(day, [], 'a')],
    ['not-on-this-day', throwSelectors(laidRig('cart').day(), ['sel-line1', 'line1'], 'a')],
    ['not-on-this-day', markNeed(day, [], 'needed')],
    ['not-on-this-day', moveBefore(day, 'none', null)],
    ['not-on-this-day', moveBefore(day, phone.facts[0]!.id, null)],
    ['not-on-this-day', markOccupied(day, 'b', { name: '', fromKhz: 1, toKhz: 2 }, false)],
    ['not-on-this-day', declareGang(day, 'none')],
    ['gang-of-one', declareGang(day, 'tr3')],
    ['before-itself', moveBefore(day, takeId, takeId)],
    ['already-taken-back', takeBack(day, [])],
    ['not-taken-back', bringBack(day, [takeId])],
    ['block-empty', plugRun(day, [], ['in1'])],
    ['block-empty', plugRun(day, ['near1out'], [])],
    ['block-empty', plugBlock([], ['in1'])],
    ['block-empty', tuneBlock(['near1'], [])],
    ['block-empty', addSelectors(day, [], ['a', 'b'])],
    ['nothing-chosen', describeLeads([], {})],
    ['nothing-chosen', putOnSnake([], 'x', 'aes3')],
    ['name-empty', putOnSnake(['l1'], ' ', 'aes3')],
    ['name-empty', addSelectors(day, ['in1'], ['a', ' '])],
    [
      'name-taken',
      addReceiver(
        day,
        { name: ' near ', place: 'bag', modules: [{ name: '', channels: 1, outputs: 'aes3' }] },
        'x',
      ),
    ],
    ['jam-from-itself', jamDevices(day, ['A1'], NOW, 'A1')],
    ['no-take-open', cutTake(day, NOW)],
    ['nothing-changed', rankVoices(day, ['ines', 'dora'])],
    ['cast-empty', addCast(day, [], () => 'x')],
    ['selector-there', addSelectors(laidRig('cart').day(), ['line2', 'line1'], ['a', 'b'])],
  ])('%s', (code, command) => {
    expect(problemOf(command)?.code).toBe(code);
  });

  test('several commands say all of it, or the first problem', () => {
    const [one, two] = [nameTrack(day, 'tr2', 'a'), nameTrack(day, 'tr3', 'b')];
    expect(said(together(one, two))).toHaveLength(2);
    expect(said(together())).toEqual([]);
    expect(together(one, rankVoices(day, ['none']), declareGang(day, 'tr3'))).toMatchObject({
      problem: { code: 'not-on-this-day', what: 'voice' },
    });
  });
});

describe('what a command says', () => {
  test('of a name typed for a track is 200 characters of it, or none', () => {
    const named = (name: string) => said(nameTrack(day, 'tr3', name));
    expect(named(` ${'x'.repeat(250)} `)).toEqual([
      { kind: 'track-named', track: 'tr3', name: 'x'.repeat(200) },
    ]);
    expect(named('  ')).toEqual([{ kind: 'track-named', track: 'tr3', name: null }]);
  });

  test('of a mute says whether it is an input or a pack', () => {
    expect(said(setMute(day, 'A1', true))).toEqual([
      { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true },
    ]);
    expect(said(setMute(day, 'in1', false))).toEqual([
      { kind: 'mute-set', what: 'input', part: 'in1', muted: false },
    ]);
  });

  test('of blocks goes as far as both ends', () => {
    expect(said(tuneBlock(['near1', 'near2', 'near3'], ['A3', 'A2']))).toEqual([
      {
        kind: 'channels-tuned',
        tunings: [
          { channel: 'near1', transmitter: 'A3' },
          { channel: 'near2', transmitter: 'A2' },
        ],
      },
    ]);
    expect(said(plugBlock(['o1'], ['in1', 'in2'], 'b'))).toEqual([
      { kind: 'leads-plugged', leads: [{ lead: 'lead-o1', from: 'o1', to: 'in1', position: 'b' }] },
    ]);
    expect(pairUp([1, 2, 3], ['a'])).toEqual({ pairs: [[1, 'a']], left: [2, 3] });
    expect(pairUp([1], ['a', 'b'])).toEqual({ pairs: [[1, 'a']], left: [] });
  });

  test('of a circle or NG takes the other off, and says nothing more of it', () => {
    const of = (fields: object) => said<[{ fields: object }]>(describeTake(day, takeId, fields))[0]!.fields;
    expect(of({ circled: true })).toEqual({ circled: true, noGood: false });
    expect(of({ noGood: true })).toEqual({ noGood: true, circled: false });
    expect(of({ circled: false })).toEqual({ circled: false });
    expect(of({ noGood: false })).toEqual({ noGood: false });
    expect(of({ circled: true, noGood: true })).toEqual({ circled: false, noGood: true });
  });

  test('of a cut is the time that passed, up to a day, and never less than none', () => {
    const rolling = speaker();
    const roll = rollTake(rolling.day(), NOW);
    rolling.say(...(roll.ok ? roll.value : []));
    const lengthAfter = (ms: number) => {
      const cut = cutTake(rolling.day(), { ...NOW, atMs: NOW.atMs + ms });
      return cut.ok ? (cut.value[0] as { fields: { length: object | null } }).fields.length : cut.problem;
    };
    expect(lengthAfter(10_000)).toEqual({ frames: 250, rate: '25' });
    expect(lengthAfter(86_400_000)).toEqual({ frames: 2_160_000, rate: '25' });
    expect(lengthAfter(86_400_001)).toBeNull();
    expect(lengthAfter(-5000)).toEqual({ frames: 0, rate: '25' });
  });

  test('of a setup without sound rolls nothing', () => {
    const mos = rollTake(speaker().day(), NOW, 'mos');
    expect(mos.ok && (mos.value[0] as { fields: object }).fields).not.toHaveProperty('rolledAt');
  });

  test('of priorities ends at 499, and what has none counts for none', () => {
    const ranked = speaker();
    const voices = Array.from({ length: 502 }, (_, at) => `v${at}`);
    ranked.say(
      ...voices.map((voice) => ({ kind: 'voice-described', voice, fields: { part: voice } }) as const),
    );
    expect(nextRank(ranked.day())).toBe(1);
    const order = said<{ fields: { priority: number } }[]>(rankVoices(ranked.day(), voices));
    expect(order.map(({ fields }) => fields.priority).slice(-5)).toEqual([498, 499, 499, 499, 499]);
    ranked.say({ kind: 'voice-described', voice: 'v3', fields: { priority: 499 } });
    expect(nextRank(ranked.day())).toBe(499);
    ranked.say({ kind: 'voice-described', voice: 'v3', fields: { priority: 500 } });
    expect(nextRank(ranked.day())).toBe(1);
    expect(movedBy(['a', 'b', 'c'], 'a', 1)).toEqual(['b', 'a', 'c']);
    expect([movedBy(['a', 'b'], 'a', -1), movedBy(['a', 'b'], 'b', 1)]).toEqual([
      ['a', 'b'],
      ['a', 'b'],
    ]);
  });
});

describe('what a command finds', () => {
  const bag: Day = laidRig('bag').day();

  test('of free names are the first that nothing of the kind bears', () => {
    expect(freeNames(day, 'input', 'AES', 2)).toEqual(['AES 4', 'AES 5']);
    expect(freeNames(day, 'track', '', 2)).toEqual(['6', '7']);
  });

  test('of inputs are those of the kind from one on, without those kept for something', () => {
    const ids = (first: string, of = day) => inputsFrom(of.rig, first).map(({ id }) => id);
    expect([ids('aes2'), ids('in1'), ids('none')]).toEqual([['aes2', 'aes3'], ['in1'], []]);
    const kept = speaker();
    kept.say(...SMALL_RIG, { kind: 'part-described', part: 'aes2', fields: { reserved: 'comms' } });
    expect(ids('aes1', kept.day())).toEqual(['aes1', 'aes3']);
  });

  test('of outputs are those that carry a voice, of one module or all', () => {
    const ids = (module?: string) => outputsFor(bag.rig, 'near', module).map(({ id }) => id);
    expect(ids()).toEqual(['near-out1', 'near-out2', 'near-out3', 'near-out4']);
    expect([ids('digital').length, ids('line')]).toEqual([4, []]);
  });

  test('of an input is the first free one that fits, else the first free one, else the first', () => {
    const free = speaker();
    free.say(...SMALL_RIG.slice(0, 2));
    const likely = (kind?: Parameters<typeof likelyInput>[1]) => likelyInput(answersNow(free.day()), kind);
    expect([likely('aes3'), likely('analogue'), likely('slot'), likely(undefined)]).toEqual([
      'aes1',
      'in1',
      'in1',
      'in1',
    ]);
    expect(likelyInput(answersNow(bag), 'aes3')).toBe('mic1');
    for (const [kind, fits] of [
      ['return', 'analogue'],
      ['slot', 'slot'],
      ['network', 'network'],
    ] as const) {
      const part = { part: `x-${kind}`, fields: { type: 'input', name: kind, inputKind: kind } } as const;
      free.say({ kind: 'rig-laid', parts: [part] });
      expect(likely(fits)).toBe(`x-${kind}`);
    }
  });

  test('of tracks are those that nothing feeds, and the next number is after all of them', () => {
    expect(unfedTracks(day)).toEqual([]);
    const rig = speaker();
    rig.say(SMALL_RIG[0]!);
    expect(unfedTracks(rig.day())).toEqual(['tr2', 'tr3', 'tr4', 'tr5']);
    const added = (of: ReturnType<typeof speaker>) =>
      said<[{ parts: { fields: { name: string } }[] }]>(addTracks(of.day(), 2, () => 'n'))[0].parts.map(
        ({ fields }) => fields.name,
      );
    expect(added(rig)).toEqual(['6', '7']);
    rig.say({ kind: 'part-described', part: 'tr5', fields: { name: '12' } });
    expect(added(rig)).toEqual(['13', '14']);
    rig.say({ kind: 'part-described', part: 'tr5', fields: { name: 'Iso' } });
    expect(added(rig)).toEqual(['6', '7']);
  });

  test('of an added output and send is what was said of it', () => {
    const output = said(
      addOutput(bag, 'near', { name: ' way out ', kind: 'analogue', channel: 'near-ch2' }, 'x'),
    );
    expect(output).toMatchObject([
      {
        parts: [
          {
            part: 'x',
            fields: {
              type: 'output',
              name: 'way out',
              receiver: 'near',
              outputKind: 'analogue',
              carries: ['near-ch2'],
              reserved: null,
              module: 'digital',
            },
          },
        ],
      },
    ]);
    const [{ parts }] = said<[{ parts: { fields: object }[] }]>(
      addOutput(bag, 'near', { name: 's', kind: 'aes3', channel: null, reserved: 'comms' }, 'x'),
    );
    expect(parts[0]!.fields).toMatchObject({ carries: [], reserved: 'comms' });
    expect(parts[0]!.fields).not.toHaveProperty('module');
    const sent = said(addSend(bag, ' send 1 ', 'playback', () => 's1'));
    expect(sent).toMatchObject([
      { parts: [{ part: 's1', fields: { type: 'send', name: 'send 1', reserved: 'playback' } }] },
    ]);
  });
});
