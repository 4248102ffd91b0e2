import { foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import { speaker, take } from '../day/say.ts';

export interface LargeDay {
  readonly takes: number;
  readonly tracks: number;
  /** A pack moves to somebody else before every so many takes. */
  readonly changeEvery?: number;
  readonly note?: string;
  /** Parts of the first of those who begin with a pack, from track 2 on. */
  readonly names?: readonly string[];
  /** A second recorder with as many tracks gets everybody too, and rolls along. */
  readonly isTwice?: boolean;
}

/** A day of any size: a mix, and every other track with a pack of its own; packs wander; a note on every third take. */
export function largeDay({
  takes,
  tracks,
  changeEvery = 3,
  note = 'Generator behind the wall',
  names = [],
  isTwice = false,
}: LargeDay): Day {
  const phone = speaker();
  const numbers = Array.from({ length: tracks - 1 }, (_, at) => at + 2);
  phone.say({
    kind: 'rig-laid',
    parts: [
      { part: 'tr1', fields: { type: 'track', name: '1', mix: true } },
      { part: 'rx', fields: { type: 'receiver', name: 'cart' } },
      ...numbers.flatMap((n) => [
        { part: `tr${n}`, fields: { type: 'track' as const, name: `${n}` } },
        { part: `in${n}`, fields: { type: 'input' as const, name: `in ${n}` } },
        { part: `ch${n}`, fields: { type: 'channel' as const, name: `ch ${n}`, receiver: 'rx' } },
        { part: `out${n}`, fields: { type: 'output' as const, receiver: 'rx', carries: [`ch${n}`] } },
        { part: `P${n}`, fields: { type: 'transmitter' as const, name: `P${n}` } },
      ]),
    ],
  });
  phone.say({ kind: 'day-described', fields: { production: 'Salt Road', label: 'day 7', mixer: 'N. Aske' } });
  phone.say({ kind: 'roll-changed', roll: '7A' });
  phone.say({ kind: 'inputs-sent', routes: numbers.map((n) => ({ input: `in${n}`, tracks: [`tr${n}`] })) });
  phone.say({
    kind: 'leads-plugged',
    leads: numbers.map((n) => ({ lead: `l${n}`, from: `out${n}`, to: `in${n}` })),
  });
  phone.say({
    kind: 'channels-tuned',
    tunings: numbers.map((n) => ({ channel: `ch${n}`, transmitter: `P${n}` })),
  });
  if (isTwice) phone.say(...secondRecorder(numbers));
  for (const n of numbers) {
    phone.say({
      kind: 'voice-described',
      voice: `v${n}`,
      fields: { part: names[n - 2] ?? `Villager ${n}`, number: `${n}` },
    });
    phone.say({ kind: 'voice-described', voice: `w${n}`, fields: { part: `Rider ${n}`, number: `1${n}` } });
    phone.say({ kind: 'transmitter-worn', transmitter: `P${n}`, voice: `v${n}` });
  }
  for (let at = 0; at < takes; at += 1) {
    const n = numbers[at % numbers.length];
    if (n !== undefined && at % changeEvery === 0) phone.say(move(n, at));
    const start = { frames: 900_000 + at * 2000, rate: '25' };
    const id = phone.id(
      take(String(20 + Math.floor(at / 12)), Math.floor(at / 4) % 3, (at % 4) + 1, {
        start,
        circled: at % 4 === 3,
      }),
    );
    if (at % 3 === 0) phone.say({ kind: 'note-added', take: id, text: note });
  }
  return foldDay('day-1', phone.facts);
}

const secondRecorder = (numbers: readonly number[]): Draft[] => [
  {
    kind: 'rig-laid',
    parts: [
      { part: 'second', fields: { type: 'recorder', name: 'Second' } },
      { part: 's1', fields: { type: 'track', name: '1', mix: true, recorder: 'second' } },
      ...numbers.flatMap((n) => [
        { part: `s${n}`, fields: { type: 'track' as const, name: `${n}`, recorder: 'second' } },
        { part: `sin${n}`, fields: { type: 'input' as const, name: `in ${n}`, recorder: 'second' } },
      ]),
    ],
  },
  { kind: 'inputs-sent', routes: numbers.map((n) => ({ input: `sin${n}`, tracks: [`s${n}`] })) },
  {
    kind: 'leads-plugged',
    leads: numbers.map((n) => ({ lead: `s${n}`, from: `out${n}`, to: `sin${n}` })),
  },
  { kind: 'roll-changed', recorder: 'second', roll: '7B' },
  { kind: 'recorders-rolling', recorders: ['recorder', 'second'] },
];

const move = (n: number, at: number): Draft => ({
  kind: 'transmitter-worn',
  transmitter: `P${n}`,
  voice: `${at % 2 === 0 ? 'w' : 'v'}${n}`,
});
