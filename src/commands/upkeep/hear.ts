import type { Day } from '../../day/model.ts';
import type { FactOf } from '../../facts/fact.ts';
import type { DeviceId } from '../../facts/kinds/envelope.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';
import { wrongDevices } from './keep-up.ts';

/** A frame heard at a moment of the phone's clock, which may be between two milliseconds. */
export interface HeardTie {
  readonly frames: number;
  readonly rate: FactOf<'clock-followed'>['rate'];
  readonly atMs: number;
  readonly heard: NonNullable<FactOf<'clock-followed'>['heard']>;
}

const MOST_SPREAD_MS = 1000;

/** Ties the phone's clock to timecode that was heard. */
export function followHeard({ frames, rate, atMs, heard }: HeardTie): CommandResult {
  const spreadMs = Math.min(MOST_SPREAD_MS, heard.spreadMs);
  return ok([
    { kind: 'clock-followed', frames, rate, atMs: Math.round(atMs), heard: { ...heard, spreadMs } },
  ]);
}

export interface HeardApart {
  readonly device: DeviceId;
  readonly from: DeviceId;
  readonly atMs: number;
  readonly offMs: number;
  readonly doubtMs: number;
}

/** How far a device was heard to be ahead of another. */
export function compareTimecode(day: Day, { device, from, atMs, offMs, doubtMs }: HeardApart): CommandResult {
  const wrong = wrongDevices(day, [device, from]);
  if (wrong) return wrong;
  if (device === from) return fail({ code: 'jam-from-itself' });
  return ok([{ kind: 'timecode-compared', device, from, atMs: Math.round(atMs), offMs, doubtMs }]);
}
