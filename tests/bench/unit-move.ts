import { diceOf } from '../../sample-days/dice.ts';
import { layBeside } from '../../src/commands/day/lay-beside.ts';
import { addReceiver, addTransmitters, layRecorder, tuneBlock } from '../../src/commands/rig/lay-rig.ts';
import type { Day } from '../../src/day/model.ts';
import { type Setup, setupProblem } from '../../src/plan/day/setup-plans.ts';
import type { Plan } from '../../src/plan/setup/plan-next-setup.ts';
import { isProven } from '../../src/plan/setup/proven.ts';
import { FIRST_BUDGET, FULL_BUDGET } from '../../src/plan/steps.ts';
import { type Laying, layingPhone } from '../commands/rig-day.ts';
import { planNextSetup } from '../plan/at-once.ts';
import { medianMs } from './row.ts';

const VOICES = 24;
const RIGS = 12;

/** A recorder of 32 tracks beside another, and a box of 24 channels for both; 24 voices with packs, a third of them off. */
function twoRecorders(seed: number): Laying {
  const dice = diceOf(seed);
  const phone = layingPhone();
  const spec = {
    tracks: 32,
    inputs: [
      { kind: 'line', count: 16 },
      { kind: 'network', count: 16 },
    ],
  } as const;
  phone.run(() => layRecorder(spec));
  const modules = (['analogue', 'network'] as const).map((outputs) => ({
    name: outputs,
    channels: VOICES / 2,
    outputs,
  }));
  phone.run((day) => addReceiver(day, { name: 'box', place: 'remote', modules }, 'box'));
  phone.run((day) => addTransmitters(day, 'A', VOICES, phone.newId));
  const channels = phone.day().rig.channels.map(({ id }) => id);
  const packs = phone.day().rig.transmitters.map(({ id }) => id);
  // Half of the channels are tuned to a pack that they do not bear the number of.
  const tuned = packs.map((pack, at) => (at % 2 === 0 ? pack : packs[(at + 2) % VOICES]!));
  phone.run(() => tuneBlock(channels, tuned));
  phone.run((day) => layBeside(day, layRecorder(spec), { name: 'Bag' }));
  for (const [at, pack] of packs.entries()) {
    const voice = `voice${at + 1}`;
    phone.say({
      kind: 'voice-described',
      voice,
      fields: { part: `Part ${at + 1}`, priority: 1 + dice.below(6) },
    });
    if (dice.next() < 2 / 3) phone.say({ kind: 'transmitter-worn', transmitter: pack, voice });
  }
  return phone;
}

/** The plans of a move, main recorder first. */
function plansOf(day: Day, move: Setup, budget: number): Plan[] {
  const plans: Plan[] = [];
  for (let next = setupProblem(day, move, plans); next; next = setupProblem(day, move, plans)) {
    const planned = planNextSetup(next, budget);
    if (!planned.ok) throw new Error(planned.problem.code);
    plans.push(planned.value);
  }
  return plans;
}

export interface UnitMeasure {
  /** Of the first answer, and of the plans of both recorders in full: the slowest of the rigs. */
  readonly firstMs: number;
  readonly fullMs: number;
  readonly proven: number;
  readonly rigs: number;
}

/** Moves 24 voices to two recorders of 32 tracks each that both roll (seeds 1 to 12). */
export const unitMoves = (): UnitMeasure =>
  measure((phone) => ({ recorders: ['recorder', phone.day().rig.recorders[0]!.id], ...everybody(phone) }));

/** Plans the next setup of 24 voices where two recorders of 32 tracks each roll already. */
export const setupsOnTwo = (): UnitMeasure =>
  measure((phone) => {
    phone.say({ kind: 'recorders-rolling', recorders: ['recorder', phone.day().rig.recorders[0]!.id] });
    return everybody(phone);
  });

const everybody = (phone: Laying) => ({ wanted: new Set(phone.day().voices.keys()) });

function measure(setupOn: (phone: Laying) => Setup): UnitMeasure {
  const measured = Array.from({ length: RIGS }, (_, at) => {
    const phone = twoRecorders(at + 1);
    const setup = setupOn(phone);
    const day = phone.day();
    const plans = plansOf(day, setup, FULL_BUDGET);
    if (plans.length !== 2) throw new Error('not both are planned');
    const firstMs = medianMs(3, () => plansOf(day, setup, FIRST_BUDGET));
    const fullMs = medianMs(3, () => plansOf(day, setup, FULL_BUDGET));
    if (!plans.every(({ exact }) => exact.leftOut)) throw new Error('who is recorded is not proven');
    return { firstMs, fullMs, isProven: plans.every(isProven) };
  });
  return {
    firstMs: Math.max(...measured.map((one) => one.firstMs)),
    fullMs: Math.max(...measured.map((one) => one.fullMs)),
    proven: measured.filter((one) => one.isProven).length,
    rigs: RIGS,
  };
}
