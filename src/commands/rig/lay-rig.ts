import type { Day, PartId } from '../../day/model.ts';
import { newIds } from '../../day/new-ids.ts';
import type { Draft } from '../../facts/fact.ts';
import type { PartFields, Place } from '../../facts/kinds/part-described.ts';
import { INPUTS, type OutputKind } from '../../facts/kinds/rig-kinds.ts';
import { fail, ok } from '../../shared/result.ts';
import { type CommandResult, missing, type Placing, placed } from '../command.ts';
import { freeNames, idAfter, LONGEST_NAME, nameProblem } from './part-names.ts';
import type { RigSpec } from './rig-spec.ts';

export interface SaidPart {
  part: PartId;
  fields: PartFields;
}

/** The order after every part of the rig, so that additions come last. */
export const nextOrder = (day: Day): number =>
  Math.min(90_000, [...day.rig.byId.values()].reduce((last, { order }) => Math.max(last, order), -1) + 1);

export const laid = (parts: SaidPart[]): Draft => ({ kind: 'rig-laid', parts });

/**
 * Sets up a recorder: its inputs and tracks, each input on its own track. Track 1 is the mix. If there are
 * more inputs than iso tracks, the last inputs share the last track.
 */
export function layRecorder(spec: RigSpec): CommandResult {
  const tracks: SaidPart[] = Array.from({ length: spec.tracks }, (_, at) => ({
    part: `tr${at + 1}`,
    fields:
      at === 0
        ? { type: 'track', name: 'Mix', order: 0, mix: true, tap: 'post' }
        : { type: 'track', name: `${at + 1}`, order: at, mix: false, tap: 'pre' },
  }));
  const inputs = spec.inputs.flatMap(({ kind, count }) =>
    Array.from({ length: count }, (_, at) => ({
      part: `${kind}${at + 1}`,
      fields: { type: 'input', name: `${INPUTS[kind].called} ${at + 1}`, inputKind: kind } as PartFields,
    })),
  );
  inputs.forEach(({ fields }, order) => {
    fields.order = order;
  });
  const isos = tracks.slice(1).map(({ part }) => part);
  const routes = inputs.map(({ part }, at) => ({
    input: part,
    tracks: isos.length > 0 ? [isoFor(at, isos)] : [],
  }));
  return ok([laid([...tracks, ...inputs]), { kind: 'inputs-sent', routes }]);
}

const isoFor = (at: number, isos: readonly PartId[]): PartId => isos[Math.min(at, isos.length - 1)]!;

const MOST_CHANNELS = 64;

export interface ReceiverSpec {
  readonly name: string;
  readonly place: Place;
  /** Modules of so many channels each; every channel has one output of this kind. */
  readonly modules: readonly {
    readonly name: string;
    readonly channels: number;
    readonly outputs: OutputKind;
  }[];
}

/** Adds a receiver with its channels and outputs. `id` is new; the ids of its parts derive from it. */
export function addReceiver(day: Day, spec: ReceiverSpec, id: PartId): CommandResult {
  const name = spec.name.trim();
  const count = spec.modules.reduce((sum, { channels }) => sum + channels, 0);
  const wrong = nameProblem(day, { type: 'receiver', name });
  if (wrong) return wrong;
  const whole = spec.modules.every(({ channels }) => Number.isInteger(channels) && channels >= 0);
  if (!whole || count < 1 || count > MOST_CHANNELS)
    return fail({ code: 'receiver-channels', least: 1, most: MOST_CHANNELS });
  const order = nextOrder(day);
  const parts: SaidPart[] = [{ part: id, fields: { type: 'receiver', name, place: spec.place, order } }];
  let number = 0;
  for (const { name: typed, channels, outputs } of spec.modules) {
    const module = typed.trim().slice(0, LONGEST_NAME);
    for (let at = 0; at < channels; at += 1) {
      number += 1;
      const own = { name: `${name} ${number}`, receiver: id, module, order: order + number };
      parts.push(
        { part: `${id}-ch${number}`, fields: { ...own, type: 'channel' } },
        {
          part: `${id}-out${number}`,
          fields: {
            ...own,
            type: 'output',
            outputKind: outputs,
            carries: [`${id}-ch${number}`],
            reserved: null,
          },
        },
      );
    }
  }
  return ok([laid(parts)]);
}

/** Adds transmitters `prefix`1 to `prefix`n, continuing the existing numbers. */
export function addTransmitters(day: Day, prefix: string, count: number, newId: () => PartId): CommandResult {
  const letters = prefix.trim();
  if (letters === '') return fail({ code: 'name-empty' });
  if (letters.length > 12) return fail({ code: 'name-too-long', longest: 12 });
  if (!Number.isInteger(count) || count < 1 || count > 64)
    return fail({ code: 'how-many', least: 1, most: 64 });
  const taken = new Set(day.rig.transmitters.map(({ name }) => name));
  const order = nextOrder(day);
  const parts: SaidPart[] = [];
  for (let number = 1; parts.length < count; number += 1) {
    const name = `${letters}${number}`;
    if (taken.has(name)) continue;
    const fields: PartFields = {
      type: 'transmitter',
      name,
      wear: 'pack',
      order: order + parts.length,
    };
    parts.push({ part: newId(), fields });
  }
  return ok([laid(parts)]);
}

/** Tunes channels to transmitters one to one, in order, up to the shorter list. */
export function tuneBlock(
  channels: readonly PartId[],
  transmitters: readonly PartId[],
  at: Placing = {},
): CommandResult {
  const count = Math.min(channels.length, transmitters.length);
  if (count === 0) return fail({ code: 'block-empty' });
  const tunings = channels
    .slice(0, count)
    .map((channel, at) => ({ channel, transmitter: transmitters[at]! }));
  return ok([placed({ kind: 'channels-tuned', tunings }, at)]);
}

/** Plugs a block of outputs into inputs one to one, in order: a snake, or a route over the network. */
export function plugBlock(
  outputs: readonly PartId[],
  inputs: readonly PartId[],
  position: 'a' | 'b' = 'a',
): CommandResult {
  const count = Math.min(outputs.length, inputs.length);
  if (count === 0) return fail({ code: 'block-empty' });
  const leads = outputs
    .slice(0, count)
    .map((from, at) => ({ lead: idAfter('lead', from), from, to: inputs[at]!, position }));
  return ok([{ kind: 'leads-plugged', leads }]);
}

/**
 * Puts a bank of selectors before inputs, one each, with the names of their two positions. Selectors and
 * banks continue the existing numbers.
 */
export function addSelectors(
  day: Day,
  inputs: readonly PartId[],
  positions: [string, string],
): CommandResult {
  if (inputs.length === 0) return fail({ code: 'block-empty' });
  const named = positions.map((name) => name.trim()) as [string, string];
  for (const name of named) {
    if (name === '') return fail({ code: 'name-empty' });
    if (name.length > LONGEST_NAME) return fail({ code: 'name-too-long', longest: LONGEST_NAME });
  }
  const unknown = inputs.find((id) => day.rig.byId.get(id)?.type !== 'input');
  if (unknown !== undefined) return missing('input', unknown);
  const switched = day.rig.selectors.find(({ input }) => input !== undefined && inputs.includes(input));
  if (switched) return fail({ code: 'selector-there', input: day.rig.byId.get(switched.input!)!.name });
  const names = freeNames(day, 'selector', 'selector', inputs.length);
  const bank = `bank ${new Set(day.rig.selectors.map((selector) => selector.bank)).size + 1}`;
  const order = nextOrder(day);
  const newId = newIds(day);
  const parts = inputs.map((input, at) => ({
    part: newId(idAfter('sel', input)),
    fields: {
      type: 'selector' as const,
      name: names[at]!,
      input,
      positions: named,
      bank,
      struck: false,
      order: order + at,
    },
  }));
  return ok([laid(parts)]);
}
