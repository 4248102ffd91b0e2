import { describe, expect, test } from 'vitest';
import { noteSent } from '../../../src/commands/day/send-report.ts';
import { wrapDay } from '../../../src/commands/day/wrap-day.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { knownOf } from '../../../src/day/wrap/sent-reports.ts';
import { countSince, lateOnLine } from '../../../src/day/wrap/since-closing.ts';
import type { Draft, Fact } from '../../../src/facts/fact.ts';
import { MORNING, speaker, take } from '../say.ts';
import { SetPhone } from '../three-phones.ts';

const MINUTE = 60_000;
const wrap: Draft = { kind: 'day-wrapped', wrapped: true };
const muted: Draft = { kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true };
const note = (id: string): Draft => ({ kind: 'note-added', take: id, text: 'plane' });

function sending(phone: SetPhone): Draft {
  const made = { paper: 'a4', lines: 'take', columns: [], signature: '', matters: [] } as const;
  const said = noteSent({
    ...{ letter: 'A', route: 'share', files: [], to: [], from: knownOf(phone.day()) },
    made: { ...made, columns: [], matters: [] },
  });
  if (!said.ok) throw new Error(said.problem.code);
  return said.value[0]!;
}

/** The mixer logs a take, which the boom operator's phone has too. */
function twoPhones(): { mixer: SetPhone; boom: SetPhone; first: Fact } {
  const [mixer, boom] = [new SetPhone(0, 0), new SetPhone(1, 0)];
  const first = mixer.say(take('24', 1, 1), MORNING);
  boom.take(mixer);
  return { mixer, boom, first };
}

describe('the wrap of a day', () => {
  test('stands until the day is reopened, by whoever said so last', () => {
    const { mixer, boom } = twoPhones();
    expect(mixer.day().wrap).toBeUndefined();
    const first = mixer.say(wrap, MORNING + MINUTE);
    expect(mixer.day().wrap?.id).toBe(first.id);
    boom.take(mixer);
    boom.say({ kind: 'day-wrapped', wrapped: false }, MORNING + 2 * MINUTE);
    expect(boom.day().wrap).toBeUndefined();
    const second = boom.say(wrap, MORNING + 3 * MINUTE);
    mixer.take(boom);
    expect(mixer.day().wrap?.id).toBe(second.id);
  });

  test('of two phones at once is the later by their clocks, whichever has said more', () => {
    const { mixer, boom } = twoPhones();
    for (const at of [1, 2, 3]) mixer.say(muted, MORNING + at * MINUTE);
    mixer.say(wrap, MORNING + 4 * MINUTE);
    const later = boom.say(wrap, MORNING + 5 * MINUTE);
    mixer.take(boom);
    expect(mixer.day().wrap?.id).toBe(later.id);
  });

  test('is one step of undo, and said once only', () => {
    const phone = speaker();
    phone.say(take('24', 1, 1));
    phone.say(wrap);
    expect(wrapDay(phone.day(), true)).toEqual({ ok: true, value: [] });
    const undone = undo(phone.day(), 'phonea');
    if (!undone.ok) throw new Error(undone.problem.code);
    phone.say(...undone.value);
    expect(phone.day().wrap).toBeUndefined();
    expect(wrapDay(phone.day(), false)).toEqual({ ok: true, value: [] });
    expect(wrapDay(phone.day(), true)).toEqual({ ok: true, value: [wrap] });
  });
});

describe('what came since', () => {
  test('the wrap: said by who knew of it is told from what a phone said before it had heard', () => {
    const { mixer, boom, first } = twoPhones();
    const closing = mixer.say(wrap, MORNING + MINUTE);
    // By the clock later than the wrap, which it has not heard of.
    const unheard = boom.say(take('24', 1, 2), MORNING + 2 * MINUTE);
    boom.take(mixer);
    const after = boom.say(muted, MORNING + 3 * MINUTE);
    boom.say(note(first.id), MORNING + 4 * MINUTE);
    const late = lateOnLine(boom.day());
    expect([...late.keys()].sort()).toEqual([first.id, unheard.id, after.id].sort());
    expect(late.get(unheard.id)).toMatchObject({ isSaidAfter: false, isWhole: true });
    expect(late.get(after.id)).toMatchObject({ isSaidAfter: true, isWhole: true });
    expect(late.get(first.id)).toMatchObject({ isSaidAfter: true, isWhole: false });
    expect(countSince(boom.day(), closing as never)).toEqual({ after: 2, unheard: 1 });
  });

  test('a report is what it was not made from, and counts before the wrap', () => {
    const { mixer, boom, first } = twoPhones();
    const report = sending(mixer);
    // Between the making of its files and the tap that sent them.
    const between = mixer.say(muted, MORNING + MINUTE);
    const sent = mixer.say(report, MORNING + 2 * MINUTE);
    mixer.say(wrap, MORNING + 3 * MINUTE);
    boom.take(mixer);
    boom.say(note(first.id), MORNING + 4 * MINUTE);
    const late = lateOnLine(boom.day());
    expect(late.get(between.id)).toMatchObject({ closing: { id: sent.id }, isSaidAfter: false });
    expect(late.get(first.id)).toMatchObject({ closing: { id: sent.id }, isSaidAfter: true });
    expect(late.size).toBe(2);
  });

  test('is nothing once it was taken back, and something where what was known was taken back', () => {
    const { mixer, first } = twoPhones();
    const closing = mixer.say(wrap, MORNING + MINUTE);
    const more = mixer.say(note(first.id), MORNING + 2 * MINUTE);
    mixer.say({ kind: 'fact-retracted', targets: [more.id], by: 'undo' }, MORNING + 3 * MINUTE);
    expect(lateOnLine(mixer.day()).size).toBe(0);
    expect(countSince(mixer.day(), closing as never)).toEqual({ after: 0, unheard: 0 });
    mixer.say({ kind: 'fact-retracted', targets: [first.id], by: 'hand' }, MORNING + 4 * MINUTE);
    expect([...lateOnLine(mixer.day()).keys()]).toEqual([first.id]);
  });

  test('is none of what stands beside the log: names of phones, reports and wraps', () => {
    const { mixer } = twoPhones();
    const closing = mixer.say(wrap, MORNING + MINUTE);
    mixer.say(sending(mixer), MORNING + 2 * MINUTE);
    mixer.say({ kind: 'phone-named', name: 'Ana', job: 'Mixer' }, MORNING + 3 * MINUTE);
    expect(countSince(mixer.day(), closing as never)).toEqual({ after: 0, unheard: 0 });
  });
});
