import { describe, expect, test } from 'vitest';
import { describePart } from '../../src/commands/day/describe.ts';
import { carryOver } from '../../src/commands/day/start-day.ts';
import { throwSelectors } from '../../src/commands/line/change-chain.ts';
import { pinVoice } from '../../src/commands/line/plan-ahead.ts';
import { addReceiver, addSelectors } from '../../src/commands/rig/lay-rig.ts';
import { plugRun } from '../../src/commands/rig/plug-run.ts';
import { bringBackPart, strikePart, struckParts } from '../../src/commands/rig/strike-part.ts';
import { describeLeads } from '../../src/commands/upkeep/describe-runs.ts';
import { describeDevices } from '../../src/commands/upkeep/keep-up.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { pinsOf } from '../../src/day/chain/links.ts';
import type { Day } from '../../src/day/model.ts';
import { MORNING } from '../day/say.ts';
import { laidRig, problemOf } from './rig-day.ts';

const reachOf = (day: Day, input: string) =>
  answersNow(day).inputs.find((answer) => answer.input.id === input)!.reach;
const selectorsBefore = (day: Day, input: string) => day.rig.selectors.filter((one) => one.input === input);

describe('a selector added where one was struck', () => {
  const readded = () => {
    const phone = laidRig('cart');
    phone.run((day) => throwSelectors(day, ['sel-line5'], 'b'));
    phone.run((day) => strikePart(day, 'sel-line5'));
    phone.run((day) => addSelectors(day, ['line5'], ['cart', 'far box']));
    return phone;
  };

  test('is another one: it stands at its first position, whatever the old one was thrown to', () => {
    const phone = readded();
    expect(phone.day().rig.byId.has('sel-line5')).toBe(false);
    expect(reachOf(phone.day(), 'line5')).toMatchObject({
      selector: { position: 'a' },
      arrival: { from: 'cart-out5' },
    });
  });

  test('keeps the old one from coming back beside it', () => {
    const phone = readded();
    const [added] = selectorsBefore(phone.day(), 'line5');
    phone.run((day) => describePart(day, added!.id, { name: 'big switch' }));
    expect(problemOf(bringBackPart(phone.day(), 'sel-line5'))).toEqual({
      code: 'selector-there',
      input: 'line 5',
    });
    expect(struckParts(phone.day())).toEqual([]);
  });

  test('comes back with its input alone, and not with the one struck before', () => {
    const phone = readded();
    const [added] = selectorsBefore(phone.day(), 'line5');
    phone.run((day) => describePart(day, added!.id, { name: 'big switch' }));
    phone.run((day) => strikePart(day, 'line5'));
    phone.run((day) => bringBackPart(day, 'line5'));
    expect(selectorsBefore(phone.day(), 'line5').map(({ name }) => name)).toEqual(['big switch']);
  });
});

describe('a part that was struck', () => {
  test('does not come back where one that comes with it would bear a name that is taken', () => {
    const phone = laidRig('modules');
    phone.run((day) => strikePart(day, 'rx'));
    const modules = [{ name: 'near', channels: 1, outputs: 'aes3' as const }];
    phone.run((day) => addReceiver(day, { name: 'other', place: 'cart', modules }, 'other'));
    phone.run((day) => describePart(day, 'other-ch1', { name: 'receiver 3' }));
    expect(problemOf(bringBackPart(phone.day(), 'rx'))).toEqual({ code: 'name-taken', name: 'receiver 3' });
    expect(struckParts(phone.day())).toEqual([]);
    phone.run((day) => describePart(day, 'other-ch1', { name: 'other 1' }));
    expect(struckParts(phone.day()).map(({ name }) => name)).toEqual(['receiver']);
  });

  test('finds its socket taken by the lead that was plugged meanwhile, also once that is pulled again', () => {
    const phone = laidRig('modules');
    phone.run((day) => strikePart(day, 'rx-out1'));
    expect(reachOf(phone.day(), 'aes31').arrival).toBeNull();
    phone.run((day) => plugRun(day, ['rx-out2'], ['aes31']));
    phone.run((day) => bringBackPart(day, 'rx-out1'));
    expect(reachOf(phone.day(), 'aes31').arrival?.from).toBe('rx-out2');
    phone.run((day) => plugRun(day, ['rx-out2'], ['aes32']));
    expect(reachOf(phone.day(), 'aes31').arrival).toBeNull();
  });

  test('is held to nobody any more, who could be on nothing else for the plan', () => {
    const phone = laidRig('modules');
    phone.say({ kind: 'voice-described', voice: 'ines', fields: { part: 'Ines' } });
    const pins = () => pinsOf(answersNow(phone.day()).links, 'ines')?.value;
    phone.run((day) => pinVoice(day, 'ines', { input: 'aes31', track: 'tr4', alone: true }));
    phone.run((day) => strikePart(day, 'aes32'));
    expect(pins()).toEqual({ input: 'aes31', track: 'tr4', alone: true });
    phone.run((day) => strikePart(day, 'aes31'));
    expect(pins()).toEqual({ track: 'tr4', alone: true });
    phone.run((day) => pinVoice(day, 'ines', { alone: undefined }));
    phone.run((day) => strikePart(day, 'tr4'));
    expect(pins()).toBeNull();
  });

  test('is not in the rig of tomorrow, nor anything said of it', () => {
    const phone = laidRig('bag');
    phone.run((day) => describeDevices(day, ['tx1', 'tx2', 'recorder'], { ppm: 1 }));
    phone.run(() => describeLeads(['lead-near-out1', 'lead-near-out2'], { ends: 'xlr' }));
    for (const part of ['near-ch1', 'aes31', 'aes32', 'tx1', 'tr16', 'slot-ch5'])
      phone.run((day) => strikePart(day, part));
    const said = carryOver(phone.day(), { atMs: MORNING, zone: 120 });
    if (!said.ok) throw new Error(said.problem.code);
    const text = JSON.stringify(said.value);
    for (const gone of ['near-ch1', 'near-out1', 'aes31', 'aes32', 'tx1', 'tr16', 'slot-ch5'])
      expect([gone, text.includes(`"${gone}"`)]).toEqual([gone, false]);
    const devices = said.value.flatMap((draft) => (draft.kind === 'devices-described' ? draft.devices : []));
    expect(devices).toEqual(['tx2', 'recorder']);
    const described = said.value.flatMap((draft) => (draft.kind === 'leads-described' ? draft.leads : []));
    expect(described.map(({ lead }) => lead)).toEqual(['lead-near-out2']);
  });

  test('leaves the gang of tomorrow to those who are left', () => {
    const phone = laidRig('bag');
    const gangs = () => {
      const said = carryOver(phone.day(), { atMs: MORNING, zone: 120 });
      return said.ok
        ? said.value.flatMap((draft) => (draft.kind === 'gang-declared' ? [draft.sources] : []))
        : [];
    };
    expect(gangs()).toEqual([['slot-ch5', 'slot-ch6', 'slot-ch7', 'slot-ch8']]);
    for (const part of ['slot-ch5', 'slot-ch6']) phone.run((day) => strikePart(day, part));
    expect(gangs()).toEqual([['slot-ch7', 'slot-ch8']]);
    phone.run((day) => strikePart(day, 'slot-ch7'));
    expect(gangs()).toEqual([]);
  });
});
