import { describe, expect, test } from 'vitest';
import { STARTING_RIGS } from '../../../src/commands/rig/starting-rigs.ts';
import { describeRun } from '../../../src/commands/upkeep/describe-runs.ts';
import {
  dcRun,
  knownLeads,
  networkRun,
  RUN_DEFAULTS,
  runsOf,
  streamsOf,
} from '../../../src/upkeep/wiring/day-runs.ts';
import { leadsOfDay } from '../../../src/upkeep/wiring/day-wiring.ts';
import { wiringSheet } from '../../../src/upkeep/wiring/wiring-sheet.ts';
import { speaker } from '../../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../../day/small-rig.ts';
import { BAG, BAG_BESIDE } from '../../day/two-recorders.ts';
import { unwrap } from '../unwrap.ts';

describe('the wiring sheet of a day', () => {
  test('has a row for every lead that reaches an input, in the order of the inputs', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST);
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l3', from: 'near3out', to: null }] });
    expect(leadsOfDay(phone.day()).map(({ output, lead, input }) => [output, lead, input])).toEqual([
      ['Boom', '1', 'in 1'],
      ['near 1', '2', 'AES 1'],
      ['near 2', '3', 'AES 2'],
    ]);
  });

  test('guesses no pins: what nobody described is said to be so', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG);
    phone.say({ kind: 'leads-described', leads: [{ lead: 'l1', fields: { ends: 'xlr', name: 'blue' } }] });
    const { rows } = wiringSheet(leadsOfDay(phone.day()));
    // XLR: 1 screen, 2 plus, 3 minus (AES14-1992).
    expect(rows[0]).toMatchObject({ lead: 'blue', pins: { plus: 2, minus: 3, screen: 1 } });
    expect(rows[1]).toMatchObject({ words: 'not said' });
    expect(rows[1]).not.toHaveProperty('pins');
  });

  test('goes pin by pin on a snake and tells a circuit used twice', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG);
    const fields = { ends: 'snake', snake: 'A', circuit: 3, carries: 'analogue' } as const;
    phone.say({
      kind: 'leads-described',
      leads: [
        { lead: 'l1', fields },
        { lead: 'l2', fields },
      ],
    });
    const sheet = wiringSheet(leadsOfDay(phone.day()));
    // AES59, analogue channel 3.
    expect(sheet.rows[0]).toMatchObject({ circuit: 'A 3', pins: { plus: 21, minus: 9, screen: 22 } });
    expect(sheet.problems).toEqual([
      { code: 'circuit-used-twice', snake: 'A', circuit: 3, leads: ['1', '2'] },
    ]);
  });

  test('shows both positions of every selector, and finds nothing wrong with a rig as laid', () => {
    const phone = speaker();
    const laid = STARTING_RIGS.find(({ id }) => id === 'cart')!.lay();
    if (laid.ok) phone.say(...laid.value);
    const leads = leadsOfDay(phone.day());
    expect(leads.slice(0, 2).map(({ selector }) => selector?.position)).toEqual(['cart', 'far box']);
    expect(leads[1]?.ends).toEqual({ kind: 'other', words: 'network route' });
    expect(wiringSheet(leads).problems).toEqual([]);
  });
});

describe('the wiring sheet of two recorders', () => {
  const day = () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...SMALL_CAST, ...BAG_BESIDE);
    phone.say({ kind: 'day-described', fields: { recorder: 'Cart' } });
    phone.say({ kind: 'leads-plugged', leads: [{ lead: 'b1', from: 'near1out', to: 'bag-aes1' }] });
    return phone;
  };

  test('has the leads of the first recorder, then those of the other', () => {
    expect(
      leadsOfDay(day().day()).map(({ output, input, recorder }) => [output, recorder?.name, input]),
    ).toEqual([
      ['Boom', 'Cart', 'in 1'],
      ['near 1', 'Cart', 'AES 1'],
      ['near 2', 'Cart', 'AES 2'],
      ['near 3', 'Cart', 'AES 3'],
      ['near 1', 'Bag', 'AES 1'],
    ]);
  });

  test('takes inputs of one name on both for two inputs, and names the recorder of one reached twice', () => {
    const phone = day();
    expect(wiringSheet(leadsOfDay(phone.day())).problems).toEqual([]);
    const twice = leadsOfDay(phone.day()).map((lead) =>
      lead.output === 'near 2' ? { ...lead, input: 'AES 1' } : lead,
    );
    expect(wiringSheet(twice).problems).toEqual([
      { code: 'input-reached-twice', input: 'Cart AES 1', leads: ['2', '3'] },
    ]);
  });
});

describe('cable runs of a day', () => {
  const runWith = (fields: object) => {
    const phone = speaker();
    const said = describeRun(phone.day(), 'r', { type: 'network', ...fields });
    if (!said.ok) throw new Error(said.problem.code);
    phone.say(...said.value);
    return { day: phone.day(), run: runsOf(phone.day())[0]! };
  };

  // IEEE 802.3 class 4 at its least voltage through 100 m of the most TIA-568.2 allows: 44.64 V, 3.06 W lost.
  test('a far box comes out as the power table has it', () => {
    const { day, run } = runWith({ cable: 'tia-solid-limit', metres: 100, powerClass: 4, connectorOhms: 0 });
    const { lead, deviceMinVolts, sound } = networkRun(day, run);
    expect(unwrap(lead).loadVolts?.toFixed(2)).toBe('44.64');
    expect(unwrap(lead).lossWatts?.toFixed(2)).toBe('3.06');
    expect(unwrap(lead).limits[0]?.limit).toBe('data-length');
    expect(deviceMinVolts).toBe(42.5);
    expect(sound).toBeNull();
  });

  test('a lead powers a recorder that is there, or something else', () => {
    const phone = speaker();
    phone.say(...SMALL_RIG, ...BAG_BESIDE);
    const day = phone.day();
    expect(describeRun(day, 'r', { type: 'dc', recorder: BAG })).toMatchObject({ ok: true });
    expect(describeRun(day, 'r', { type: 'dc', recorder: null })).toMatchObject({ ok: true });
    expect(describeRun(day, 'r', { type: 'dc', recorder: 'none' })).toMatchObject({
      problem: { code: 'not-on-this-day' },
    });
  });

  test('a run of which little was said is worked out with the usual figures', () => {
    const { run } = runWith({});
    expect(run).toEqual({ ...RUN_DEFAULTS, id: 'r', type: 'network', name: 'Far box' });
  });

  // AES67: 8 channels at 48 kHz, 1 ms, 24 bit are 9.840 Mbit/s on the wire, 2 channels 2.928.
  test('its sound goes in whole streams and one for the rest', () => {
    const { day, run } = runWith({ channels: 10 });
    expect(streamsOf(day, run).map(({ channels }) => channels)).toEqual([8, 2]);
    expect(unwrap(networkRun(day, run).sound!).wireMbps).toBeCloseTo(9.84 + 2.928, 9);
  });

  test('lengths that have held are computed beside it', () => {
    const leads = knownLeads(runWith({}).run);
    expect(leads.map(({ feet, category }) => [feet, category])).toEqual([
      [250, 'cat 6'],
      [300, 'cat 7'],
    ]);
    expect(leads.every(({ lead }) => lead.ok && (lead.value.marginVolts ?? -1) > 0)).toBe(true);
  });

  test('a cable this version does not know counts as the thinnest, and a load beyond the lead is told', () => {
    const unknown = runWith({ cable: 'awg-99' });
    const thinnest = runWith({ cable: 'awg-26' });
    expect(networkRun(unknown.day, unknown.run)).toEqual(networkRun(thinnest.day, thinnest.run));
    const far = runWith({ cable: 'awg-26', metres: 1000, powerClass: 8 });
    expect(unwrap(networkRun(far.day, far.run).lead).broken).toContain('no-solution');
  });

  // 13 V, AWG 18, 3 m, 65 W; 98 Wh with 80 % of the rating usable (common practice, no source).
  test('a cart lead has its drop, and its battery its hours', () => {
    const { run } = runWith({ type: 'dc', volts: 13, awg: 18, metres: 3, watts: 65, batteryWattHours: 98 });
    const { lead, runtime } = dcRun(run);
    const loop = (2 * 20.9 * 3) / 1000;
    const volts = (13 + Math.sqrt(13 * 13 - 4 * loop * 65)) / 2;
    expect(unwrap(lead).loadVolts).toBeCloseTo(volts, 12);
    expect(unwrap(runtime!)).toBeCloseTo((98 * 0.8) / (13 * (65 / volts)), 12);
  });
});
