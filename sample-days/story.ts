import { readCallSheet } from '../src/callsheet/call-sheet.ts';
import { readCastList } from '../src/callsheet/cast/cast-list.ts';
import { type CommandResult, type Moment, type Placing, placed } from '../src/commands/command.ts';
import { addCast, addVoice, describeDay, describeVoice } from '../src/commands/day/describe.ts';
import { layBeside } from '../src/commands/day/lay-beside.ts';
import { backAgain } from '../src/commands/line/back-again.ts';
import * as chain from '../src/commands/line/change-chain.ts';
import { moveBefore, takeBack } from '../src/commands/line/correct.ts';
import * as takes from '../src/commands/line/log-takes.ts';
import * as rolling from '../src/commands/line/roll-recorders.ts';
import { readTypedTake, typedFrom } from '../src/commands/line/typed-take.ts';
import { redo, undo } from '../src/commands/line/undo.ts';
import { addOutput } from '../src/commands/rig/grow-rig.ts';
import * as rig from '../src/commands/rig/lay-rig.ts';
import { readRigSpec } from '../src/commands/rig/rig-spec.ts';
import { addCallSheet } from '../src/commands/scenes/add-call-sheet.ts';
import { markScene } from '../src/commands/scenes/change-scenes.ts';
import { appendFacts, foldDay } from '../src/day/fold/fold.ts';
import { styleOfDay } from '../src/day/header.ts';
import type { Day, Fact, Need, SelectorPosition, Take, TakeKind } from '../src/day/model.ts';
import { recordersOf } from '../src/day/recorders/rolling.ts';
import { rateNow } from '../src/day/settings/settings.ts';
import { parseSlate, takeText } from '../src/day/slate.ts';
import { lastTake, nextTake, takesInOrder } from '../src/day/takes.ts';
import type { HeaderFields } from '../src/facts/kinds/day-described.ts';
import type { DayId } from '../src/facts/kinds/envelope.ts';
import type { Place, ReservedUse } from '../src/facts/kinds/part-described.ts';
import type { OutputKind } from '../src/facts/kinds/rig-kinds.ts';
import type { VoiceFields } from '../src/facts/kinds/voice-described.ts';
import { stampFacts } from '../src/facts/stamp.ts';
import { setupFacts, setupProblem } from '../src/plan/day/setup-plans.ts';
import { planSteps } from '../src/plan/setup/plan-next-setup.ts';
import { allAtOnce, FULL_BUDGET } from '../src/plan/steps.ts';
import { idSource } from '../src/shared/ids.ts';
import { ok, type Result } from '../src/shared/result.ts';
import { parseTimecode } from '../src/time/timecode.ts';
import { WallClock } from './wall-clock.ts';

/** The six characters that every sample day's facts are written under. */
export const SAMPLE_DATABASE = 'sampl1';

/** How long one tap takes in a story: the facts of a day are not all said in one moment. */
const TAP_MS = 2000;

export interface StoryStart {
  readonly day: DayId;
  /** Five base-36 characters that tell the ids of this day from those of others. */
  readonly window: string;
  readonly date: string;
  /** Minutes east of UTC. */
  readonly zone: number;
}

/**
 * Tells a day as its mixer lived it: every sentence is a command of the app, given at a time of day. A command that
 * fails is a slip in the story, and throws. Parts and voices go by their ids, takes by what they are called aloud:
 * `'43B/2'`, `'43B/2 FS'`, `'WT1'`.
 */
export class Story {
  readonly facts: Fact[] = [];
  readonly #id: DayId;
  readonly #clock: WallClock;
  readonly #ids: ReturnType<typeof idSource>;
  #day: Day;

  constructor({ day, window, date, zone }: StoryStart) {
    this.#id = day;
    this.#clock = new WallClock(date, zone);
    this.#ids = idSource(`${SAMPLE_DATABASE}${window}`);
    this.#day = foldDay(day, []);
  }

  get day(): Day {
    return this.#day;
  }

  /** Sets the clock on the wall. */
  at(shown: string): this {
    this.#clock.set(shown);
    return this;
  }

  // Prep

  describe(fields: HeaderFields): this {
    return this.#say(() => describeDay(fields));
  }

  /** Lays the recorder, `'16 tracks, 4 mic/line, 8 slots'`. */
  recorder(typed: string): this {
    return this.#say(() => rig.layRecorder(must(readRigSpec(typed))));
  }

  /** Lays a second recorder beside the first, which stands by. */
  recorderBeside(name: string, typed: string): this {
    return this.#say((day) => layBeside(day, rig.layRecorder(must(readRigSpec(typed))), { name }));
  }

  /** A receiver `id` whose channels leave by `id`-out1 and on. */
  receiver(id: string, name: string, place: Place, count: number, by: OutputKind): this {
    const modules = [{ name, channels: count, outputs: by }];
    return this.#say((day) => rig.addReceiver(day, { name, place, modules }, id));
  }

  /** Transmitters called A1, A2 and on, which are their ids too. */
  packs(prefix: string, count: number): this {
    let number = 0;
    const newId = () => {
      number += 1;
      return `${prefix}${number}`;
    };
    return this.#say((day) => rig.addTransmitters(day, prefix, count, newId));
  }

  tune(channels: readonly string[], transmitters: readonly string[]): this {
    return this.#say(() => rig.tuneBlock(channels, transmitters));
  }

  plugBlock(outputs: readonly string[], inputs: readonly string[], position: SelectorPosition = 'a'): this {
    return this.#say(() => rig.plugBlock(outputs, inputs, position));
  }

  selectors(inputs: readonly string[], positions: [string, string]): this {
    return this.#say((day) => rig.addSelectors(day, inputs, positions));
  }

  /** An output of a receiver that is kept for comms, playback or timecode. */
  keptOutput(receiver: string, id: string, name: string, reserved: ReservedUse): this {
    return this.#say((day) =>
      addOutput(day, receiver, { name, kind: 'network', channel: null, reserved }, id),
    );
  }

  /** Pastes a call sheet; its lines get these ids in order. */
  callSheet(pasted: string, ids: readonly string[]): this {
    const { entries } = readCastList(pasted);
    if (entries.length !== ids.length) throw new Error(`The call sheet has ${entries.length} names`);
    const left = [...ids];
    return this.#say((day) => addCast(day, entries, () => left.shift()!));
  }

  /** Pastes the scenes of a call sheet; each gets the id `scene-` with its number. */
  scenes(pasted: string): this {
    const { scenes } = readCallSheet(pasted);
    const ids = scenes.map(({ number }) => `scene-${number}`);
    return this.#say((day) => addCallSheet(day, { cast: [], scenes }, () => ids.shift()!));
  }

  sceneDone(number: string): this {
    return this.#say((day) => markScene(day, `scene-${number}`, 'done'));
  }

  /** A hardline boom, plant or feed. */
  hardline(id: string, fields: VoiceFields): this {
    return this.#say(() => addVoice(fields, id));
  }

  spell(voice: string, fields: VoiceFields): this {
    return this.#say((day) => describeVoice(day, voice, fields));
  }

  // The chain

  give(transmitter: string, voice: string, at?: Placing): this {
    return this.#say((day) => chain.giveTransmitter(day, transmitter, voice, at));
  }

  takeOff(transmitter: string, at?: Placing): this {
    return this.#say((day) => chain.giveTransmitter(day, transmitter, null, at));
  }

  plug(from: string, to: string, at?: Placing): this {
    return this.#plug(from, to, at);
  }

  unplug(from: string, at?: Placing): this {
    return this.#plug(from, null, at);
  }

  #plug(from: string, to: string | null, at: Placing = {}): this {
    const leads = [{ lead: `lead-${from}`, from, to }];
    return this.#say(() => ok([placed({ kind: 'leads-plugged', leads }, at)]));
  }

  retune(channel: string, transmitter: string | null): this {
    return this.#say((day) => chain.tuneChannel(day, channel, transmitter));
  }

  throwTo(position: SelectorPosition, selectors: readonly string[]): this {
    return this.#say((day) => chain.throwSelectors(day, selectors, position));
  }

  send(input: string, track: string): this {
    return this.#say((day) => chain.sendInput(day, input, [track]));
  }

  mute(part: string, at?: Placing): this {
    return this.#say((day) => chain.setMute(day, part, true, at));
  }

  unmute(part: string, at?: Placing): this {
    return this.#say((day) => chain.setMute(day, part, false, at));
  }

  gang(track: string, at?: Placing): this {
    return this.#say((day) => chain.declareGang(day, track, at));
  }

  needed(...voices: string[]): this {
    return this.#need('needed', voices);
  }

  resting(...voices: string[]): this {
    return this.#need('resting', voices);
  }

  done(...voices: string[]): this {
    return this.#need('done', voices);
  }

  #need(need: Need, voices: string[]): this {
    return this.#say((day) => chain.markNeed(day, voices, need));
  }

  // Recorders

  /** Adds a recorder with the tracks of the first one, which rolls along from now on. */
  backup(name: string): this {
    return this.#say((day) => rolling.addRecorder(day, name));
  }

  /** Only these roll from now on, by their names. */
  rolls(...names: string[]): this {
    return this.#say((day) => rolling.rollRecorders(day, this.#recorders(names)));
  }

  /** These rolled at one take, whatever rolls after it. */
  rolledAt(take: string, ...names: string[]): this {
    return this.#say((day) => rolling.correctRolling(day, this.#takeId(take), this.#recorders(names)));
  }

  rollIn(name: string, roll: string): this {
    return this.#say((day) => rolling.loadRoll(day, this.recorderId(name), roll));
  }

  /** Moves the unit to a recorder for these voices, with the moves that the planner finds. */
  unitMovesTo(name: string, ...voices: string[]): this {
    return this.#say((day) => {
      const move = { recorders: this.#recorders([name]), wanted: new Set(voices) };
      const plan = must(allAtOnce(planSteps(setupProblem(day, move, [])!, FULL_BUDGET)));
      return ok(setupFacts(day, move, [plan]));
    });
  }

  backAgain(): this {
    return this.#say(backAgain);
  }

  recorderId(name: string): string {
    const found = recordersOf(this.#day).find((one) => one.name === name);
    if (!found) throw new Error(`No recorder ${name}`);
    return found.id;
  }

  #recorders(names: readonly string[]): string[] {
    return names.map((name) => this.recorderId(name));
  }

  // Takes

  /** The recorder showed this timecode when the mixer tapped. */
  follow(shown: string): this {
    return this.#say((day, now) => takes.followClock(day, must(parseTimecode(shown, rateNow(day)!)), now));
  }

  soundRoll(roll: string): this {
    return this.#say(() => takes.changeRoll(roll));
  }

  /** Calls a slate by its board, or without one the next setup. */
  slate(board?: string): this {
    return this.#say((day) =>
      board ? takes.callSlate(day, must(parseSlate(board, styleOfDay(day)))) : takes.callSlate(day),
    );
  }

  roll(shown: string, kind?: TakeKind): this {
    return this.at(shown).#say((day, now) => takes.rollTake(day, now, kind));
  }

  cut(shown: string): this {
    return this.at(shown).#say((day, now) => takes.cutTake(day, now));
  }

  /** Rolls and cuts the next take. */
  take(rolled: string, cut: string, kind?: TakeKind): this {
    return this.roll(rolled, kind).cut(cut);
  }

  mos(shown: string): this {
    return this.roll(shown, 'mos');
  }

  /** A take that nobody logged when it was recorded, everything typed. */
  typedTake(board: string, number: number, start: string, length: string, at?: Placing): this {
    return this.#say((day) => {
      const showed = typedFrom(nextTake(day));
      const typed = { ...showed, slate: board, number: `${number}`, start, length };
      return takes.logTake(day, must(readTypedTake(typed, showed, rateNow(day))), at);
    });
  }

  circle(take?: string): this {
    return this.#say((day) => takes.circleTake(day, this.#takeId(take), true));
  }

  noGood(): this {
    return this.#say((day) => takes.describeTake(day, this.#takeId(), { noGood: true }));
  }

  falseStart(): this {
    return this.#say((day) => takes.describeTake(day, this.#takeId(), { falseStart: true }));
  }

  tailSlate(): this {
    return this.#say((day) => takes.describeTake(day, this.#takeId(), { tailSlate: true }));
  }

  /** A note on the take just cut, or on one track of it. */
  note(text: string, track?: string): this {
    return this.#say((day) => takes.addNote(day, this.#takeId(), text, track));
  }

  noteOn(take: string, text: string, track?: string): this {
    return this.#say((day) => takes.addNote(day, this.#takeId(take), text, track));
  }

  // Corrections

  /** Places what is said with it just before that take. */
  before(take: string): Placing {
    return { before: this.#takeId(take) };
  }

  /** Moves the change that was said last to just before a take. */
  moveLastBefore(take: string): this {
    const last = this.facts.at(-1)!.id;
    return this.#say((day) => moveBefore(day, last, this.#takeId(take)));
  }

  takeBackTake(take: string): this {
    return this.#say((day) => takeBack(day, [this.#takeId(take)]));
  }

  undo(): this {
    return this.#say((day) => undo(day, SAMPLE_DATABASE));
  }

  redo(): this {
    return this.#say((day) => redo(day, SAMPLE_DATABASE));
  }

  #takeId(called?: string): string {
    const found = called
      ? takesInOrder(this.#day).find((take) => calledAloud(take) === called)
      : lastTake(this.#day);
    if (!found) throw new Error(`No take ${called ?? 'yet'}`);
    return found.id;
  }

  /** Says what has no sentence of its own here. */
  say(command: (day: Day, now: Moment) => CommandResult): this {
    return this.#say(command);
  }

  #say(command: (day: Day, now: Moment) => CommandResult): this {
    const { atMs, zone } = this.#clock;
    const said = must(command(this.#day, { atMs, zone }));
    const facts = stampFacts(said, { day: this.#id, at: atMs, zone, nextId: this.#ids.next });
    this.facts.push(...facts);
    this.#day = appendFacts(this.#day, facts);
    this.#clock.pass(TAP_MS);
    return this;
  }
}

function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`The story slips: ${JSON.stringify(result.problem)}`);
  return result.value;
}

const calledAloud = (take: Take): string => `${takeText(take)}${take.falseStart ? ' FS' : ''}`;
