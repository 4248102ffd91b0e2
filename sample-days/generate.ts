import type { Draft, Fact } from '../src/facts/fact.ts';
import type { DayId } from '../src/facts/kinds/envelope.ts';
import type { TakeFields } from '../src/facts/kinds/take-logged.ts';
import { stampFacts } from '../src/facts/stamp.ts';
import { idSource } from '../src/shared/ids.ts';
import { type Dice, diceOf } from './dice.ts';
import { changeOf } from './generated-changes.ts';
import { type Prep, prepOf } from './generated-prep.ts';
import { withSecondRecorder } from './generated-second.ts';

/** How large a generated day is. */
export interface DaySize {
  /** Any whole number; one seed and one size give the same facts everywhere. */
  readonly seed: number;
  readonly takes: number;
  /** 2 to 400; the first is the mix, the second the boom's. */
  readonly tracks: number;
  /** 0 to 400. */
  readonly performers: number;
  /** How many facts in all, exactly; no fewer than `leastFacts`. Without it, three changes before every take. */
  readonly facts?: number;
  /** Whether changes are placed late, moved and taken back; true without it. */
  readonly corrections?: boolean;
  /** A second recorder with as many tracks of its own, which gets all that the first one gets and rolls along. */
  readonly isTwice?: boolean;
  readonly day?: DayId;
  readonly date?: string;
  readonly label?: string;
  /** The eleven characters its facts are written under. */
  readonly writer?: string;
}

export interface GeneratedDay {
  readonly day: DayId;
  readonly title: string;
  readonly facts: readonly Fact[];
}

const TAKES_IN_SETUP = 3;
const SETUPS_IN_SCENE = 12;
const CHANGES_BEFORE_A_TAKE = 3;

/** The fewest facts a day of this size can have: rig, cast, slates, and every take rolled and cut. */
export const leastFacts = (size: DaySize): number => {
  const { drafts } = prepFor(size);
  return drafts.length + Math.ceil(size.takes / TAKES_IN_SETUP) + 2 * size.takes;
};

/**
 * A day of any size as facts in the order of their ids, one action each: a rig with a pack on every track but the
 * boom's, setups of three takes, and in front of every take an even share of changes: packs that move, mutes, gangs,
 * notes, corrections. `generateDay({ seed: 1, takes: 90, tracks: 16, performers: 12, facts: 500 })` has 500 facts.
 */
export function generateDay(size: DaySize): GeneratedDay {
  const { takes, day = 'generated', date = '2026-02-02', label = 'Day 1' } = size;
  const prep = prepFor(size);
  const least = leastFacts(size);
  const { facts: wanted = least + CHANGES_BEFORE_A_TAKE * takes } = size;
  if (wanted < least) throw new RangeError(`A day of this size has at least ${least} facts`);
  if (takes === 0 && wanted > least)
    throw new RangeError('Changes are spread before takes, and there are none');
  const telling = new Telling(day, date, size.writer ?? 'generated00');
  for (const draft of prep.drafts) telling.say(draft);
  tellTakes(telling, prep, size, wanted - least);
  return { day, title: `Generated ${label}`, facts: telling.facts };
}

function prepFor({ tracks, performers, isTwice, date = '2026-02-02', label = 'Day 1' }: DaySize): Prep {
  for (const [what, count, least] of [['tracks', tracks, 2] as const, ['performers', performers, 0] as const])
    if (!Number.isInteger(count) || count < least || count > 400)
      throw new RangeError(`${what}: ${least} to 400, not ${count}`);
  const prep = prepOf({ tracks, performers, date, label });
  return isTwice ? withSecondRecorder(prep) : prep;
}

function tellTakes(
  telling: Telling,
  prep: Prep,
  { seed, takes, corrections = true }: DaySize,
  extra: number,
): void {
  const dice = diceOf(seed);
  const said = { takes: [] as string[], changes: [] as Fact[] };
  for (let at = 0; at < takes; at += 1) {
    const setup = Math.floor(at / TAKES_IN_SETUP);
    const slate = {
      style: 'lettered' as const,
      scene: `${Math.floor(setup / SETUPS_IN_SCENE) + 1}`,
      setup: setup % SETUPS_IN_SCENE,
    };
    if (at % TAKES_IN_SETUP === 0) telling.say({ kind: 'slate-called', slate });
    const share = Math.floor(((at + 1) * extra) / takes) - Math.floor((at * extra) / takes);
    for (let change = 0; change < share; change += 1) {
      const fact = telling.say(changeOf(dice, prep, said, corrections));
      if (fact.kind === 'transmitter-worn' || fact.kind === 'mute-set') said.changes.push(fact);
    }
    said.takes.push(tellTake(telling, dice, { kind: 'take', slate, number: (at % TAKES_IN_SETUP) + 1 }));
  }
}

/** Rolls and cuts; a take lasts from 10 s to 3 min. */
function tellTake(telling: Telling, dice: Dice, fields: TakeFields): string {
  const start = { frames: Math.floor(telling.msOfDay / 40) % 2_160_000, rate: '25' as const };
  const { id } = telling.say({ kind: 'take-logged', fields: { ...fields, start, rolledAt: telling.atMs } });
  const frames = 250 + dice.below(4250);
  telling.pass(frames * 40);
  const cut = { cutAt: telling.atMs, length: { frames, rate: '25' as const } };
  telling.say({ kind: 'take-described', take: id, fields: cut });
  return id;
}

/** Says facts one after another, four seconds apart, from seven in the morning on. */
class Telling {
  readonly facts: Fact[] = [];
  readonly #day: DayId;
  readonly #midnight: number;
  readonly #ids: ReturnType<typeof idSource>;
  msOfDay = 7 * 3_600_000;

  constructor(day: DayId, date: string, writer: string) {
    this.#day = day;
    this.#midnight = Date.parse(`${date}T00:00:00Z`);
    this.#ids = idSource(writer);
  }

  get atMs(): number {
    return this.#midnight + this.msOfDay;
  }

  pass(ms: number): void {
    this.msOfDay += ms;
  }

  say(draft: Draft): Fact {
    this.pass(4000);
    const saying = { day: this.#day, at: this.atMs, zone: 0, nextId: this.#ids.next };
    const [fact] = stampFacts([draft], saying);
    this.facts.push(fact!);
    return fact!;
  }
}

export interface SeasonSize extends Omit<DaySize, 'day' | 'date' | 'label' | 'writer'> {
  /** 120 without it. */
  readonly days?: number;
}

/** A season, a day at a time, on consecutive dates; no two facts of it share an id. Days are `season-1` and on. */
export function* generateSeason({ days = 120, ...size }: SeasonSize): Generator<GeneratedDay> {
  for (let number = 1; number <= days; number += 1) {
    const date = new Date(Date.UTC(2026, 1, 1 + number)).toISOString().slice(0, 10);
    yield generateDay({
      ...size,
      seed: size.seed + number,
      day: `season-${number}`,
      date,
      label: `Day ${number}`,
      writer: `season${number.toString(36).padStart(5, '0')}`,
    });
  }
}
