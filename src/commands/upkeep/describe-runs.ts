import type { Day } from '../../day/model.ts';
import type { LeadFields, RunFields, SnakeSignal } from '../../facts/kinds/runs-described.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { outOfBounds } from './bounds.ts';
import { wrongRecorder } from './wrong-recorder.ts';

/** Describes a cable run: a powered network lead, or a DC lead on the cart. A new one needs its type. */
export function describeRun(day: Day, run: string, fields: RunFields): CommandResult {
  if (!day.upkeep.runs.has(run) && !fields.type) return fail({ code: 'run-without-type' });
  const wrong = outOfBounds([
    { field: 'metres', value: fields.metres, min: 0.1, max: 1000 },
    { field: 'watts', value: fields.watts, min: 0.001, max: 10_000 },
    { field: 'powerClass', value: fields.powerClass, min: 0, max: 8, whole: true },
    { field: 'celsius', value: fields.celsius, min: -60, max: 120 },
    { field: 'connectorOhms', value: fields.connectorOhms, min: 0, max: 20 },
    { field: 'channels', value: fields.channels, min: 0, max: 512, whole: true },
    { field: 'channelsAStream', value: fields.channelsAStream, min: 1, max: 512, whole: true },
    { field: 'samplesAPacket', value: fields.samplesAPacket, min: 1, max: 4096, whole: true },
    { field: 'linkMbps', value: fields.linkMbps, min: 1, max: 1_000_000, whole: true },
    { field: 'volts', value: fields.volts, min: 0.1, max: 60 },
    { field: 'awg', value: fields.awg, min: 0, max: 40, whole: true },
    { field: 'deviceMinVolts', value: fields.deviceMinVolts, min: 0, max: 60 },
    { field: 'batteryWattHours', value: fields.batteryWattHours, min: 0.01, max: 1_000_000 },
  ]);
  return wrong ?? wrongRecorder(day, fields) ?? ok([{ kind: 'run-described', run, fields }]);
}

/** Records how leads are wired. */
export function describeLeads(leads: readonly string[], fields: LeadFields): CommandResult {
  if (leads.length === 0) return fail({ code: 'nothing-chosen' });
  return ok([{ kind: 'leads-described', leads: leads.map((lead) => ({ lead, fields })) }]);
}

/** Puts leads on the circuits of an 8-channel snake, in order from `first`. */
export function putOnSnake(
  leads: readonly string[],
  snake: string,
  carries: SnakeSignal,
  first = 1,
): CommandResult {
  const name = snake.trim();
  if (leads.length === 0) return fail({ code: 'nothing-chosen' });
  if (name === '') return fail({ code: 'name-empty' });
  if (first + leads.length - 1 > 8) return fail({ code: 'snake-too-short', count: leads.length, first });
  return ok([
    {
      kind: 'leads-described',
      leads: leads.map((lead, at) => ({
        lead,
        fields: { ends: 'snake', snake: name, circuit: first + at, carries },
      })),
    },
  ]);
}
