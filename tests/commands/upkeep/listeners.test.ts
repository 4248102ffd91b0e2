import { describe, expect, test } from 'vitest';
import type { CommandResult } from '../../../src/commands/command.ts';
import { carryOver } from '../../../src/commands/day/start-day.ts';
import { describeDevices, freshCells } from '../../../src/commands/upkeep/keep-up.ts';
import {
  addListener,
  describeListener,
  handOut,
  hearPart,
  hearWords,
} from '../../../src/commands/upkeep/listeners.ts';
import { listenersOf, receiversShared, stillOut } from '../../../src/day/answers/listeners.ts';
import { foldDay } from '../../../src/day/fold/fold.ts';
import { factWords } from '../../../src/ui/words/facts.ts';
import { sharedWords } from '../../../src/ui/words/listeners.ts';
import { deviceName } from '../../../src/ui/words/prep-facts.ts';
import { devicesOf } from '../../../src/upkeep/due/day-devices.ts';
import { upkeepAt } from '../../../src/upkeep/due/day-due.ts';
import { MORNING, type Speaker, speaker } from '../../day/say.ts';
import { SMALL_RIG } from '../../day/small-rig.ts';
import { problemOf } from '../rig-day.ts';

const NOW = { atMs: MORNING, zone: 120 };
const SEND = { kind: 'part-described', part: 'village', fields: { type: 'send', name: 'Village' } } as const;

function said(phone: Speaker, result: CommandResult): void {
  if (!result.ok) throw new Error(result.problem.code);
  phone.say(...result.value);
}

/** The director on the mix, the boom operator on the own boom, as one tap each adds them. */
function twoListeners(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, SEND);
  said(phone, addListener(phone.day(), 'd', ' Director '));
  said(phone, addListener(phone.day(), 'b', 'Boom operator'));
  return phone;
}

describe('who hears', () => {
  test('is added in one tap with the first free receiver, on the mix, a boom operator on the own boom', () => {
    expect(listenersOf(twoListeners().day())).toMatchObject([
      { name: 'Director', receiver: 'IFB 1', hears: 'Mix', part: 'tr1', channel: '', handedOut: true },
      { name: 'Boom operator', receiver: 'IFB 2', hears: 'own boom', part: undefined, handedOut: true },
    ]);
  });

  test('hears a mix by its name: the number too where there are two, the word that somebody typed', () => {
    const phone = twoListeners();
    const hears = () => listenersOf(phone.day())[0]?.hears;
    phone.say({ kind: 'part-described', part: 'tr2', fields: { mix: true } });
    expect(hears()).toBe('Mix 1');
    phone.say({ kind: 'track-named', track: 'tr1', name: 'Mix L' });
    expect(hears()).toBe('Mix L');
    phone.say({ kind: 'part-described', part: 'bag', fields: { type: 'recorder', name: 'Bag' } });
    phone.say({
      kind: 'part-described',
      part: 'bag1',
      fields: { type: 'track', name: '1', recorder: 'bag' },
    });
    expect(hears()).toBe('Recorder Mix L');
  });

  test('hears the mix in words where the rig has none', () => {
    const phone = speaker();
    said(phone, addListener(phone.day(), 'd', 'Director'));
    expect(listenersOf(phone.day())).toMatchObject([{ hears: 'mix', part: undefined }]);
  });

  test('takes the number of a receiver that nobody has any more', () => {
    const phone = twoListeners();
    said(phone, describeListener(phone.day(), 'd', { struck: true }));
    said(phone, addListener(phone.day(), 'c', 'Client'));
    expect(listenersOf(phone.day()).map(({ name, receiver }) => [name, receiver])).toEqual([
      ['Boom operator', 'IFB 2'],
      ['Client', 'IFB 1'],
    ]);
  });

  test('hears a send by its name of the moment, and by its last one when it is gone', () => {
    const phone = twoListeners();
    said(phone, hearPart(phone.day(), 'd', 'village'));
    phone.say({ ...SEND, fields: { name: 'Video village' } });
    expect(listenersOf(phone.day())[0]).toMatchObject({ part: 'village', hears: 'Video village' });
    phone.say({ ...SEND, fields: { struck: true } });
    expect(listenersOf(phone.day())[0]).toMatchObject({ part: undefined, hears: 'Village' });
    said(phone, hearWords(phone.day(), 'd', 'playback'));
    expect(listenersOf(phone.day())[0]).toMatchObject({ part: undefined, hears: 'playback' });
  });

  test('gives the receiver back and gets it again; fresh cells are of this moment', () => {
    const phone = twoListeners();
    said(phone, handOut(phone.day(), ['d'], false));
    expect(stillOut(phone.day()).map(({ id }) => id)).toEqual(['b']);
    said(phone, handOut(phone.day(), ['d', 'b'], true));
    expect(stillOut(phone.day()).map(({ id }) => id)).toEqual(['d', 'b']);
    said(phone, freshCells(phone.day(), ['b'], NOW));
    expect(listenersOf(phone.day()).map(({ cellsAtMs }) => cellsAtMs)).toEqual([
      null,
      phone.facts.at(-1)!.at,
    ]);
  });

  test('has the cells that earlier versions said of the listener, the latest of both', () => {
    const phone = twoListeners();
    const cellsAt = () => listenersOf(phone.day())[0]?.cellsAtMs;
    const fresh = (cellsAtMs: number | null): void => {
      phone.say({ kind: 'listener-described', listener: 'd', fields: { cellsAtMs } });
    };
    fresh(MORNING);
    expect(cellsAt()).toBe(MORNING);
    said(phone, freshCells(phone.day(), ['d'], NOW, { minutesAgo: 60 }));
    expect(cellsAt()).toBe(MORNING);
    said(phone, freshCells(phone.day(), ['d'], { ...NOW, atMs: MORNING + 3_600_000 }, { minutesAgo: 30 }));
    expect(cellsAt()).toBe(MORNING + 1_800_000);
    fresh(null);
    expect(cellsAt()).toBeNull();
  });

  test('shares a receiver with somebody while both have it', () => {
    const phone = twoListeners();
    expect(receiversShared(phone.day())).toEqual([]);
    said(phone, describeListener(phone.day(), 'b', { receiver: 'ifb1' }));
    expect(receiversShared(phone.day()).map(sharedWords)).toEqual([
      'Director and Boom operator both have IFB 1.',
    ]);
    said(phone, addListener(phone.day(), 'c', 'Client'));
    said(phone, describeListener(phone.day(), 'c', { receiver: 'IFB 1' }));
    expect(receiversShared(phone.day()).map(sharedWords)).toEqual([
      'Director, Boom operator and Client all have IFB 1.',
    ]);
    for (const id of ['b', 'c']) said(phone, describeListener(phone.day(), id, { receiver: '' }));
    expect(receiversShared(phone.day())).toEqual([]);
    said(phone, describeListener(phone.day(), 'b', { receiver: 'IFB 1' }));
    said(phone, handOut(phone.day(), ['d'], false));
    expect(receiversShared(phone.day())).toEqual([]);
  });

  test('is due for batteries while the receiver is out, by a battery life known tomorrow too', () => {
    const phone = twoListeners();
    said(phone, describeDevices(phone.day(), ['d', 'b'], { runtimeHours: 5 }));
    said(phone, freshCells(phone.day(), ['d'], NOW));
    const at = phone.facts.at(-1)!.at;
    const due = () => upkeepAt(phone.day(), at + 4 * 3_600_000).due.items;
    expect(due().map(({ name, kind, action }) => [deviceName(phone.day(), name), kind, action])).toEqual([
      ['IFB 1 of Director', 'cells', 'now'],
    ]);
    expect(upkeepAt(phone.day(), at).withoutCells.map(({ name }) => name)).toContain('IFB 2');
    const next = speaker('phoneb');
    said(next, carryOver(phone.day(), NOW));
    const tomorrow = foldDay('day-1', next.facts);
    expect(devicesOf(tomorrow).find(({ id }) => id === 'd')).toMatchObject({
      type: 'listener',
      runtimeHours: 5,
    });
    said(phone, handOut(phone.day(), ['d'], false));
    expect(due()).toEqual([]);
  });

  test('is known tomorrow with what is heard and who has a receiver, without the cells of today', () => {
    const phone = twoListeners();
    said(phone, handOut(phone.day(), ['d'], false));
    said(phone, freshCells(phone.day(), ['d', 'b'], NOW));
    said(phone, addListener(phone.day(), 'c', 'Client'));
    said(phone, describeListener(phone.day(), 'c', { struck: true }));
    const next = speaker('phoneb');
    said(next, carryOver(phone.day(), NOW));
    const tomorrow = foldDay('day-1', next.facts);
    expect(listenersOf(tomorrow)).toMatchObject([
      { name: 'Director', receiver: 'IFB 1', hears: 'Mix', cellsAtMs: null, handedOut: false },
      { name: 'Boom operator', receiver: 'IFB 2', hears: 'own boom', cellsAtMs: null, handedOut: true },
    ]);
  });

  const day = twoListeners().day();
  const long = 'x'.repeat(201);
  test.each<[string, CommandResult, object]>([
    ['without a name', addListener(day, 'n', '  '), { code: 'name-empty' }],
    ['with a name too long', addListener(day, 'n', long), { code: 'name-too-long', longest: 200 }],
    ['renamed to nothing', describeListener(day, 'd', { name: ' ' }), { code: 'name-empty' }],
    ['on a channel too long', describeListener(day, 'd', { channel: long }), { code: 'name-too-long' }],
    ['not on this day', describeListener(day, 'x', { channel: '1' }), { code: 'not-on-this-day' }],
    ['hearing an input', hearPart(day, 'd', 'in1'), { code: 'not-on-this-day', what: 'send' }],
    ['nobody at all', handOut(day, [], false), { code: 'nothing-chosen' }],
    ['one of them unknown', handOut(day, ['d', 'x'], true), { code: 'not-on-this-day', id: 'x' }],
  ])('%s is refused', (_, result, problem) => {
    expect(problemOf(result)).toMatchObject(problem);
  });

  test('is said in one line each, with the receiver by its name', () => {
    const phone = twoListeners();
    said(phone, handOut(phone.day(), ['d'], false));
    said(phone, handOut(phone.day(), ['d'], true));
    said(phone, freshCells(phone.day(), ['b'], NOW));
    said(phone, describeListener(phone.day(), 'b', { struck: true }));
    expect(phone.facts.slice(-5).map((fact) => factWords(phone.day(), fact))).toEqual([
      'Boom operator edited',
      'IFB 1 of Director returned',
      'IFB 1 of Director handed out',
      'fresh batteries in IFB 2 of Boom operator',
      'Boom operator deleted',
    ]);
  });
});
