import { type Dice, diceOf } from '../../sample-days/dice.ts';
import type { CommandResult } from '../../src/commands/command.ts';
import { layBeside } from '../../src/commands/day/lay-beside.ts';
import {
  giveTransmitter,
  sendInput,
  setMute,
  throwSelectors,
  tuneChannel,
} from '../../src/commands/line/change-chain.ts';
import { bringBack, moveBefore, takeBack } from '../../src/commands/line/correct.ts';
import { changeRoll, logTake } from '../../src/commands/line/log-takes.ts';
import { rollRecorders } from '../../src/commands/line/roll-recorders.ts';
import { setRecorder } from '../../src/commands/line/set-recorder.ts';
import { redo, undo } from '../../src/commands/line/undo.ts';
import { layRecorder } from '../../src/commands/rig/lay-rig.ts';
import { plugRun } from '../../src/commands/rig/plug-run.ts';
import { STARTING_RIGS } from '../../src/commands/rig/starting-rigs.ts';
import { appendFacts, foldDay } from '../../src/day/fold/fold.ts';
import type { Day } from '../../src/day/model.ts';
import type { Draft, Fact } from '../../src/facts/fact.ts';
import { stampFacts } from '../../src/facts/stamp.ts';
import { idSource } from '../../src/shared/ids.ts';
import { plugLead } from '../commands/plug-lead.ts';
import type { Bench, Card, Deed } from './plain-chain.ts';
import { MORNING } from './say.ts';

const DATABASE = 'phonea';

/** A day made by commands, and what was done in it as cards for the plain reading. */
export interface RandomDay {
  readonly day: Day;
  readonly bench: Bench;
  readonly cards: readonly Card[];
}

type Second = 'none' | 'backup' | 'rig' | 'recorder';

/**
 * A day of one of the ready rigs: changes and takes by turns, a third of the changes late, moved, undone and redone. With
 * `isSetToo`, the recorder is set otherwise and gets another roll on the way, and a backup rolls along,
 * or alone. The second recorder is then a backup with the tracks of the first, or
 * has its own: as a 'rig' the same rig laid beside, with second leads; as a 'recorder' one that nothing is plugged into.
 */
export function randomDay(
  rig: string,
  seed: number,
  takes: number,
  isSetToo = false,
  second: Second = isSetToo ? 'backup' : 'none',
): RandomDay {
  const phone = new RandomPhone(rig, diceOf(seed), isSetToo, second);
  for (let at = 0; at < takes; at += 1) {
    const changes = phone.dice.below(4);
    for (let change = 0; change < changes; change += 1) phone.change();
    if (phone.dice.next() < 0.3) phone.correct();
    phone.take();
  }
  for (let at = 0; at < 3; at += 1) phone.correct();
  return { day: phone.day, bench: phone.bench, cards: phone.cards };
}

class RandomPhone {
  readonly dice: Dice;
  readonly bench: Bench;
  readonly cards: Card[] = [];
  readonly #voices: readonly string[];
  readonly #ids = idSource(`${DATABASE}00000`);
  readonly #isSetToo: boolean;
  readonly #second: string;
  readonly #takes: string[] = [];
  readonly #changes: string[] = [];
  #at = MORNING;
  day: Day = foldDay('day-1', []);

  constructor(rig: string, dice: Dice, isSetToo: boolean, second: Second) {
    this.dice = dice;
    this.#isSetToo = isSetToo;
    const laid = STARTING_RIGS.find(({ id }) => id === rig)!.lay();
    if (!laid.ok) throw new Error(laid.problem.code);
    const cast = Array.from(
      { length: 8 },
      (_, at): Draft => ({ kind: 'voice-described', voice: `v${at}`, fields: { part: `Part ${at}` } }),
    );
    const booms = ['boomA', 'boomB'].map(
      (voice): Draft => ({ kind: 'voice-described', voice, fields: { kind: 'boom', part: voice } }),
    );
    const backup: Draft = { kind: 'part-described', part: 'b', fields: { type: 'recorder', name: 'Backup' } };
    const facts = [
      ...this.#say([...laid.value, ...cast, ...booms, ...(second === 'backup' ? [backup] : [])]),
    ];
    const beside = { name: 'Second', receivers: 'all' } as const;
    const bare = layRecorder({ tracks: 5, inputs: [{ kind: 'mic', count: 6 }] });
    if (second === 'rig') facts.push(...this.#tell((day) => layBeside(day, laid, beside)));
    if (second === 'recorder') facts.push(...this.#tell((day) => layBeside(day, bare, beside)));
    this.#second = this.day.rig.recorders[0]?.id ?? '';
    this.cards.push({ id: 'prep', deeds: facts.flatMap(deedsOfPrep) });
    this.bench = benchOf(this.day);
    this.#voices = [...this.day.voices.keys()].filter((id) => !this.bench.hardlines.has(id));
    for (const voice of this.#voices.slice(0, 5))
      this.#give(this.dice.pick(this.day.rig.transmitters).id, voice);
  }

  take(): void {
    // A rig of its own is there to move to.
    if (this.#hasRig && this.dice.next() < 0.3) this.#roll();
    const before = this.dice.next() < 0.1 ? this.#late() : undefined;
    this.#run((day) => logTake(day, {}, { before }), [{ do: 'take' }], before);
    this.#takes.push(this.#changes.pop()!);
  }

  change(): void {
    const { dice, day } = this;
    const before = dice.next() < 1 / 3 ? this.#late() : undefined;
    const at = { before };
    const { rig } = day;
    switch (dice.below(this.#isSetToo ? 12 : 9)) {
      case 0:
      case 1:
        this.#give(
          dice.pick(rig.transmitters).id,
          dice.next() < 0.15 ? null : dice.pick(this.#voices),
          before,
        );
        return;
      case 2: {
        const channel = dice.pick(rig.channels).id;
        const pack = dice.next() < 0.1 ? null : dice.pick(rig.transmitters).id;
        this.#run((now) => tuneChannel(now, channel, pack, at), [{ do: 'tune', channel, pack }], before);
        return;
      }
      case 3:
      case 4:
        this.#plugOne(before);
        return;
      case 5:
        this.#plugBlock(before);
        return;
      case 6:
        if (rig.selectors.length > 0) {
          const selectors = [...new Set([dice.pick(rig.selectors).id, dice.pick(rig.selectors).id])];
          const position = dice.pick(['a', 'b'] as const);
          this.#run(
            (now) => throwSelectors(now, selectors, position, at),
            [{ do: 'throw', selectors, position }],
            before,
          );
        }
        return;
      case 7: {
        const input = dice.pick(rig.inputs).id;
        const own = this.bench.recorderOf(input);
        const isos = rig.tracks
          .filter(({ id, mix }) => !mix && this.bench.recorderOf(id) === own)
          .map(({ id }) => id);
        const tracks = dice.next() < 0.1 ? [] : [...new Set([dice.pick(isos), dice.pick(isos)])];
        this.#run((now) => sendInput(now, input, tracks, at), [{ do: 'send', input, tracks }], before);
        return;
      }
      case 9:
        this.#set(before);
        return;
      case 11:
        this.#roll(before);
        return;
      case 10: {
        const roll = dice.pick(['R1', 'R2', 'R3']);
        this.#run(() => changeRoll(roll, at), [{ do: 'load', roll }], before);
        return;
      }
      default: {
        const part = dice.pick([...rig.inputs, ...rig.transmitters]).id;
        const muted = dice.next() < 0.5;
        this.#run((now) => setMute(now, part, muted, at), [{ do: 'mute', part, muted }], before);
      }
    }
  }

  /** Something said earlier is moved, taken back or brought back, or the last action undone or redone. */
  correct(): void {
    const { dice } = this;
    switch (dice.below(5)) {
      case 0:
      case 1: {
        const target = dice.pick(this.#changes);
        const to = dice.next() < 0.2 ? null : this.#late();
        if (to === undefined) return;
        const [moved] = this.#tell((day) => moveBefore(day, target, to));
        if (moved) this.cards.push({ id: moved.id, moves: target, to });
        return;
      }
      case 2: {
        const target = dice.pick(dice.next() < 0.2 ? [...this.#takes, ...this.#changes] : this.#changes);
        const give = this.day.takenBack.has(target) ? bringBack : takeBack;
        this.#takeBack(this.#tell((day) => give(day, [target])));
        return;
      }
      case 3:
        this.#takeBack(this.#tell((day) => undo(day, DATABASE)));
        return;
      default:
        this.#takeBack(this.#tell((day) => redo(day, DATABASE)));
    }
  }

  #give(pack: string, voice: string | null, before?: string): void {
    this.#run((day) => giveTransmitter(day, pack, voice, { before }), [{ do: 'wear', pack, voice }], before);
  }

  #roll(before?: string): void {
    const recorders = this.dice.pick([['recorder'], [this.#second], ['recorder', this.#second]]);
    const said = rollRecorders(this.day, recorders, { before });
    if (said.ok) this.#run(() => said, [{ do: 'roll', recorders }], before);
  }

  /** Sets one or two things on the recorder; nothing is said where they are so already. */
  #set(before: string | undefined): void {
    const { dice } = this;
    const wanted = {
      ...(dice.next() < 0.7 && { timecodeRate: dice.pick(['23.976', '25', '29.97DF'] as const) }),
      ...(dice.next() < 0.5 && { fileLayout: dice.pick(['poly', 'mono'] as const) }),
      ...(dice.next() < 0.3 && { sampleRate: dice.pick([48_000, 96_000]) }),
    };
    const said = setRecorder(this.day, wanted, { before });
    const [draft] = said.ok ? said.value : [];
    // Before anything is recorded it is of the whole day, and no card of the line.
    if (draft?.kind !== 'recorder-set') return;
    this.#run(() => said, [{ do: 'set', settings: draft.settings as Record<string, string> }], before);
  }

  #plugOne(before: string | undefined): void {
    const { dice, day } = this;
    const end = dice.pick([...this.bench.hardlines, ...this.bench.carries.keys()]);
    const input = dice.next() < 0.15 ? null : dice.pick(day.rig.inputs).id;
    const position = this.bench.selectors.has(input ?? '') ? dice.pick(['a', 'b'] as const) : 'a';
    const pulledAt = this.#hasRig ? dice.pick(['recorder', this.#second]) : 'recorder';
    const deed: Deed = { do: 'plug', plugs: [{ end, input, position, pulledAt }] };
    const lead = `lead-${end}`;
    this.#run(
      (now) =>
        !this.#hasRig && dice.next() < 0.5
          ? plugLead({ lead, from: end, to: input, position, before })
          : plugRun(now, [end], [input], position, { before, recorder: pulledAt }),
      [deed],
      before,
    );
  }

  #plugBlock(before: string | undefined): void {
    const { dice, day } = this;
    const outputs = [...this.bench.carries.keys()];
    const from = dice.below(outputs.length - 2);
    const ends = outputs.slice(from, from + 3);
    const first = dice.below(Math.max(1, day.rig.inputs.length - 2));
    const inputs = day.rig.inputs.slice(first, first + 3).map(({ id }) => id);
    const plugs = ends.map((end, at) => ({ end, input: inputs[at]!, position: 'a' }));
    this.#run((now) => plugRun(now, ends, inputs, 'a', { before }), [{ do: 'plug', plugs }], before);
  }

  get #hasRig(): boolean {
    return this.bench.recorderOf(this.bench.inputs.at(-1)!) !== 'recorder';
  }

  /** A take that was logged, to put something before; none before the first. */
  #late(): string | undefined {
    return this.#takes.length > 0 ? this.dice.pick(this.#takes) : undefined;
  }

  #run(command: (day: Day) => CommandResult, deeds: readonly Deed[], before?: string): void {
    const [fact, ...more] = this.#tell(command);
    if (!fact || more.length > 0) throw new Error(`A change is one fact, and this is ${more.length + 1}.`);
    this.#changes.push(fact.id);
    this.cards.push({ id: fact.id, deeds, ...(before && { before }) });
  }

  #takeBack(facts: readonly Fact[]): void {
    for (const fact of facts) {
      if (fact.kind === 'fact-retracted') this.cards.push({ id: fact.id, takesBack: fact.targets });
    }
  }

  /** The facts of a command; none where it has nothing to do, such as an undo with nothing done. */
  #tell(command: (day: Day) => CommandResult): readonly Fact[] {
    const said = command(this.day);
    return said.ok ? this.#say(said.value) : [];
  }

  #say(drafts: readonly Draft[]): readonly Fact[] {
    this.#at += 60_000;
    const facts = stampFacts(drafts, { day: 'day-1', at: this.#at, zone: 0, nextId: this.#ids.next });
    this.day = appendFacts(this.day, facts);
    return facts;
  }
}

function benchOf({ rig, voices }: Day): Bench {
  const carrying = rig.outputs.filter(({ reserved, carries = [] }) => !reserved && carries.length > 0);
  return {
    inputs: rig.inputs.map(({ id }) => id),
    tracks: rig.tracks.filter(({ mix }) => !mix).map(({ id }) => id),
    carries: new Map(carrying.map(({ id, carries = [] }) => [id, carries])),
    selectors: new Map(rig.selectors.map(({ id, input }) => [input!, id])),
    recorderOf: (part) => rig.byId.get(part)?.recorder ?? 'recorder',
    hardlines: new Set([...voices.values()].filter(({ kind }) => kind !== 'performer').map(({ id }) => id)),
  };
}

/** What the prep of a ready rig does on the bench, as its facts say it. */
function deedsOfPrep(fact: Fact): Deed[] {
  switch (fact.kind) {
    case 'leads-plugged': {
      const plugs = fact.leads.map(({ from, to, position = 'a' }) => ({ end: from!, input: to, position }));
      return [{ do: 'plug', plugs }];
    }
    case 'channels-tuned':
      return fact.tunings.map(({ channel, transmitter }) => ({ do: 'tune', channel, pack: transmitter }));
    case 'inputs-sent':
      return fact.routes.map(({ input, tracks }) => ({ do: 'send', input, tracks }));
    default:
      return [];
  }
}
