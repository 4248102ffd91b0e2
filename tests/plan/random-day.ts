import { type Dice, diceOf } from '../../sample-days/dice.ts';
import { strikeVoice } from '../../src/commands/cast/change-cast.ts';
import type { CommandResult, Placing } from '../../src/commands/command.ts';
import { addVoice } from '../../src/commands/day/describe.ts';
import * as chain from '../../src/commands/line/change-chain.ts';
import { moveBefore, takeBack } from '../../src/commands/line/correct.ts';
import { logTake } from '../../src/commands/line/log-takes.ts';
import { markOut, pinVoice, weighMoves } from '../../src/commands/line/plan-ahead.ts';
import { redo, undo } from '../../src/commands/line/undo.ts';
import { addInputs, addOutput, addTracks } from '../../src/commands/rig/grow-rig.ts';
import { plugRun } from '../../src/commands/rig/plug-run.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { reservePart } from '../../src/commands/rig/strike-part.ts';
import { answersNow } from '../../src/day/answers/answers.ts';
import { leadsOf } from '../../src/day/chain/leads.ts';
import { pinsOf, wornBy } from '../../src/day/chain/links.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day, Part, PartId, VoiceId } from '../../src/day/model.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { plugLead } from '../commands/plug-lead.ts';
import { MORNING } from '../day/say.ts';

/** A day that a mixer could have had on a ready rig, and who is wanted for the setup that comes next. */
export interface RandomDay {
  readonly day: Day;
  readonly wanted: ReadonlySet<VoiceId>;
  /** The day after more was said on the same phone, as one action. */
  readonly after: (drafts: readonly Draft[]) => Day;
}

const MOST_PERFORMERS = 20;
const DATABASE = 'phonea';

const LAID = new Map(
  STARTING_RIGS.map(({ id, lay }) => {
    const said = lay();
    if (!said.ok) throw new Error(said.problem.code);
    return [id, said.value];
  }),
);

/** A phone with a ready rig laid, that says one action a minute. */
class Phone {
  day = foldDay('day-1', []);
  #at = MORNING;
  #named = 0;
  readonly #ids = idSource(`${DATABASE}00000`);

  constructor(rig: string) {
    this.say(LAID.get(rig)!);
  }

  readonly newId = (): PartId => {
    this.#named += 1;
    return `new${this.#named}`;
  };

  say(drafts: readonly Draft[]): void {
    this.day = appendFacts(this.day, this.#stamped(drafts));
  }

  /** Folded from nothing, so that the day before can still be read. */
  after(drafts: readonly Draft[]): Day {
    return foldDay('day-1', [...this.day.facts, ...this.#stamped(drafts)]);
  }

  #stamped(drafts: readonly Draft[]): Fact[] {
    this.#at += 60_000;
    return stampFacts(drafts, { day: 'day-1', at: this.#at, zone: 120, nextId: this.#ids.next });
  }
}

/**
 * A day of a ready rig made by commands alone: a cast of any size, most of it wired, then packs given and taken back,
 * retunes, re-plugs, selectors, routes, mutes, gangs, needs, pins, what is out of order, undone and redone; of what
 * has a place on the line every third is put before an earlier take. Commands that refuse say nothing.
 */
export function randomDay(rig: string, seed: number): RandomDay {
  const dice = diceOf(seed);
  const phone = new Phone(rig);
  const attempt: Attempt = (command) => {
    const said = command(phone.day);
    if (said.ok) phone.say(said.value);
  };
  castOf(dice, attempt);
  wire(dice, phone, attempt);
  shorten(dice, phone, attempt);
  const takes: string[] = [];
  const count = 10 + dice.below(50);
  for (let at = 0; at < count; at += 1) {
    if (at % 6 === 2) {
      attempt((day) => logTake(day, takeFields(takes.length)));
      takes.push(phone.day.takeOrder.at(-1)!);
    }
    const placing = takes.length > 0 && dice.below(3) === 0 ? { before: dice.pick(takes) } : {};
    const change = dice.pick(CHANGES);
    attempt((day) => change(day, dice, placing, phone));
    if (dice.below(12) === 0) attempt((day) => undo(day, DATABASE));
    if (dice.below(24) === 0) attempt((day) => redo(day, DATABASE));
  }
  const { day } = phone;
  return { day, wanted: wantedOf(day, dice), after: (drafts) => phone.after(drafts) };
}

type Attempt = (command: (day: Day) => CommandResult) => void;

function castOf(dice: Dice, attempt: Attempt): void {
  const performers = 2 + dice.below(MOST_PERFORMERS - 1);
  const ranks = dice.pick([1, 3, performers]);
  for (let at = 1; at <= performers; at += 1) {
    attempt(() => addVoice({ part: `Part ${at}`, priority: 1 + dice.below(ranks) }, `v${at}`));
  }
  for (const kind of ['boom', 'plant', 'feed'] as const) {
    if (dice.below(3) === 0) attempt(() => addVoice({ kind, part: `Extra ${kind}`, priority: 600 }, kind));
  }
}

/** Packs to most of the cast, in no order, and one lead for a hardline. */
function wire(dice: Dice, phone: Phone, attempt: Attempt): void {
  const packs = phone.day.rig.transmitters.map(({ id }) => id);
  for (const { id, kind } of phone.day.voices.values()) {
    const at = dice.below(packs.length + 2);
    const [pack] = kind === 'performer' ? packs.splice(at, 1) : [];
    if (pack) attempt((day) => chain.giveTransmitter(day, pack, id));
  }
}

/** On one day in three most tracks are out of order, so that people must share what is left. */
function shorten(dice: Dice, phone: Phone, attempt: Attempt): void {
  if (dice.below(3) > 0) return;
  for (const { id } of isosOf(phone.day)) if (dice.below(5) < 2) attempt(() => markOut(id, true));
}

const takeFields = (count: number) => ({
  kind: 'take' as const,
  slate: { style: 'lettered' as const, scene: '24', setup: 1 + Math.floor(count / 3) },
  number: 1 + (count % 3),
  start: { frames: 90_000 + 1000 * count, rate: '25' as const },
  length: { frames: 250, rate: '25' as const },
});

type Change = (day: Day, dice: Dice, placing: Placing, phone: Phone) => CommandResult;

const idOf = (parts: readonly Part[], dice: Dice): PartId => dice.pick(parts).id;
const voiceOf = (day: Day, dice: Dice): VoiceId => dice.pick([...day.voices.keys()]);
const isosOf = ({ rig }: Day): Part[] => rig.tracks.filter(({ mix }) => !mix);

const give: Change = (day, dice, at) => {
  const pack = idOf(day.rig.transmitters, dice);
  return chain.giveTransmitter(day, pack, dice.below(5) === 0 ? null : voiceOf(day, dice), at);
};

const tune: Change = (day, dice, at) => {
  const pack = dice.below(6) === 0 ? null : idOf(day.rig.transmitters, dice);
  return chain.tuneChannel(day, idOf(day.rig.channels, dice), pack, at);
};

/** An output or a hardline, into any input: also one that another lead sits in. */
const plug: Change = (day, dice, at) => {
  const hardlines = [...day.voices.values()].filter(
    ({ kind }) => kind !== 'performer' || dice.below(8) === 0,
  );
  const ends = [...day.rig.outputs, ...day.rig.outputs, ...hardlines].map(({ id }) => id);
  const count = 1 + dice.below(3);
  const from = Array.from({ length: count }, () => dice.pick(ends));
  const into = Array.from({ length: count }, () => (dice.below(8) === 0 ? null : idOf(day.rig.inputs, dice)));
  return plugRun(day, [...new Set(from)], into, dice.pick(['a', 'b']), at);
};

const unplug: Change = (day, dice, { before }) => {
  const { id, link } = dice.pick([...leadsOf(day.rig, answersNow(day).links)]);
  return plugLead({ lead: id, from: link.value.from, to: null, before });
};

const throwOne: Change = (day, dice, at, phone) => {
  const { selectors } = day.rig;
  if (selectors.length === 0) return tune(day, dice, at, phone);
  return chain.throwSelectors(day, [idOf(selectors, dice)], dice.pick(['a', 'b']), at);
};

/** To one iso track as a rule, sometimes to two, seldom to none. */
const send: Change = (day, dice, at) => {
  const count = dice.pick([1, 1, 1, 1, 2, 0]);
  const tracks = Array.from({ length: count }, () => idOf(isosOf(day), dice));
  return chain.sendInput(day, idOf(day.rig.inputs, dice), [...new Set(tracks)], at);
};

const mute: Change = (day, dice, at) =>
  chain.setMute(day, idOf([...day.rig.inputs, ...day.rig.transmitters], dice), dice.below(3) > 0, at);

const gang: Change = (day, dice, at, phone) => {
  const shared = answersNow(day).tracks.filter(({ heard }) => heard.length > 1);
  if (shared.length === 0) return send(day, dice, at, phone);
  const { track } = dice.pick(shared);
  return dice.below(5) === 0 ? chain.dissolveGang(day, track.id, at) : chain.declareGang(day, track.id, at);
};

const need: Change = (day, dice, at) => {
  const voices = Array.from({ length: 1 + dice.below(4) }, () => voiceOf(day, dice));
  return chain.markNeed(day, [...new Set(voices)], dice.pick(['needed', 'resting', 'done']), at);
};

/** Pins somebody to what they have, as the plan's sheet offers it. */
const pin: Change = (day, dice) => {
  const { links, voices } = answersNow(day);
  const { voice, paths } = dice.pick(voices);
  const [path] = paths;
  const has = {
    transmitter: path?.transmitter ?? undefined,
    channel: path?.transmitter ? (path.channel ?? undefined) : undefined,
    input: path?.input ?? undefined,
    track: path?.tracks[0],
    alone: !pinsOf(links, voice.id)?.value?.alone,
  };
  const which = dice.pick(['transmitter', 'channel', 'input', 'track', 'alone'] as const);
  return pinVoice(day, voice.id, { [which]: has[which] });
};

const breakOne: Change = (day, dice) => {
  const { transmitters, channels, inputs, tracks } = day.rig;
  const leads = [...leadsOf(day.rig, answersNow(day).links)];
  const parts = [...transmitters, ...channels, ...inputs, ...tracks, ...leads].map(({ id }) => id);
  return markOut(dice.pick(parts), dice.below(4) > 0);
};

const weigh: Change = (_day, dice) => {
  const kinds = ['fit', 'move', 'borrow', 'retune', 'throwSelector', 'replug', 'route'] as const;
  return weighMoves({ [dice.pick(kinds)]: 1 + dice.below(3) });
};

const grow: Change = (day, dice, at, phone) => {
  switch (dice.below(4)) {
    case 0:
      return addInputs(day, dice.pick(['mic', 'line', 'aes3'] as const), 1, phone.newId);
    case 1:
      return addTracks(day, 1, phone.newId);
    case 2: {
      const channel = dice.pick(day.rig.channels);
      const name = `second of ${channel.name} ${day.facts.length}`;
      return addOutput(
        day,
        channel.receiver!,
        { name, kind: 'analogue', channel: channel.id },
        phone.newId(),
      );
    }
    default:
      return weigh(day, dice, at, phone);
  }
};

/** A change that stands somewhere on the line goes elsewhere on it, or is taken back. */
const correct: Change = (day, dice) => {
  const changes = day.line.filter(({ fact }) => fact.kind !== 'take-logged');
  const { id } = dice.pick(changes).fact;
  if (dice.below(3) === 0) return takeBack(day, [id]);
  return moveBefore(day, id, dice.below(4) === 0 ? null : (dice.pick(day.takeOrder) ?? null));
};

const strike: Change = (day, dice) => {
  const { outputs, inputs } = day.rig;
  if (dice.below(2) === 0) return strikeVoice(day, voiceOf(day, dice));
  return reservePart(day, idOf([...outputs, ...inputs], dice), dice.pick(['comms', null]));
};

const CHANGES: readonly Change[] = [
  ...[give, give, give, give, tune, tune, tune, plug, plug, plug, unplug, throwOne, throwOne, send, send],
  ...[mute, mute, gang, gang, need, need, pin, breakOne, grow, correct, correct, strike],
];

/** Anybody of the cast; hardlines as a rule, and whoever wears a pack rather than others. */
function wantedOf(day: Day, dice: Dice): Set<VoiceId> {
  const { links } = answersNow(day);
  const wired = new Set(day.rig.transmitters.map(({ id }) => wornBy(links, id)?.value));
  const often = 2 + dice.below(10);
  const cast = [...day.voices.values()].filter(({ struck }) => !struck);
  const chosen = cast.filter(({ id, kind }) => {
    const chance = kind !== 'performer' ? 8 : wired.has(id) ? often : often - 1;
    return dice.below(10) < chance;
  });
  return new Set(chosen.map(({ id }) => id));
}
