import { describe, expect, test } from 'vitest';
import { addVoice } from '../../src/commands/day/describe.ts';
import { layRecorder } from '../../src/commands/rig/lay-rig.ts';
import { likelyInput } from '../../src/commands/rig/plug-run.ts';
import { readRigSpec } from '../../src/commands/rig/rig-spec.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { inputsToOffer } from '../../src/day/answers/inputs-to-offer.ts';
import {
  INPUT_KINDS,
  INPUTS,
  OUTPUT_KINDS,
  OUTPUTS,
  type OutputKind,
} from '../../src/facts/kinds/rig-kinds.ts';
import { pathEnds } from '../../src/plan/day/day-paths.ts';
import { problemOf } from '../../src/plan/day/day-problem.ts';
import { specWords } from '../../src/ui/words/rig-spec.ts';
import { leadsOfDay } from '../../src/upkeep/wiring/day-wiring.ts';
import { layingPhone } from './rig-day.ts';

/** A recorder with one input of every kind, and a receiver with one output of this kind. */
function everyInput(outputKind: OutputKind) {
  const phone = layingPhone();
  const inputs = INPUT_KINDS.map((kind) => ({ kind, count: 1 }));
  phone.run(() => layRecorder({ tracks: inputs.length + 1, inputs }));
  phone.say({
    kind: 'rig-laid',
    parts: [
      { part: 'ch', fields: { type: 'channel', name: 'channel' } },
      { part: 'out', fields: { type: 'output', name: 'output', outputKind, carries: ['ch'] } },
    ],
  });
  return phone;
}

const plannedFrom = (phone: ReturnType<typeof layingPhone>, from: string): string[] =>
  problemOf(phone.day(), new Set())
    .paths.map(({ id }) => pathEnds(id))
    .filter((ends) => ends.from === from)
    .map(({ input }) => input);

describe('a kind of input', () => {
  test.each(INPUT_KINDS)('%s is typed as it is shown, one or several', (kind) => {
    for (const count of [1, 3]) {
      const spec = { tracks: 20, inputs: [{ kind, count }] };
      const [, shown] = /inputs?: (.*)\. Each/.exec(specWords(spec))!;
      expect(readRigSpec(`20 tracks, ${shown}`)).toEqual({ ok: true, value: spec });
    }
  });

  test.each(INPUT_KINDS)('%s is fitted by some output', (kind) => {
    expect(OUTPUT_KINDS.filter((output) => OUTPUTS[output].into[kind] !== false)).not.toEqual([]);
  });

  // Common practice, no source.
  test('takes a hardline where it has a socket for one', () => {
    const phone = everyInput('aes3');
    phone.run(() => addVoice({ kind: 'boom', part: 'Boom' }, 'boom'));
    const offered = inputsToOffer(answersNow(phone.day())).map(({ input }) => input.inputKind);
    expect(offered).toEqual(['mic', 'line', 'aes3', 'return', 'network']);
    expect(plannedFrom(phone, 'boom')).toEqual(['mic1', 'line1']);
    expect(Object.values(INPUTS).filter(({ hardline }) => hardline === 'never')).toHaveLength(1);
  });
});

describe('a kind of output', () => {
  // Common practice, no source: where one is plugged first, and where its lead may be planned.
  test.each<[OutputKind, string, string[]]>([
    ['analogue', 'line1', ['mic1', 'line1', 'return1']],
    ['aes3', 'aes31', ['aes31']],
    ['network', 'network1', ['network1']],
    ['slot', 'slot1', []],
  ])('%s goes first into %s, and is planned into %j', (kind, first, planned) => {
    const phone = everyInput(kind);
    expect(likelyInput(answersNow(phone.day()), kind)).toBe(first);
    expect(plannedFrom(phone, 'out')).toEqual(planned);
  });

  test.each(OUTPUT_KINDS)('%s has one input that is the likeliest', (kind) => {
    const ranks = Object.values(OUTPUTS[kind].into).filter((rank) => rank !== false);
    expect(ranks.toSorted()).toEqual(ranks.map((_, at) => at + 1));
  });

  test('says how its lead is made off where that follows', () => {
    const madeOff = Object.fromEntries(
      OUTPUT_KINDS.map((kind) => {
        const phone = everyInput(kind);
        const to = kind === 'slot' ? 'slot1' : 'mic1';
        phone.say({ kind: 'leads-plugged', leads: [{ lead: 'l', from: 'out', to }] });
        return [kind, leadsOfDay(phone.day())[0]!.ends];
      }),
    );
    expect(madeOff).toEqual({
      analogue: { kind: 'other', words: 'not said' },
      aes3: { kind: 'other', words: 'not said' },
      network: { kind: 'other', words: 'network route' },
      slot: { kind: 'other', words: 'inside the recorder' },
    });
  });
});
