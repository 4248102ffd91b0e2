import { describe, expect, test } from 'vitest';
import { moveBefore } from '../../src/commands/line/correct.ts';
import { plugRun } from '../../src/commands/rig/plug-run.ts';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { linksAtTake } from '../../src/day/chain/links.ts';
import { saidOfLink } from '../../src/day/chain/said-of-link.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day, TakeId } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import { isKnown, readFact } from '../../src/facts/fact.ts';
import { reportOf } from '../../src/report/model.ts';
import { plugLead } from '../commands/plug-lead.ts';
import { type Laying, layingPhone } from '../commands/rig-day.ts';
import { MORNING, speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

/** The small rig with a second boom and a feed, neither of them plugged. */
const EXTRA = [
  { kind: 'voice-described', voice: 'boom2', fields: { kind: 'boom', part: 'Boom 2' } },
  { kind: 'voice-described', voice: 'feed', fields: { kind: 'feed', part: 'Feed' } },
] as const;

function phoneWithBooms(): Laying {
  const phone = layingPhone();
  phone.say(...SMALL_RIG, ...SMALL_CAST, ...EXTRA);
  return phone;
}

const plug = (phone: Laying, from: string, to: string | null, before?: string): void =>
  phone.run(() => plugLead({ lead: `lead-${from}`, from, to, before }));

const boomTrack = (day: Day, id: TakeId): string | undefined =>
  answersAtTake(day, id).tracks.find(({ track }) => track.id === 'tr2')?.name;

const stateOf = (day: Day, id: TakeId, voice: string) =>
  answersAtTake(day, id).voices.find((one) => one.voice.id === voice)?.state;

describe('a socket holds the lead that was plugged last on the line', () => {
  test('a lead said later and placed earlier does not take a later lead out of its socket', () => {
    const phone = phoneWithBooms();
    const first = phone.id(take('1', 0, 1));
    plug(phone, 'boom2', 'in1');
    const second = phone.id(take('1', 0, 2));
    plug(phone, 'feed', 'in1', first);
    const day = phone.day();
    expect([boomTrack(day, first), boomTrack(day, second)]).toEqual(['Feed', 'Boom 2']);
    expect(stateOf(day, second, 'boom2')).toBe('alone');
    const reported = reportOf(day).takes.map(
      ({ tracks }) => tracks.find(({ number }) => number === '2')?.name,
    );
    expect(reported).toEqual(['Feed', 'Boom 2']);
  });

  test('a re-plug moved earlier pushes out what sat there then, not what sat there when it was said', () => {
    const phone = phoneWithBooms();
    const first = phone.id(take('1', 0, 1));
    plug(phone, 'boom', 'aes1');
    const second = phone.id(take('1', 0, 2));
    plug(phone, 'boom2', 'in1');
    const replug = phone.facts.at(-1)!.id;
    const third = phone.id(take('1', 0, 3));
    phone.run((day) => moveBefore(day, replug, first));
    const day = phone.day();
    expect([first, second, third].map((id) => boomTrack(day, id))).toEqual(['Boom 2', 'Boom 2', 'Boom 2']);
    expect(stateOf(day, first, 'boom')).not.toBe('alone');
    expect(stateOf(day, second, 'boom')).toBe('alone');
  });

  test('a lead that was pushed out stays out when its pusher leaves', () => {
    const phone = phoneWithBooms();
    plug(phone, 'boom2', 'in1');
    plug(phone, 'boom2', null);
    expect(answersNow(phone.day()).inputs.find(({ input }) => input.id === 'in1')?.state).toBe('free');
  });

  test('while another sits in its socket a lead is said to be pushed out, and afterwards to go nowhere', () => {
    const phone = phoneWithBooms();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    const breakOfInes = () =>
      answersNow(phone.day()).voices.find(({ voice }) => voice.id === 'ines')?.paths[0]?.broken;
    plug(phone, 'boom2', 'aes1');
    expect(breakOfInes()).toBe('pushed-out');
    plug(phone, 'boom2', 'aes2');
    expect(breakOfInes()).toBe('lead-hangs');
    phone.run((day) => plugRun(day, ['near1out'], ['aes1']));
    expect(breakOfInes()).toBe(null);
  });

  test('two leads change places in one action', () => {
    const phone = phoneWithBooms();
    phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
    phone.run((day) => plugRun(day, ['near1out', 'near2out'], ['aes2', 'aes1']));
    const names = answersNow(phone.day()).tracks.map(({ name }) => name);
    expect(names).toEqual(['1', 'Boom', 'Dora', 'Ines', '']);
  });

  test('an output that had no lead yet at an earlier take gets the one it has later, not a second one', () => {
    const phone = phoneWithBooms();
    const first = phone.id(take('1', 0, 1));
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'blue', from: 'boom2', to: 'in1' }] });
    const second = phone.id(take('1', 0, 2));
    phone.run((day) => plugRun(day, ['boom2'], ['aes1'], 'a', { before: first }));
    const tracksAt = (id: TakeId) =>
      answersAtTake(phone.day(), id).voices.find(({ voice }) => voice.id === 'boom2')?.tracks;
    expect([tracksAt(first), tracksAt(second)]).toEqual([['tr3'], ['tr2']]);
  });

  test('no fact names a lead that it pushed out', () => {
    const phone = phoneWithBooms();
    plug(phone, 'boom2', 'in1');
    phone.run((day) => plugRun(day, ['near1out', 'near2out'], ['aes2', 'aes3']));
    const said = phone.facts.slice(-2).flatMap((fact) => (fact.kind === 'leads-plugged' ? [fact.leads] : []));
    expect(said.map((leads) => leads.map(({ lead }) => lead))).toEqual([['lead-boom2'], ['l1', 'l2']]);
  });

  test('a day stored when pushed-out leads were named reads the same, and follows a correction now', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, ...EXTRA);
    const first = phone.id(take('1', 0, 1));
    phone.say({
      kind: 'leads-plugged',
      leads: [
        { lead: 'boom', from: 'boom', to: null },
        { lead: 'lead-boom2', from: 'boom2', to: 'in1' },
      ],
    });
    const old = phone.facts.map((fact) => (fact.kind === 'leads-plugged' ? { ...fact, v: 1 } : fact));
    const replug = phone.facts.at(-1)!.id;
    const second = phone.id(take('1', 0, 2));
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: 'aes1' }], before: first });
    phone.say({ kind: 'fact-moved', target: replug, to: first });
    const facts = [...old, ...phone.facts.slice(old.length)].flatMap((raw) => {
      const read = readFact(raw);
      return read.ok && isKnown(read.value) ? read.value : [];
    });
    expect(facts).toHaveLength(phone.facts.length);
    const day = foldDay('day-1', facts);
    expect([first, second].map((id) => boomTrack(day, id))).toEqual(['Boom 2', 'Boom 2']);
    // The old unplugging of the boom, which went to AES 1 before that, is not done to it there.
    expect([first, second].map((id) => stateOf(day, id, 'boom'))).toEqual(['alone', 'alone']);
  });

  test('two phones that plug two leads into one socket contradict each other, once, until one is said again', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, ...EXTRA);
    const ours = phone.say({
      kind: 'leads-plugged',
      leads: [{ lead: 'lead-boom2', from: 'boom2', to: 'in1' }],
    });
    // It knows the rig, as both phones do, and not the last word.
    const [theirs] = speaker('phoneb', MORNING + 3_600_000).say({
      kind: 'leads-plugged',
      leads: [{ lead: 'lead-feed', from: 'feed', to: 'in1' }],
    });
    const late = {
      ...theirs!,
      id: `0000zz-${theirs!.id.slice(7)}`,
      seen: { phonea: phone.facts.length - 1 },
    };
    const conflicts = conflictsOf(foldDay('day-1', [...phone.facts, late]));
    expect(conflicts).toMatchObject([
      { kind: 'link-conflict', link: 'socket:in1', by: [late.id, ours[0]!.id] },
    ]);
    expect(saidOfLink(ours[0]!, 'socket:in1')).toMatchObject({ leads: [{ lead: 'lead-boom2' }] });
  });
});

describe('a word placed before another phone’s on purpose', () => {
  test('is no contradiction where it knew of that word', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    const first = phone.id(take('1', 0, 1));
    phone.say({ kind: 'roll-changed', roll: '2' });
    const seen = { phonea: phone.facts.length };
    const other = speaker('phoneb', MORNING + 3_600_000);
    const [said] = other.say({ kind: 'roll-changed', roll: '1', before: first });
    const knowing = { ...said!, id: `0000zz-${said!.id.slice(7)}`, seen };
    const day = foldDay('day-1', [...phone.facts, knowing]);
    expect(conflictsOf(day)).toEqual([]);
    expect(linksAtTake(day, first).get('roll')?.value).toBe('1');
    expect(day.tail.get('roll')?.value).toBe('2');
  });

  test('is one where it did not know', () => {
    const phone = speaker();
    const first = phone.id(take('1', 0, 1));
    phone.say({ kind: 'roll-changed', roll: '2' });
    const other = speaker('phoneb', MORNING + 3_600_000);
    const [said] = other.say({ kind: 'roll-changed', roll: '1', before: first });
    const knowing = { ...said!, id: `0000zz-${said!.id.slice(7)}`, seen: { phonea: 1 } };
    expect(conflictsOf(foldDay('day-1', [...phone.facts, knowing]))).toMatchObject([{ link: 'roll' }]);
  });
});
