import { foldDay } from '../../day/fold/fold.ts';
import type { Day } from '../../day/model.ts';
import type { Draft } from '../../facts/fact.ts';
import type { Place } from '../../facts/kinds/part-described.ts';
import { stampFacts } from '../../facts/stamp.ts';
import { idSource } from '../../shared/ids.ts';
import { ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { addOutput } from './grow-rig.ts';
import {
  addReceiver,
  addSelectors,
  addTransmitters,
  layRecorder,
  plugBlock,
  type ReceiverSpec,
  tuneBlock,
} from './lay-rig.ts';
import type { RigSpec } from './rig-spec.ts';

/** A rig to start from: common practice, no source. */
export interface StartingRig {
  readonly id: string;
  readonly name: string;
  readonly about: string;
  /** The facts that set it up, as one action. */
  readonly lay: () => CommandResult;
}

/** Runs commands one after another on a scratch day, so that each sees the results of the one before. */
class Laying {
  readonly drafts: Draft[] = [];
  readonly #ids = idSource('layinglayin');
  #counter = 0;

  get day(): Day {
    const saying = { day: 'laying', at: 0, zone: 0, nextId: this.#ids.next };
    return foldDay('laying', stampFacts(this.drafts, saying));
  }

  say(said: CommandResult): void {
    if (!said.ok) throw new Error(`A starting rig failed: ${said.problem.code}`);
    this.drafts.push(...said.value);
  }

  recorder(spec: RigSpec): void {
    this.say(layRecorder(spec));
  }

  /** A receiver with a transmitter for each channel, tuned to it. */
  radio(id: string, name: string, place: Place, modules: ReceiverSpec['modules'], prefix: string): void {
    this.say(addReceiver(this.day, { name, place, modules }, id));
    const count = modules.reduce((sum, { channels }) => sum + channels, 0);
    this.say(
      addTransmitters(this.day, prefix, count, () => {
        this.#counter += 1;
        return `tx${this.#counter}`;
      }),
    );
    const channels = this.day.rig.channels.filter(({ receiver }) => receiver === id).map((part) => part.id);
    const packs = this.day.rig.transmitters.filter(({ name: pack }) => pack.startsWith(prefix));
    this.say(
      tuneBlock(
        channels,
        packs.slice(-count).map((part) => part.id),
      ),
    );
  }

  plug(outputs: string[], inputs: string[], position: 'a' | 'b' = 'a'): void {
    this.say(plugBlock(outputs, inputs, position));
  }
}

const run = (prefix: string, from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, at) => `${prefix}${from + at}`);

function bagOfSixteen(): CommandResult {
  const rig = new Laying();
  rig.recorder({
    tracks: 16,
    inputs: [
      { kind: 'mic', count: 4 },
      { kind: 'aes3', count: 4 },
      { kind: 'return', count: 2 },
      { kind: 'slot', count: 8 },
    ],
  });
  rig.radio('near', 'near', 'bag', [{ name: 'digital', channels: 4, outputs: 'aes3' }], 'A');
  rig.radio('far', 'far', 'bag', [{ name: 'line', channels: 4, outputs: 'analogue' }], 'B');
  rig.radio('slot', 'slot', 'bag', [{ name: 'internal', channels: 8, outputs: 'slot' }], 'C');
  rig.plug(run('near-out', 1, 4), run('aes3', 1, 4));
  rig.plug(run('far-out', 1, 2), run('return', 1, 2));
  rig.plug(run('far-out', 3, 4), run('mic', 3, 4));
  rig.plug(run('slot-out', 1, 8), run('slot', 1, 8));
  rig.drafts.push(
    { kind: 'voice-described', voice: 'boom1', fields: { kind: 'boom', part: 'Boom 1', priority: 400 } },
    { kind: 'voice-described', voice: 'boom2', fields: { kind: 'boom', part: 'Boom 2', priority: 401 } },
    {
      kind: 'leads-plugged',
      leads: [
        { lead: 'lead-boom1', from: 'boom1', to: 'mic1' },
        { lead: 'lead-boom2', from: 'boom2', to: 'mic2' },
      ],
    },
    { kind: 'gang-declared', track: 'tr16', sources: run('slot-ch', 5, 8) },
  );
  return ok(rig.drafts);
}

function cartWithFarBox(): CommandResult {
  const rig = new Laying();
  rig.recorder({
    tracks: 16,
    inputs: [
      { kind: 'line', count: 12 },
      { kind: 'mic', count: 3 },
    ],
  });
  rig.radio('cart', 'cart', 'cart', [{ name: 'cart', channels: 12, outputs: 'analogue' }], 'A');
  rig.radio('box', 'far box', 'remote', [{ name: 'far box', channels: 12, outputs: 'network' }], 'B');
  rig.say(addSelectors(rig.day, run('line', 1, 12), ['cart', 'far box']));
  rig.plug(run('cart-out', 1, 12), run('line', 1, 12), 'a');
  rig.plug(run('box-out', 1, 12), run('line', 1, 12), 'b');
  for (const [at, reserved] of (['timecode', 'comms'] as const).entries()) {
    const spare = { name: `far box ${13 + at}`, kind: 'network', channel: null, reserved } as const;
    rig.say(addOutput(rig.day, 'box', spare, `box-out${13 + at}`));
  }
  return ok(rig.drafts);
}

function twoModules(): CommandResult {
  const rig = new Laying();
  rig.recorder({
    tracks: 12,
    inputs: [
      { kind: 'mic', count: 2 },
      { kind: 'aes3', count: 4 },
      { kind: 'line', count: 4 },
      { kind: 'return', count: 1 },
    ],
  });
  rig.radio(
    'rx',
    'receiver',
    'cart',
    [
      { name: 'near', channels: 4, outputs: 'aes3' },
      { name: 'far', channels: 4, outputs: 'analogue' },
    ],
    'A',
  );
  rig.plug(run('rx-out', 1, 4), run('aes3', 1, 4));
  rig.plug(run('rx-out', 5, 8), run('line', 1, 4));
  return ok(rig.drafts);
}

export const STARTING_RIGS: readonly StartingRig[] = [
  {
    id: 'bag',
    name: 'Bag, 16 tracks',
    about: '4 mic, 4 AES3, 2 returns, 8 slots; 16 packs and 2 booms. Slots 5 to 8 share track 16.',
    lay: bagOfSixteen,
  },
  {
    id: 'cart',
    name: 'Cart with a far box',
    about: '12 inputs, each with a selector between the cart and a receiver box on a network lead.',
    lay: cartWithFarBox,
  },
  {
    id: 'modules',
    name: 'Two modules',
    about: 'One receiver: the near module on AES3, the far module on line.',
    lay: twoModules,
  },
];
