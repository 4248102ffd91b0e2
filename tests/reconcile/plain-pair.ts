import type { Take } from '../../src/day/model.ts';
import type { CheckedPair } from '../../src/reconcile/differences/checked-pair.ts';
import type { Logged } from '../../src/reconcile/log-and-card/logged.ts';
import type { Recorded } from '../../src/reconcile/log-and-card/recorded.ts';

/** A take and a recording of which nothing is known but what is said here. */
export const loggedWith = (more: Partial<Logged> = {}, take: Partial<Take> = {}): Logged => ({
  take: { kind: 'take', number: 1, falseStart: false, ...take } as Take,
  stem: '',
  stems: more.stem ? [more.stem] : [],
  nameTyped: false,
  scenes: [],
  looseScenes: [],
  roll: undefined,
  startMs: undefined,
  lengthMs: undefined,
  answers: {} as Logged['answers'],
  ...more,
});

export const recordedWith = (more: Partial<Recorded> = {}): Recorded => ({
  recording: { files: [] } as unknown as Recorded['recording'],
  stems: new Set(),
  shortStems: new Set(),
  scene: undefined,
  number: undefined,
  roll: undefined,
  startMs: undefined,
  pressMs: more.startMs,
  lengthMs: undefined,
  preRollMs: 0,
  types: new Set(),
  trackKey: '[]',
  ...more,
});

export const pairWith = (logged: Partial<Logged>, recorded: Partial<Recorded>): CheckedPair =>
  ({ logged: loggedWith(logged), recorded: recordedWith(recorded), take: {} }) as unknown as CheckedPair;
