import type { Day } from '../../src/day/model.ts';
import { type ReportModel, reportOf } from '../../src/report/model.ts';
import type { Extras } from '../../src/report/revision/revision.ts';
import { revisionOf } from '../../src/report/revision/revision.ts';
import { take } from '../day/say.ts';
import { BAG, BAG_BESIDE, CART } from '../day/two-recorders.ts';
import { smallDay } from './report-day.ts';

/** A day of many takes, of texts too long for their places, and of all that needs a place of its own. */
export function longDay(): Day {
  const { phone, second } = smallDay();
  phone.say({
    kind: 'day-described',
    fields: {
      production: 'The Salt Road and the Long Way Back to the Harbour under the Cliffs',
      contact: `post@example.org, ${'a long way to write, '.repeat(5)}`,
      remarks: `Wind from the sea.\n${'Generator behind the barn all day. '.repeat(12)}`,
    },
  });
  phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Ines of the Three Harbours' } });
  phone.say({ kind: 'note-added', take: second, text: `${'Sea and gulls under the line. '.repeat(14)}` });
  phone.say({ kind: 'gang-declared', track: 'tr3', sources: [] });
  for (let at = 0; at < 70; at += 1) {
    if (at === 20) phone.say({ kind: 'roll-changed', roll: '7B' });
    if (at === 25) phone.say({ kind: 'gang-declared', track: 'tr3', sources: ['near1', 'near2'] });
    if (at === 30) phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
    if (at === 35) phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: true });
    if (at === 36) phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr4'] }] });
    if (at === 40) phone.say({ kind: 'track-named', track: 'tr5', name: 'Crowd left and right of the gate' });
    if (at === 45) phone.say({ kind: 'mute-set', what: 'transmitter', part: 'A1', muted: false });
    const file = at === 50 ? `${'A name that goes on '.repeat(4)}and on.wav` : undefined;
    const start = { frames: 100_000 + at * 1000, rate: '25' };
    const scene = at === 51 ? '118ABCDEFGHJKLM' : '31';
    phone.say(
      take(scene, Math.floor(at / 4), (at % 4) + 1, { start, circled: at % 9 === 0, ...(file && { file }) }),
    );
  }
  return phone.day();
}

/** The small day with a backup that missed two takes and has one alone, rolls of its own, and a rate that changes. */
export function backedUpDay() {
  const { phone, first, second, third, fourth } = smallDay();
  phone.say({ kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup in the bag' } });
  const rolling = (recorders: string[], before: string) =>
    phone.say({ kind: 'recorders-rolling', recorders, before });
  rolling(['recorder', 'b'], first);
  rolling(['recorder'], second);
  rolling(['b'], third);
  rolling(['recorder', 'b'], fourth);
  phone.say(
    { kind: 'roll-changed', roll: 'B1', recorder: 'b', before: first },
    { kind: 'roll-changed', roll: 'B2', recorder: 'b', before: fourth },
    { kind: 'recorder-set', settings: { timecodeRate: '23.976', fileLayout: 'mono' }, before: fourth },
  );
  return { phone, first, second, third, fourth };
}

/** The day of two recorders with its card checked. */
export function checkedDay(): Day {
  const { phone, second } = backedUpDay();
  phone.say({
    kind: 'card-checked',
    files: 5,
    recordings: 5,
    matched: 4,
    open: 1,
    without: [second],
    unsure: [],
  });
  return phone.day();
}

/**
 * The unit moves from the cart to the bag for two takes and back. The bag has tracks, a roll, a rate and a pattern
 * of its own, and a backup rolls along with the cart from the third take on.
 */
export function movedDay() {
  const { phone, first, second, third, fourth } = smallDay();
  phone.say(...BAG_BESIDE, {
    kind: 'part-described',
    part: 'b',
    fields: { type: 'recorder', name: 'Backup' },
  });
  phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
  const leads = [{ lead: 'bag-lead', from: 'near1out', to: 'bag-aes1' }];
  phone.say({ kind: 'leads-plugged', leads, before: first });
  const rolling = (recorders: string[], before?: string) =>
    phone.say({ kind: 'recorders-rolling', recorders, ...(before && { before }) });
  rolling([CART, 'b'], third);
  phone.say(
    { kind: 'roll-changed', roll: 'B1', recorder: 'b', before: third },
    { kind: 'roll-changed', roll: 'C1', recorder: BAG, before: fourth },
    {
      kind: 'recorder-set',
      recorder: BAG,
      settings: { timecodeRate: '24', filePattern: '{roll}-{count:3}' },
      before: fourth,
    },
  );
  rolling([BAG]);
  const fifth = phone.id(take('25', 0, 1, { start: { frames: 95_000, rate: '24' } }));
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  const sixth = phone.id(take('25', 0, 2, { start: { frames: 96_000, rate: '24' } }));
  phone.say({ kind: 'note-added', take: sixth, track: 'bag-tr3', text: 'rustle' });
  rolling([CART, BAG, 'b']);
  const seventh = phone.id(take('26', 0, 1, { start: { frames: 99_000, rate: '25' } }));
  const eighth = phone.id(take('26', 0, 2, { start: { frames: 99_500, rate: '25' } }));
  return { phone, first, second, third, fourth, fifth, sixth, seventh, eighth };
}

/** What changed on it since revision A, in an earlier form or as it is made now. */
export function revisedBackedUp(form?: number): { model: ReportModel; extras: Extras } {
  const { phone, second } = backedUpDay();
  const model = reportOf(phone.day(), [], form);
  phone.say({ kind: 'recorders-rolling', recorders: ['recorder', 'b'], before: second });
  const now = reportOf(phone.day(), [], form);
  return { model: now, extras: { revision: revisionOf(now, { letter: 'A', model }) } };
}

/** A revision, signed, with a letter that the font has not; as it is made now, or in an earlier form. */
export function revisedReport(form?: number): { model: ReportModel; extras: Extras } {
  const { phone, first } = smallDay();
  const model = reportOf(phone.day(), [], form);
  phone.say({ kind: 'take-described', take: first, fields: { circled: true } });
  phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Inès 音' } });
  const now = reportOf(phone.day(), [], form);
  const revision = revisionOf(now, { letter: 'A', model });
  return { model: now, extras: { revision, signature: 'N. Aske\nproduction sound' } };
}
