import { describe, expect, test } from 'vitest';
import { noteSent } from '../../../src/commands/day/send-report.ts';
import { actionsOf } from '../../../src/commands/line/undo.ts';
import { readFact } from '../../../src/facts/fact.ts';
import type { ReportMade } from '../../../src/facts/kinds/report-sent.ts';
import { speaker, take } from '../../day/say.ts';

const MADE: ReportMade = { paper: 'letter', lines: 'track', columns: [], signature: '', matters: [] };
const sent = (more: object = {}) => {
  const said = noteSent({
    letter: 'A',
    route: 'download',
    files: ['r.pdf'],
    to: ['edit@example.org'],
    made: MADE,
    from: { known: {} },
    ...more,
  });
  if (!said.ok) throw new Error(said.problem.code);
  return said.value[0]!;
};

describe('a report that is handed over', () => {
  test('can be read back however many and long its addresses are', () => {
    const phone = speaker();
    const to = Array.from({ length: 80 }, (_, at) => `${'x'.repeat(300)}${at}@example.org`);
    const [fact] = phone.say(sent({ to }));
    expect(readFact(fact)).toMatchObject({ ok: true });
    expect(fact).toMatchObject({ kind: 'report-sent', to: { length: 50 } });
  });

  test('is no step of undo: what left the phone has left it', () => {
    const phone = speaker();
    const logged = phone.id(take('24', 1, 1));
    phone.say(sent());
    const { done } = actionsOf(phone.day(), 'phonea');
    expect(done.map(({ facts }) => facts.map(({ id }) => id))).toEqual([[logged]]);
  });

  test('can be said not to have gone out, and that is a step of undo', () => {
    const phone = speaker();
    const report = phone.id(sent());
    const word = phone.id({ kind: 'fact-retracted', targets: [report], by: 'hand' });
    expect(actionsOf(phone.day(), 'phonea').done.at(-1)?.facts[0]?.id).toBe(word);
  });
});
