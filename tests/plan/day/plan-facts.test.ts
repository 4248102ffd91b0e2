import { describe, expect, test } from 'vitest';
import { addVoice } from '../../../src/commands/day/describe.ts';
import * as chain from '../../../src/commands/line/change-chain.ts';
import { markOut, pinVoice, weighMoves } from '../../../src/commands/line/plan-ahead.ts';
import { layRecorder } from '../../../src/commands/rig/lay-rig.ts';
import { answersNow } from '../../../src/day/answers/answers.ts';
import { gangsOn } from '../../../src/day/chain/gang-links.ts';
import { leadsOf } from '../../../src/day/chain/leads.ts';
import { mutedAt, needOf, tunedTo } from '../../../src/day/chain/links.ts';
import type { Day, VoiceId } from '../../../src/day/model.ts';
import { problemOf } from '../../../src/plan/day/day-problem.ts';
import { neededNow } from '../../../src/plan/day/plan-facts.ts';
import { setupBesides, setupFacts } from '../../../src/plan/day/setup-plans.ts';
import type { Move } from '../../../src/plan/moves.ts';
import type { Plan } from '../../../src/plan/setup/plan-next-setup.ts';
import { besideWords } from '../../../src/ui/plan/words.ts';
import { plugLead } from '../../commands/plug-lead.ts';
import { type Laying, laidRig, layingPhone } from '../../commands/rig-day.ts';
import { take } from '../../day/say.ts';
import { planNextSetup } from '../at-once.ts';
import { brokenPromises } from '../far-end.ts';

/** The rig of two modules: channels 1 to 4 on AES 1 to 4 and tracks 4 to 7, 5 to 8 on line 1 to 4 and tracks 8 to 11. */
function modules(worn: Readonly<Record<VoiceId, string | null>>): Laying {
  const phone = laidRig('modules');
  for (const [voice, pack] of Object.entries(worn)) {
    phone.run(() => addVoice({ part: voice, priority: 1 }, voice));
    if (pack) phone.run((day) => chain.giveTransmitter(day, pack, voice));
  }
  return phone;
}

function addBoom(phone: Laying, input: string): void {
  phone.run(() => addVoice({ kind: 'boom', part: 'Boom', priority: 400 }, 'boom'));
  phone.run(() => plugLead({ lead: 'lead-boom', from: 'boom', to: input }));
}

function planned(day: Day, wanted: readonly VoiceId[]): Plan {
  const plan = planNextSetup(problemOf(day, new Set(wanted)));
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
}

/** Accepts the plan, or the moves of it that are chosen, and gives the day before and after. */
function accept(
  phone: Laying,
  wanted: readonly VoiceId[],
  chosen: (move: Move) => boolean = () => true,
): { before: Day; after: Day; plan: Plan } {
  const before = phone.day();
  const plan = planned(before, wanted);
  phone.say(...setupFacts(before, { wanted: new Set(wanted) }, [plan], [plan.moves.filter(chosen)]));
  return { before, after: phone.day(), plan };
}

const besidesOf = (phone: Laying, wanted: readonly VoiceId[]): string[] => {
  const day = phone.day();
  const [main] = setupBesides(day, { wanted: new Set(wanted) }, [planned(day, wanted)]);
  return main!.besides.map((beside) => besideWords(day, beside));
};

const kindsOf = ({ moves }: Plan): string[] => moves.map(({ kind }) => kind);
const stateOf = (day: Day, voice: VoiceId) => answersNow(day).voices.find((one) => one.voice.id === voice)!;
const leadOf = ({ rig, tail }: Day, lead: string) =>
  [...leadsOf(rig, tail)].find(({ id }) => id === lead)?.link.value;
const gangsOf = ({ tail }: Day) => gangsOn(tail, 'tr4').map(({ sources }) => sources);
const onTrack = (day: Day, track: string) =>
  answersNow(day)
    .tracks.find((one) => one.track.id === track)!
    .heard.flatMap(({ voice, muted }) => (muted ? [] : [voice]));

describe('a pack that a plan puts on another channel', () => {
  /** Ada goes to channel 3, and the boom gets the track that her old channel still feeds. */
  function moved(): Laying {
    const phone = modules({ Ada: 'tx1' });
    addBoom(phone, 'mic1');
    phone.run((day) => pinVoice(day, 'Ada', { channel: 'rx-ch3' }));
    phone.run((day) => pinVoice(day, 'boom', { track: 'tr4', input: 'mic1' }));
    return phone;
  }

  test('leaves the old one, so that nobody who is promised a track is muted', () => {
    const { before, after, plan } = accept(moved(), ['Ada', 'boom']);
    expect(kindsOf(plan)).toEqual(['retune', 'route']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect([stateOf(after, 'Ada').state, stateOf(after, 'Ada').tracks]).toEqual(['alone', ['tr6']]);
    expect(onTrack(after, 'tr4')).toEqual(['boom']);
    expect(tunedTo(after.tail, 'rx-ch1')?.value).toBeNull();
    expect(after.facts.filter(({ kind }) => kind === 'mute-set')).toEqual([]);
  });

  test('leaves it also where only that move is accepted', () => {
    const { after } = accept(moved(), ['Ada', 'boom'], ({ kind }) => kind === 'retune');
    expect([stateOf(after, 'Ada').state, stateOf(after, 'Ada').tracks]).toEqual(['alone', ['tr6']]);
  });

  test('stays on a channel that is tuned to it on purpose, where nobody else is promised that track', () => {
    const phone = modules({ Ada: 'tx1' });
    phone.run((day) => chain.tuneChannel(day, 'rx-ch3', 'tx1'));
    const { after } = accept(phone, ['Ada']);
    expect(stateOf(after, 'Ada').tracks).toEqual(['tr4', 'tr6']);
  });

  test('is tuned away from a second channel that brings it onto the track of others', () => {
    const phone = modules({ Ada: 'tx1' });
    addBoom(phone, 'mic1');
    phone.run((day) => chain.tuneChannel(day, 'rx-ch3', 'tx1'));
    phone.run((day) => pinVoice(day, 'Ada', { channel: 'rx-ch1' }));
    phone.run((day) => pinVoice(day, 'boom', { track: 'tr6', input: 'mic1' }));
    expect(besidesOf(phone, ['Ada', 'boom'])).toEqual(['tune receiver 3 to nothing']);
    const { before, after, plan } = accept(phone, ['Ada', 'boom']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(stateOf(after, 'Ada').tracks).toEqual(['tr4']);
  });
});

describe('somebody who wears two packs', () => {
  test('is heard where the accepted part puts the planned one on the channel of the other, at a muted input', () => {
    const phone = modules({ Ada: 'tx1', Ben: null });
    phone.run((day) => chain.giveTransmitter(day, 'tx2', 'Ada'));
    phone.run((day) => chain.setMute(day, 'aes32', true));
    phone.run((day) => pinVoice(day, 'Ada', { transmitter: 'tx1', channel: 'rx-ch2' }));
    const { after, plan } = accept(phone, ['Ada', 'Ben'], ({ kind }) => kind === 'retune');
    expect(kindsOf(plan)).toContain('fit');
    expect(onTrack(after, 'tr5')).toEqual(['Ada']);
  });
});

describe('a pack that two channels are tuned to', () => {
  test('comes by the planned one only when a plan fits it to somebody', () => {
    const phone = modules({ Ada: null });
    phone.run((day) => chain.tuneChannel(day, 'rx-ch4', 'tx3'));
    phone.run((day) => pinVoice(day, 'Ada', { transmitter: 'tx3', channel: 'rx-ch3' }));
    const { after, plan } = accept(phone, ['Ada']);
    expect(kindsOf(plan)).toEqual(['fit']);
    expect(stateOf(after, 'Ada').tracks).toEqual(['tr6']);
  });
});

describe('whoever is on a track that a plan promises to others', () => {
  test('is muted while only waiting, and heard again once promised a track', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    phone.run((day) => chain.sendInput(day, 'aes32', ['tr4']));
    expect(besidesOf(phone, ['Ada'])).toEqual(['mute A2']);
    const first = accept(phone, ['Ada']);
    expect(besidesOf(phone, ['Ada', 'Ben'])).toEqual(['unmute A2']);
    expect(brokenPromises(first.before, first.after, first.plan.recorded)).toEqual([]);
    expect(mutedAt(first.after.tail, 'tx2')?.value).toBe(true);
    const second = accept(phone, ['Ada', 'Ben']);
    expect(brokenPromises(second.before, second.after, second.plan.recorded)).toEqual([]);
    expect(stateOf(second.after, 'Ben').state).toBe('alone');
  });

  test('is not muted where promised another one whose moves are still to be made', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    phone.run((day) => pinVoice(day, 'Ada', { track: 'tr5', input: 'aes31', channel: 'rx-ch1' }));
    phone.run((day) => pinVoice(day, 'Ben', { track: 'tr4', input: 'aes32', channel: 'rx-ch2' }));
    const { after } = accept(phone, ['Ada', 'Ben'], (move) => 'input' in move && move.input === 'aes31');
    expect(stateOf(after, 'Ada').tracks).toEqual(['tr5']);
    expect(onTrack(after, 'tr5').sort()).toEqual(['Ada', 'Ben']);
    const rest = accept(phone, ['Ada', 'Ben']);
    expect(brokenPromises(rest.before, rest.after, rest.plan.recorded)).toEqual([]);
  });

  test('is not heard again where that would be a clash with somebody who waits', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx5' });
    phone.run((day) => chain.sendInput(day, 'aes31', ['tr4', 'tr8']));
    phone.run((day) => chain.setMute(day, 'tx1', true));
    const { before, after, plan } = accept(phone, ['Ada']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect([onTrack(after, 'tr4'), onTrack(after, 'tr8')]).toEqual([['Ada'], ['Ben']]);
  });

  test('loses every such track that the same input feeds', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx5' });
    addBoom(phone, 'mic1');
    phone.run((day) => chain.sendInput(day, 'aes31', ['tr4', 'tr9', 'tr8']));
    phone.run((day) => pinVoice(day, 'boom', { track: 'tr9', input: 'mic1' }));
    const { before, after, plan } = accept(phone, ['Ada', 'Ben', 'boom']);
    expect(plan.recorded.map(({ track }) => track).sort()).toEqual(['tr4', 'tr8', 'tr9']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
  });

  test('loses only that track where the same input feeds it on top of the promised one', () => {
    const phone = modules({ Ada: 'tx1' });
    addBoom(phone, 'mic1');
    phone.run((day) => chain.sendInput(day, 'aes31', ['tr4', 'tr9', 'tr10']));
    phone.run((day) => pinVoice(day, 'boom', { track: 'tr9', input: 'mic1' }));
    const { before, after, plan } = accept(phone, ['Ada', 'boom']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(stateOf(after, 'Ada').tracks).toEqual(['tr4', 'tr10']);
  });
});

describe('a plan with several re-plugs', () => {
  test('leaves every lead it plugs where it was plugged, also where two change places', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    phone.run((day) => pinVoice(day, 'Ada', { track: 'tr5', channel: 'rx-ch1' }));
    phone.run((day) => pinVoice(day, 'Ben', { track: 'tr4', channel: 'rx-ch2' }));
    phone.run(() => weighMoves({ route: 9, retune: 9 }));
    const { before, after, plan } = accept(phone, ['Ada', 'Ben']);
    expect(kindsOf(plan)).toEqual(['replug', 'replug']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(leadOf(after, 'lead-rx-out1')).toMatchObject({ to: 'aes32' });
    expect(leadOf(after, 'lead-rx-out2')).toMatchObject({ to: 'aes31' });
    expect(planned(after, ['Ada', 'Ben']).moves).toEqual([]);
  });

  test('says of each only the lead that is plugged: what it pushes out follows from the line', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    phone.run((day) => pinVoice(day, 'Ada', { track: 'tr5', channel: 'rx-ch1' }));
    phone.run(() => weighMoves({ route: 9, retune: 9 }));
    const { after } = accept(phone, ['Ada']);
    const plugged = after.facts.flatMap((fact) => (fact.kind === 'leads-plugged' ? fact.leads : []));
    expect(plugged.at(-1)).toEqual({ lead: 'lead-rx-out1', from: 'rx-out1', to: 'aes32', position: 'a' });
    expect(plugged.filter(({ lead }) => lead === 'lead-rx-out2')).toHaveLength(1);
    expect(onTrack(after, 'tr5')).toEqual(['Ada']);
  });

  test('plugs the output that was planned where a channel has two', () => {
    const phone = modules({ Ada: 'tx1' });
    phone.run(() => ({
      ok: true,
      value: [
        {
          kind: 'part-described',
          part: 'split',
          fields: { type: 'output', name: 'split', outputKind: 'analogue', carries: ['rx-ch1'], order: 900 },
        },
      ],
    }));
    phone.run((day) => pinVoice(day, 'Ada', { channel: 'rx-ch1', input: 'mic2' }));
    const { before, after, plan } = accept(phone, ['Ada']);
    expect(kindsOf(plan)).toEqual(['replug']);
    expect(leadOf(after, 'lead-split')).toMatchObject({ from: 'split', to: 'mic2' });
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
  });
});

describe('a gang that a plan makes', () => {
  test('is declared beside those of that track, and not twice', () => {
    const phone = layingPhone();
    phone.run(() => layRecorder({ tracks: 4, inputs: [{ kind: 'line', count: 5 }] }));
    for (const at of [1, 2, 3, 4, 5]) {
      phone.run(() => addVoice({ kind: 'boom', part: `Boom ${at}`, priority: at }, `boom${at}`));
      const said = { lead: `lead-${at}`, from: `boom${at}`, to: `line${at}` };
      phone.run(() => plugLead(said));
      if (at === 4) phone.run((day) => chain.declareGang(day, 'tr4'));
    }
    const { before, after, plan } = accept(phone, ['boom1', 'boom2', 'boom4', 'boom5']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(onTrack(after, 'tr4')).toEqual(['boom4', 'boom5']);
    expect(gangsOf(after)).toEqual([
      ['boom3', 'boom4'],
      ['boom4', 'boom5'],
    ]);
    const again = accept(phone, ['boom1', 'boom2', 'boom4', 'boom5']);
    expect(again.after.facts.filter(({ kind }) => kind === 'gang-declared')).toHaveLength(2);
  });
});

describe('a plan that is asked again after it was accepted', () => {
  test('finds no gang that only its own routes would make possible', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx5', Cleo: 'tx2' });
    for (const { id } of phone.day().rig.tracks) {
      if (!['tr2', 'tr3'].includes(id)) phone.run(() => markOut(id, true));
    }
    const { before, after, plan } = accept(phone, ['Ada', 'Ben', 'Cleo']);
    expect(plan.leftOut).toHaveLength(1);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(planned(after, ['Ada', 'Ben', 'Cleo'])).toMatchObject({ moves: [], leftOut: plan.leftOut });
  });

  test('has counted on the lead of a boom whose plug-on goes to somebody else', () => {
    const phone = modules({ Ada: null });
    addBoom(phone, 'mic1');
    phone.run((day) => chain.giveTransmitter(day, 'tx1', 'boom'));
    for (const { id } of phone.day().rig.transmitters) if (id !== 'tx1') phone.run(() => markOut(id, true));
    const { before, after, plan } = accept(phone, ['Ada', 'boom']);
    expect(plan.recorded.map(({ voice }) => voice).sort()).toEqual(['Ada', 'boom']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(planned(after, ['Ada', 'boom']).moves).toEqual([]);
  });

  test('gives a boom the plug-on that it is pinned to, whatever its lead could do', () => {
    const phone = modules({});
    addBoom(phone, 'mic1');
    phone.run((day) => pinVoice(day, 'boom', { transmitter: 'tx3' }));
    const { before, after, plan } = accept(phone, ['boom']);
    expect(kindsOf(plan)).toEqual(['fit']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(planned(after, ['boom']).moves).toEqual([]);
  });

  test('counts the lead of two on one output that is plugged', () => {
    const phone = modules({ Ada: 'tx1' });
    phone.run(() => plugLead({ lead: 'lead-rx-out1', from: 'rx-out1', to: null }));
    phone.run(() => plugLead({ lead: 'spare', from: 'rx-out1', to: 'aes31' }));
    expect(planned(phone.day(), ['Ada']).moves).toEqual([]);
  });

  test('gives an output a lead of its own where the one named after it is on another', () => {
    const phone = modules({ Ada: 'tx1' });
    phone.run(() => plugLead({ lead: 'lead-rx-out1', from: 'rx-out5', to: 'line1' }));
    phone.run((day) => pinVoice(day, 'Ada', { channel: 'rx-ch1' }));
    const { before, after, plan } = accept(phone, ['Ada']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
    expect(leadOf(after, 'lead-rx-out1')).toMatchObject({ from: 'rx-out5', to: 'line1' });
    expect(leadOf(after, 'lead2-rx-out1')).toMatchObject({ from: 'rx-out1' });
  });

  test('does not take for plugged a lead that another has pushed out', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    const [plug] = [{ lead: 'lead-rx-out2', from: 'rx-out2', to: 'aes31', position: 'a' as const }];
    phone.say({ kind: 'leads-plugged', leads: [plug] });
    const paths = problemOf(phone.day(), new Set(['Ada'])).paths.filter(({ plugged }) => plugged);
    expect(paths.filter(({ input }) => input === 'aes31').map(({ source }) => source)).toEqual(['rx-ch2']);
    const { before, after, plan } = accept(phone, ['Ada', 'Ben']);
    expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
  });
});

describe('an input that may share its track', () => {
  /** Five line inputs on three iso tracks: the last three were laid on track 4. */
  function recorder(): Laying {
    const phone = layingPhone();
    phone.run(() => layRecorder({ tracks: 4, inputs: [{ kind: 'line', count: 5 }] }));
    return phone;
  }
  const sharing = (phone: Laying): string[] =>
    problemOf(phone.day(), new Set()).inputs.flatMap(({ id, canGang }) => (canGang ? [id] : []));

  test('was laid on one track with others, whatever it is sent to by now', () => {
    const phone = recorder();
    expect(sharing(phone)).toEqual(['line3', 'line4', 'line5']);
    phone.run((day) => chain.sendInput(day, 'line5', ['tr2']));
    expect(sharing(phone)).toEqual(['line3', 'line4', 'line5']);
  });

  test('or shares one now, with sources that were declared to', () => {
    const phone = recorder();
    for (const [voice, input] of [
      ['boom1', 'line1'],
      ['boom2', 'line2'],
    ] as const) {
      phone.run(() => addVoice({ kind: 'boom', part: voice }, voice));
      phone.run(() => plugLead({ lead: `lead-${voice}`, from: voice, to: input }));
    }
    phone.run((day) => chain.sendInput(day, 'line2', ['tr2']));
    expect(sharing(phone)).toEqual(['line3', 'line4', 'line5']);
    phone.run((day) => chain.declareGang(day, 'tr2'));
    expect(sharing(phone)).toEqual(['line1', 'line2', 'line3', 'line4', 'line5']);
    phone.run((day) => chain.sendInput(day, 'line2', ['tr3']));
    expect(sharing(phone)).toEqual(['line3', 'line4', 'line5']);
  });
});

describe('the track somebody had last', () => {
  test('is the one on which they were heard, not one on which they were muted', () => {
    const phone = modules({ Ada: 'tx1' });
    phone.say(take('24', 1, 1));
    phone.run((day) => chain.tuneChannel(day, 'rx-ch1', null));
    phone.run((day) => chain.tuneChannel(day, 'rx-ch3', 'tx1'));
    phone.run((day) => chain.setMute(day, 'tx1', true));
    phone.say(take('24', 1, 2));
    const last = () => problemOf(phone.day(), new Set()).voices[0]!.lastTrack;
    expect(last()).toBe('tr4');
    phone.run((day) => chain.setMute(day, 'tx1', false));
    phone.say(take('24', 1, 3));
    expect(last()).toBe('tr6');
  });
});

describe('who is needed', () => {
  test('now: whoever was said to be, and a hardline that is up, until it is said that it is not', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2' });
    addBoom(phone, 'mic1');
    phone.run(() => addVoice({ kind: 'plant', part: 'Plant' }, 'plant'));
    phone.run((day) => chain.markNeed(day, ['Ben'], 'needed'));
    expect([...neededNow(phone.day())]).toEqual(['Ben', 'boom']);
    phone.run((day) => chain.markNeed(day, ['boom'], 'resting'));
    expect([...neededNow(phone.day())]).toEqual(['Ben']);
  });

  test('after a plan: whoever is wanted; who was needed until now rests, who is done stays done, who was never asked for stays so', () => {
    const phone = modules({ Ada: 'tx1', Ben: 'tx2', Cleo: 'tx3', Dov: 'tx4', Emil: 'tx5' });
    addBoom(phone, 'mic1');
    phone.run((day) => chain.markNeed(day, ['Ben'], 'needed'));
    phone.run((day) => chain.markNeed(day, ['Cleo', 'Emil'], 'done'));
    const { after } = accept(phone, ['Ada', 'Emil']);
    const needs = ['Ada', 'Ben', 'Cleo', 'Dov', 'Emil', 'boom'].map((id) => [
      id,
      needOf(after.tail, id)?.value,
    ]);
    expect(needs).toEqual([
      ['Ada', 'needed'],
      ['Ben', 'resting'],
      ['Cleo', 'done'],
      ['Dov', undefined],
      ['Emil', 'needed'],
      // A boom that is up counts as needed until somebody says it is not.
      ['boom', 'resting'],
    ]);
  });
});

const CASTS = { bag: [1, 5, 10, 16], cart: [1, 5, 10, 16, 20], modules: [1, 5, 10, 16, 20] };
/** Inputs of the bag; of the cart its twelve lines and three more that a lead of the cart fits; channels of the modules. */
const MOST_RECORDED = { bag: 18, cart: 15, modules: 8 };

describe('a ready rig that nobody has touched', () => {
  const rigs = ['bag', 'cart', 'modules'] as const;
  test.each(rigs.flatMap((id) => CASTS[id].map((count) => [id, count] as const)))(
    '%s records as promised with a cast of %i',
    (id, count) => {
      const phone = laidRig(id);
      const cast = Array.from({ length: count }, (_, at) => `v${at + 1}`);
      for (const [at, voice] of cast.entries())
        phone.run(() => addVoice({ part: voice, priority: at + 1 }, voice));
      const wanted = [...phone.day().voices.keys()];
      const { before, after, plan } = accept(phone, wanted);
      expect(plan.recorded.length).toBe(Math.min(wanted.length, MOST_RECORDED[id]));
      expect(brokenPromises(before, after, plan.recorded)).toEqual([]);
      expect(planned(after, wanted).moves).toEqual([]);
    },
  );
});
