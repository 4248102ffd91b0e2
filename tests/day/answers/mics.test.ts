import { describe, expect, test } from 'vitest';
import { carryOver } from '../../../src/commands/day/start-day.ts';
import { keepMic, micAsOn, mountMic } from '../../../src/commands/line/mount-mic.ts';
import { undo } from '../../../src/commands/line/undo.ts';
import { answersAtTake, answersNow } from '../../../src/day/answers/answers.ts';
import { micRunsOf } from '../../../src/day/answers/mic-runs.ts';
import { micOn } from '../../../src/day/chain/mics.ts';
import { linkConflicts } from '../../../src/day/phones/link-conflicts.ts';
import type { Draft } from '../../../src/facts/fact.ts';
import { reportText } from '../../../src/report/formats/text.ts';
import { reportOf } from '../../../src/report/model.ts';
import { MORNING, type Speaker, speaker, take } from '../say.ts';
import { SMALL_CAST, SMALL_RIG } from '../small-rig.ts';

const worn = (transmitter: string, voice: string | null): Draft => ({
  kind: 'transmitter-worn',
  transmitter,
  voice,
});
const said = (transmitter: string | null, mic: object, voice = 'ines'): Draft => ({
  kind: 'mic-mounted',
  voice,
  transmitter,
  mic,
});

/** Ines with two packs, on tracks 3 and 4. */
function twoOnInes(): Speaker {
  const phone = speaker();
  phone.say(...SMALL_RIG, ...SMALL_CAST, worn('A1', 'ines'), worn('A2', 'ines'));
  return phone;
}
const namesNow = (phone: Speaker): string[] =>
  answersNow(phone.day())
    .tracks.filter(({ heard }) => heard.length > 0)
    .map(({ name }) => name);

describe('two mics on one body', () => {
  test('are told apart by place, else by colour, else by model, else by their packs', () => {
    const phone = twoOnInes();
    expect(namesNow(phone)).toEqual(['Boom', 'Ines A1', 'Ines A2']);
    phone.say(said('A1', { model: 'omni' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines omni', 'Ines A2']);
    phone.say(said('A2', { model: 'Omni' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines A1', 'Ines A2']);
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near2', transmitter: null }] });
    expect(namesNow(phone)).toEqual(['Boom', 'Ines']);
    phone.say({ kind: 'channels-tuned', tunings: [{ channel: 'near2', transmitter: 'A2' }] });
    phone.say(said('A1', { model: 'omni' }), said('A2', { model: 'cardioid' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines omni', 'Ines cardioid']);
    phone.say(said('A1', { colour: 'black' }), said('A2', { colour: 'white' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines black', 'Ines white']);
    phone.say(said('A1', { place: 'chest' }), said('A2', { place: 'Chest' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines black', 'Ines white']);
    phone.say(said('A2', { place: 'hair' }));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines chest', 'Ines hair']);
    phone.say(worn('A2', 'dora'));
    expect(namesNow(phone)).toEqual(['Boom', 'Ines', 'Dora']);
  });

  test('are told apart by their packs in the report, but not in its first two forms', () => {
    const phone = twoOnInes();
    const namesIn = (form: number) =>
      reportOf(phone.day(), [], form).layout.flatMap(({ spans }) =>
        spans.flatMap(({ line }) => line?.name ?? []),
      );
    for (const form of [1, 2]) expect(namesIn(form)).toEqual(['Mix', 'Boom', 'Ines', 'Ines']);
    expect(namesIn(3)).toEqual(['Mix', 'Boom', 'Ines A1', 'Ines A2']);
    phone.say(take('24', 0, 1));
    for (const form of [1, 2]) expect(namesIn(form)).toEqual(['Mix', 'Boom', 'Ines', 'Ines']);
    expect(namesIn(3)).toEqual(['Mix', 'Boom', 'Ines A1', 'Ines A2']);
    expect(reportText(reportOf(phone.day()))).toContain('3 Ines A1 · 4 Ines A2');
  });

  test('both on one track are simply the voice', () => {
    const phone = twoOnInes();
    phone.say(said('A1', { place: 'chest' }), said('A2', { place: 'hair' }));
    phone.say({ kind: 'inputs-sent', routes: [{ input: 'aes2', tracks: ['tr3'] }] });
    expect(namesNow(phone)).toEqual(['Boom', 'Ines']);
  });

  test('are told apart in the report, on the takes from where it was placed', () => {
    const phone = twoOnInes();
    phone.say(take('24', 0, 1));
    const second = phone.id(take('24', 0, 2));
    phone.say(
      { ...said('A1', { place: 'chest' }), before: second } as Draft,
      { ...said('A2', { place: 'hair' }), before: second } as Draft,
    );
    const text = reportText(reportOf(phone.day(), []));
    expect(text).toContain('Ines chest');
    expect(text).toContain('Ines hair');
    const [first] = phone.day().takeOrder;
    expect(answersAtTake(phone.day(), first!).tracks.map(({ name }) => name)).toContain('Ines A1');
    expect(answersAtTake(phone.day(), second).tracks.map(({ name }) => name)).toContain('Ines hair');
  });
});

describe('a mic', () => {
  test('changes along the line, each take with what held then', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, worn('A1', 'ines'));
    phone.say(said('A1', { model: 'omni', colour: 'black', place: 'chest', rubs: 'necklace' }));
    phone.say(take('24', 0, 1));
    phone.say(said('A1', { place: 'hair', rubs: null }));
    phone.say(take('24', 0, 2));
    expect(micRunsOf(phone.day()).get('ines')).toEqual([
      { pack: '', listed: ['black omni', 'chest'], rubs: 'necklace', carried: false, from: '' },
      { pack: '', listed: ['black omni', 'hair'], rubs: '', carried: false, from: '24/2' },
    ]);
    expect(reportText(reportOf(phone.day(), [])).replaceAll(/\s+/g, ' ')).toContain(
      'Ines: black omni, chest, rubs on necklace; from 24/2 black omni, hair',
    );
  });

  test('says nothing when nothing changes, and refuses whom the day does not know', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, said('A1', { place: 'chest' }));
    const on = { voice: 'ines', transmitter: 'A1' };
    expect(mountMic(phone.day(), on, { place: ' chest ' })).toEqual({ ok: true, value: [] });
    expect(mountMic(phone.day(), { ...on, voice: 'nobody' }, {}).ok).toBe(false);
    expect(mountMic(phone.day(), { ...on, transmitter: 'Z9' }, {}).ok).toBe(false);
    expect(micAsOn(phone.day(), on, 'A3').ok).toBe(false);
  });

  test('of a pack that is swapped is said again by one word', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, said('A1', { place: 'chest', colour: 'black' }));
    const again = micAsOn(phone.day(), { voice: 'ines', transmitter: 'A3' }, 'A1');
    phone.say(...(again.ok ? again.value : []));
    expect(micOn(phone.day().tail, 'ines', 'A3')).toMatchObject({ place: 'chest', colour: 'black' });
  });

  test('taken back is as it was', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, said('A1', { place: 'chest' }));
    phone.say(said('A1', { place: 'hair', colour: 'white' }));
    const back = undo(phone.day(), 'phonea');
    phone.say(...(back.ok ? back.value : []));
    expect(micOn(phone.day().tail, 'ines', 'A1')).toMatchObject({ place: 'chest', colour: '' });
  });

  test('said of one field by each of two phones is no contradiction; of the same field it is', () => {
    const merged = (a: object, b: object) => {
      const [one, other] = [speaker('phonea'), speaker('phoneb', MORNING + 1000)];
      one.say(...SMALL_RIG, ...SMALL_CAST);
      one.say(said('A1', a));
      other.say({ ...said('A1', b) });
      one.facts.push(...other.facts);
      return linkConflicts(one.day()).map(({ link }) => link);
    };
    expect(merged({ place: 'chest' }, { colour: 'black' })).toEqual([]);
    expect(merged({ place: 'chest' }, { place: 'hair' })).toEqual(['mic:place:ines/A1']);
  });

  test('goes to the next day as yesterday, until it is confirmed or said anew', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, worn('A1', 'ines'), said('A1', { place: 'chest' }));
    phone.say(said(null, { model: 'shotgun' }, 'boom'));
    const next = carryOver(phone.day(), { atMs: MORNING, zone: 120 });
    const later = speaker();
    later.say(...(next.ok ? next.value : []));
    expect(micOn(later.day().tail, 'ines', 'A1')).toMatchObject({ place: 'chest', carried: true });
    expect(micOn(later.day().tail, 'boom', null)).toMatchObject({ model: 'shotgun', carried: true });
    later.say(worn('A1', 'ines'), take('30', 0, 1));
    expect(reportText(reportOf(later.day(), []))).toMatch(/Ines: chest, as the day before/);
    const kept = keepMic(later.day(), { voice: 'ines', transmitter: 'A1' });
    later.say(...(kept.ok ? kept.value : []));
    expect(micOn(later.day().tail, 'ines', 'A1')).toMatchObject({ place: 'chest', carried: false });
  });
});
