import { listenersOf } from '../day/answers/listeners.ts';
import { type MicRun, micRunsOf } from '../day/answers/mic-runs.ts';
import { type UnitRuns, unitRunsOf } from '../day/answers/unit-runs.ts';
import type { Day, FactOf } from '../day/model.ts';
import { tracksOf } from '../day/recorders/recorder-parts.ts';
import { recordersOf } from '../day/recorders/rolling.ts';
import { rateNow } from '../day/settings/settings.ts';
import { TAPS } from '../facts/kinds/part-described.ts';
import { FIRST_RECORDER } from '../facts/kinds/recorder-set.ts';
import { isOneOf } from '../shared/open-word.ts';
import { rateOf } from '../time/rate.ts';
import { cleanLine } from './clean-text.ts';

/** Something done at these moments, each by the clock of whoever did it. */
export interface Moment {
  readonly atMs: number;
  readonly zone: number;
}

/** What is before and after the faders on a recorder: its mixes, then its isos. */
export interface TapsLine {
  readonly recorder: string;
  readonly mixes: readonly TrackTap[];
  readonly isos: readonly TrackTap[];
}

export interface TrackTap {
  readonly name: string;
  /** Null until it is entered, and for a word of a newer version. */
  readonly tap: 'pre' | 'post' | null;
}

/** A device, what it was jammed from, and when. */
export interface JamLine {
  readonly device: string;
  readonly from: string;
  readonly at: readonly Moment[];
}

/** How far a device was heard to be ahead of another, each time. */
export interface ComparedLine {
  readonly device: string;
  readonly with: string;
  readonly at: readonly (Moment & { readonly frames: number; readonly doubtFrames: number })[];
}

/** The mics of a voice, one after another, and where the voice is if it is a plant or a feed. */
export interface MicLine {
  readonly name: string;
  readonly person: string;
  readonly place: string;
  readonly mics: readonly MicRun[];
}

/** Who heard the sound as it was made; `isOut`: they have the receiver yet. */
export interface ListenerLine {
  readonly name: string;
  readonly receiver: string;
  readonly channel: string;
  readonly hears: string;
  readonly isOut: boolean;
}

/** What the facts of a day say of its timecode, faders, mics and listeners, for the head of the report. */
export interface HeadFacts {
  readonly taps: readonly TapsLine[];
  /** When the phone, whose clock stamps the starts, was synced to the recorder. */
  readonly synced: readonly Moment[];
  readonly jams: readonly JamLine[];
  readonly compared: readonly ComparedLine[];
  readonly mics: readonly MicLine[];
  readonly listeners: readonly ListenerLine[];
  /** What each unit shot, on a day of more than one. */
  readonly units: readonly UnitRuns[];
}

export const NO_HEAD_FACTS: HeadFacts = {
  ...{ taps: [], synced: [], jams: [], compared: [] },
  ...{ mics: [], listeners: [], units: [] },
};

export const headFacts = (day: Day): HeadFacts => ({
  taps: tapsOf(day),
  synced: standing(day, 'clock-followed').map(({ atMs, zone }) => ({ atMs, zone })),
  jams: jamsOf(day),
  compared: comparedOf(day),
  mics: micsOf(day),
  units: unitRunsOf(day).map(({ unit, takes }) => ({
    unit,
    takes: takes.map(({ from, to }) => ({ from: cleanLine(from), to: cleanLine(to) })),
  })),
  listeners: listenersOf(day).map(({ name, receiver, channel, hears, handedOut }) => ({
    name: cleanLine(name),
    receiver: cleanLine(receiver),
    channel: cleanLine(channel),
    hears: cleanLine(hears),
    isOut: handedOut,
  })),
});

const standing = <Kind extends 'clock-followed' | 'devices-jammed' | 'timecode-compared'>(
  day: Day,
  kind: Kind,
): FactOf<Kind>[] =>
  day.facts.filter((fact): fact is FactOf<Kind> => fact.kind === kind && !day.takenBack.has(fact.id));

const tapsOf = (day: Day): TapsLine[] =>
  recordersOf(day).map(({ id, name }) => {
    const taps = tracksOf(day.rig, id).map(({ name, tap, mix = false }) => ({
      ...{ name: cleanLine(name), mix },
      tap: tap !== undefined && isOneOf(TAPS, tap) ? tap : null,
    }));
    return {
      recorder: cleanLine(name),
      mixes: taps.filter(({ mix }) => mix),
      isos: taps.filter(({ mix }) => !mix),
    };
  });

function jamsOf(day: Day): JamLine[] {
  const found = new Map<string, { device: string; from: string; at: Moment[] }>();
  for (const { devices, from, at, atMs = at, zone } of standing(day, 'devices-jammed')) {
    for (const device of devices) {
      const key = JSON.stringify([device, from]);
      const known = found.get(key) ?? {
        device: deviceName(day, device),
        from: deviceName(day, from),
        at: [],
      };
      known.at.push({ atMs, zone });
      found.set(key, known);
    }
  }
  return [...found.values()];
}

/** In frames of the day's rate; none where it has none that is known here. */
function comparedOf(day: Day): ComparedLine[] {
  const rate = rateNow(day);
  if (!rate) return [];
  const found = new Map<string, { device: string; with: string; at: ComparedLine['at'][number][] }>();
  for (const { device, from, atMs, zone, offMs, doubtMs } of standing(day, 'timecode-compared')) {
    const key = JSON.stringify([device, from]);
    const known = found.get(key) ?? {
      device: deviceName(day, device),
      with: deviceName(day, from),
      at: [],
    };
    const { num, den } = rateOf(rate);
    const frameMs = (1000 * den) / num;
    known.at.push({ atMs, zone, frames: offMs / frameMs, doubtFrames: doubtMs / frameMs });
    found.set(key, known);
  }
  return [...found.values()];
}

const deviceName = ({ header, rig, upkeep }: Day, id: string): string =>
  cleanLine(
    id === FIRST_RECORDER
      ? header.recorder || 'Recorder'
      : (rig.byId.get(id)?.name ?? upkeep.devices.get(id)?.name ?? id),
  );

/** Voices of which the place or a mic is known, in the order of the cast. */
function micsOf(day: Day): MicLine[] {
  const runs = micRunsOf(day);
  return [...day.voices.values()]
    .filter(({ struck }) => !struck)
    .map(({ id, part, person = '', place = '' }) => ({
      name: cleanLine(part),
      person: cleanLine(person),
      place: cleanLine(place),
      mics: (runs.get(id) ?? []).map(cleanRun),
    }))
    .filter(({ place, mics }) => place !== '' || mics.length > 0);
}

const cleanRun = ({ pack, listed, rubs, carried, from }: MicRun): MicRun => ({
  pack: cleanLine(pack),
  listed: listed.map(cleanLine),
  rubs: cleanLine(rubs),
  carried,
  from: cleanLine(from),
});
