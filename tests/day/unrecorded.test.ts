import { describe, expect, test } from 'vitest';
import { answersAtTake, answersNow } from '../../src/day/answers/answers.ts';
import { allRecorded } from '../../src/day/answers/summary.ts';
import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import { conflictsOf } from '../../src/day/phones/conflicts.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { reportOf } from '../../src/report/model.ts';
import { matterText } from '../../src/report/printed/matter-words.ts';
import { speaker, take } from './say.ts';
import { SMALL_CAST, SMALL_RIG } from './small-rig.ts';

const wired = () => {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST);
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  return phone;
};

const worn = (transmitter: string, voice: string | null): Draft => ({
  kind: 'transmitter-worn',
  transmitter,
  voice,
});
const need = (voice: string, said: 'needed' | 'resting' | 'done'): Draft => ({
  kind: 'voices-needed',
  voices: [{ voice, need: said }],
});
const MUTED: Draft = { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true };

const stateOf = (day: Day, id: string) => answersNow(day).voices.find(({ voice }) => voice.id === id)!;
/** The counts, and whether it may be said that nobody is unrecorded. */
const counted = (day: Day) => {
  const { summary, voices } = answersNow(day);
  return { ...summary, allRecorded: allRecorded(voices) };
};
/** These days have no head, which is a matter of its own. */
const matters = (day: Day): string[] =>
  reportOf(day)
    .open.filter(({ code }) => code !== 'head-lacks')
    .map(matterText);

describe('a muted performer', () => {
  test('who is needed is not recorded, and the report says so of each take', () => {
    const phone = wired();
    phone.say(need('ines', 'needed'));
    expect(counted(phone.day())).toMatchObject({ unrecorded: [], allRecorded: true });
    phone.say(MUTED, take('24', 1, 1));
    expect(stateOf(phone.day(), 'ines').state).toBe('muted');
    expect(counted(phone.day())).toMatchObject({
      unrecorded: ['ines'],
      muted: 1,
      allRecorded: false,
    });
    expect(matters(phone.day())).toEqual(['Ines was needed but muted: 24A/1.']);
  });

  test('of whom nobody said that they are needed is no trouble, but nobody says that all are recorded', () => {
    const phone = wired();
    phone.say(MUTED, take('24', 1, 1));
    expect(counted(phone.day())).toMatchObject({ unrecorded: [], muted: 1, allRecorded: false });
    expect(matters(phone.day())).toEqual([]);
  });

  test.each(['resting', 'done'] as const)('who is %s is muted on purpose', (said) => {
    const phone = wired();
    phone.say(need('ines', said), MUTED);
    expect(counted(phone.day())).toMatchObject({ unrecorded: [], muted: 1, allRecorded: true });
  });

  test('who is heard on another track is recorded', () => {
    const phone = wired();
    phone.say(need('ines', 'needed'), worn('A3', 'ines'), MUTED);
    expect(counted(phone.day())).toMatchObject({ unrecorded: [], allRecorded: true });
  });
});

describe('a performer whose pack went to somebody else', () => {
  test('is not recorded as long as nobody says that they rest, and the report says so', () => {
    const phone = wired();
    const before = phone.id(take('24', 1, 1));
    const moved = phone.id(worn('A1', 'tomas'));
    phone.say(take('24', 1, 2));
    const ines = stateOf(phone.day(), 'ines');
    expect(ines).toMatchObject({ state: 'unrecorded', need: null, tracks: [] });
    expect(ines.paths).toMatchObject([{ broken: 'pack-gone', transmitter: null }]);
    expect(ines.paths[0]!.because).not.toContain(moved);
    expect(ines.paths[0]!.because).toHaveLength(1);
    expect(counted(phone.day())).toMatchObject({ unrecorded: ['ines'], allRecorded: false });
    expect(answersAtTake(phone.day(), before).summary.unrecorded).toEqual([]);
    expect(matters(phone.day())).toEqual(['Ines gave up a pack and was on no track: 24A/2.']);
  });

  test('is not recorded either when it came off and went on in two steps', () => {
    const phone = wired();
    phone.say(worn('A1', null));
    phone.say(worn('A1', 'tomas'));
    expect(answersNow(phone.day()).summary.unrecorded).toEqual(['ines']);
  });

  test.each(['resting', 'done'] as const)('is off once they are %s', (said) => {
    const phone = wired();
    phone.say(worn('A1', 'tomas'), need('ines', said));
    expect(stateOf(phone.day(), 'ines').state).toBe('off');
    expect(counted(phone.day())).toMatchObject({ unrecorded: [], allRecorded: true });
  });

  test('is recorded again with another pack', () => {
    const phone = wired();
    phone.say(worn('A1', 'tomas'), worn('A3', 'ines'));
    expect(stateOf(phone.day(), 'ines').state).toBe('alone');
    expect(answersNow(phone.day()).summary.unrecorded).toEqual([]);
  });

  test('counts from where they wore it on the line, wherever that was said', () => {
    const phone = wired();
    const first = phone.id(take('24', 1, 1));
    const second = phone.id(take('24', 1, 2));
    phone.say({ ...worn('A3', 'tomas'), before: second });
    phone.say({ ...worn('A3', 'dora'), before: second });
    const lostAt = (id: string) => answersAtTake(phone.day(), id).summary.unrecorded;
    expect([lostAt(first), lostAt(second)]).toEqual([[], ['tomas']]);
  });

  test('has lost nothing where the giving is taken back, or the pack struck from the rig', () => {
    const phone = wired();
    const mistaken = phone.id(worn('A3', 'tomas'));
    const again = phone.id(worn('A3', null));
    phone.say({ kind: 'fact-retracted', targets: [mistaken, again], by: 'undo' });
    expect(stateOf(phone.day(), 'tomas').state).toBe('off');
    phone.say(worn('A1', 'tomas'));
    phone.say({ kind: 'part-described', part: 'A1', fields: { struck: true } });
    expect(stateOf(phone.day(), 'ines').state).toBe('off');
  });

  test('two phones that each gave them one contradict nothing', () => {
    const [a, b] = [speaker('phonea'), speaker('phoneb')];
    a.say(...SMALL_RIG, ...SMALL_CAST, worn('A1', 'ines'));
    b.say(worn('A2', 'ines'));
    expect(conflictsOf(foldDay('day-1', [...a.facts, ...b.facts]))).toEqual([]);
  });
});

test('a boom whose socket another lead has taken is not recorded; one that was unplugged waits', () => {
  const phone = wired();
  phone.say(
    { kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: 'in1' }] },
    take('24', 1, 1),
  );
  expect(stateOf(phone.day(), 'boom')).toMatchObject({
    state: 'unrecorded',
    paths: [{ broken: 'pushed-out', input: 'in1' }],
  });
  expect(counted(phone.day())).toMatchObject({ unrecorded: ['boom'], allRecorded: false });
  expect(matters(phone.day())).toEqual(['Boom was on no track: 24A/1.']);
  phone.say({ kind: 'leads-plugged', leads: [{ lead: 'boom', from: 'boom', to: null }] });
  expect(stateOf(phone.day(), 'boom').state).toBe('off');
  expect(counted(phone.day())).toMatchObject({ unrecorded: [], allRecorded: true });
});

test('a performer who never had a pack is not wired yet, and waited for only when needed', () => {
  const phone = wired();
  expect(stateOf(phone.day(), 'tomas')).toMatchObject({ state: 'off' });
  expect(counted(phone.day())).toMatchObject({ unrecorded: [], allRecorded: true });
  phone.say(need('tomas', 'needed'));
  expect(stateOf(phone.day(), 'tomas')).toMatchObject({
    state: 'unrecorded',
    paths: [{ broken: 'no-transmitter' }],
  });
});
