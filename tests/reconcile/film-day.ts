import type { Day, TakeKind } from '../../src/day/model.ts';
import type { Draft } from '../../src/facts/fact.ts';
import type { RateId } from '../../src/time/rate.ts';
import { framesPerDay, rateOf } from '../../src/time/rate.ts';
import { type Speaker, speaker } from '../day/say.ts';
import { SMALL_CAST, SMALL_RIG } from '../day/small-rig.ts';

export interface FilmDay {
  readonly takes: number;
  readonly rate?: '23.976' | '24' | '25' | '29.97' | '29.97DF' | '30';
  /** First label, seconds after midnight by the label. */
  readonly fromHour?: number;
  readonly seed?: number;
}

/** Numbers from 0 to 1, the same for the same seed (mulberry32, public domain). */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

export interface Filmed {
  readonly phone: Speaker;
  readonly takes: readonly string[];
  readonly day: () => Day;
}

/**
 * A day as a film shoots it: slates of a few takes, false starts, pickups, wild tracks, MOS, packs that move between takes,
 * a new roll at half-time; every take starts some minutes after the last and never overlaps it.
 */
export function filmDay({ takes, rate = '25', fromHour = 9, seed = 1 }: FilmDay): Filmed {
  const random = seeded(seed);
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  const phone = speaker();
  phone.say(...SMALL_RIG);
  phone.say(...SMALL_CAST);
  phone.say({
    kind: 'day-described',
    fields: { production: 'Salt Road', date: '2026-10-07', timecodeRate: rate },
  });
  phone.say({ kind: 'roll-changed', roll: '7A' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A1', voice: 'ines' });
  phone.say({ kind: 'transmitter-worn', transmitter: 'A2', voice: 'dora' });
  const { base } = rateOf(rate);
  const ids: string[] = [];
  let frames = fromHour * 3600 * base;
  let [scene, setup, number] = [24, 0, 0];
  const series = { wild: 0, tone: 0 };
  for (let at = 0; at < takes; at += 1) {
    if (at === Math.floor(takes / 2)) phone.say({ kind: 'roll-changed', roll: '7B' });
    if (random() < 0.2) phone.say(packMoves(whole(1, 3), whole(0, 2)));
    if (random() < 0.3) [setup, number] = [setup + 1, 0];
    if (random() < 0.05) [scene, setup, number] = [scene + 1, 0, 0];
    const kind = kindFor(random());
    const falseStart = kind === 'take' && random() < 0.08;
    const counted = kind === 'wild' || kind === 'tone' ? series[kind] + 1 : number + 1;
    if (kind === 'wild' || kind === 'tone') series[kind] = counted;
    else if (!falseStart) number = counted;
    const length = whole(5, 240) * base + whole(0, base - 1);
    ids.push(phone.id(takeAt({ kind, scene, setup, number: counted, falseStart, frames, length, rate })));
    if (random() < 0.3) phone.say({ kind: 'note-added', take: ids.at(-1)!, text: `Remark ${at}` });
    if (kind !== 'mos') frames += length + whole(30, 200) * base;
  }
  return { phone, takes: ids, day: phone.day };
}

const packMoves = (pack: number, voice: number): Draft => ({
  kind: 'transmitter-worn',
  transmitter: `A${pack}`,
  voice: ['ines', 'dora', 'tomas'][voice]!,
});

function kindFor(chance: number): TakeKind {
  if (chance < 0.04) return 'wild';
  if (chance < 0.06) return 'tone';
  if (chance < 0.1) return 'mos';
  return chance < 0.15 ? 'pickup' : 'take';
}

function takeAt(take: {
  kind: TakeKind;
  scene: number;
  setup: number;
  number: number;
  falseStart: boolean;
  frames: number;
  length: number;
  rate: RateId;
}): Draft {
  const { kind, scene, setup, number, falseStart, frames, length, rate } = take;
  const slate = { style: 'lettered' as const, scene: String(scene), setup };
  const times =
    kind === 'mos'
      ? {}
      : { start: { frames: frames % framesPerDay(rate), rate }, length: { frames: length, rate } };
  const fields = { kind, slate, number, falseStart, circled: !falseStart && number % 3 === 0, ...times };
  return { kind: 'take-logged', fields };
}
