import { Chain } from './chain.ts';
import { type InputAnswer, inputAnswer } from './input-answers.ts';
import { CHECKPOINT_EVERY, linksAt, rollIn } from './links.ts';
import type { Day, Links, Part, PartId, VoiceId } from './model.ts';
import { inputReach, type Reach, type Standing } from './reach.ts';
import { type Summary, summaryOf } from './summary.ts';
import { type TrackAnswer, trackAnswer } from './track-answers.ts';
import { type VoiceAnswer, voiceAnswer } from './voice-answers.ts';

/** Every answer of the chain at one place on the line. */
export interface ChainAnswers {
  readonly inputs: readonly InputAnswer[];
  readonly tracks: readonly TrackAnswer[];
  readonly voices: readonly VoiceAnswer[];
  readonly summary: Summary;
  /** The sound roll in the recorder; empty where nobody said. */
  readonly roll: string;
}

/** An answer, with the names of all that it was computed from. */
interface Kept<T> {
  readonly value: T;
  readonly reads: readonly string[];
}

const NONE: readonly Reach[] = [];

/**
 * Computes answers place after place along a line. An answer comes out anew only where something that it was computed
 * from has changed, so a day of takes costs about as much as its changes, and takes share what they have in common.
 */
export class Answering {
  readonly #standing: Standing;
  readonly #chain: Chain;
  readonly #reach = new Map<PartId, Kept<Reach>>();
  readonly #tracks = new Map<PartId, Kept<TrackAnswer>>();
  readonly #voices = new Map<VoiceId, Kept<VoiceAnswer>>();
  readonly #selectorOf: ReadonlyMap<PartId | undefined, Part>;
  #reached: readonly Reach[] | undefined;
  #feeding = new Map<PartId, readonly Reach[]>();
  #last: ChainAnswers | null = null;
  #index: number;

  /** `index` is the place on the line at which these links hold. */
  constructor(standing: Standing, links: Links, index: number) {
    // Only what an answer may be computed from: a day is more, and would be held as it was.
    this.#standing = { rig: standing.rig, voices: standing.voices };
    this.#chain = new Chain(standing.rig, links);
    this.#selectorOf = new Map(standing.rig.selectors.map((selector) => [selector.input, selector]));
    this.#index = index;
  }

  /** Goes to another place on the line of this day, whose rig and voices are those it began with. */
  moveTo(day: Day, index: number): void {
    if (index < this.#index || index > this.#index + CHECKPOINT_EVERY) this.#chain.jump(linksAt(day, index));
    else
      for (const { fact, takenBack } of day.line.slice(this.#index, index))
        if (!takenBack) this.#chain.pass(fact);
    this.#index = index;
  }

  answers(): ChainAnswers {
    const changed = this.#chain.takeChanged();
    const last = this.#last;
    if (last && changed.size === 0) return last;
    const { rig, voices } = this.#standing;
    const reach = this.#reachOf(changed);
    const tracks = same(
      rig.tracks.map((track) => {
        const answer = () => trackAnswer(this.#standing, this.#chain, track, this.#feedingOf(track.id));
        return this.#keep(this.#tracks, track.id, `track:${track.id}`, changed, answer);
      }),
      last?.tracks,
    );
    const stateOf = (track: PartId) => this.#tracks.get(track)?.value.state;
    const inputs = same(
      reach.map((at, place) => inputAnswer(at, stateOf, last?.inputs[place])),
      last?.inputs,
    );
    const wiring = {
      standing: this.#standing,
      chain: this.#chain,
      reachOf: (input: PartId) => this.#read(this.#reach, input, `reach:${input}`),
      trackOf: (track: PartId) => this.#read(this.#tracks, track, `track:${track}`),
    };
    const present = [...voices.values()].filter(({ struck }) => !struck);
    const heard = same(
      present.map((voice) =>
        this.#keep(this.#voices, voice.id, `voice:${voice.id}`, changed, () => voiceAnswer(wiring, voice)),
      ),
      last?.voices,
    );
    const isAsBefore = inputs === last?.inputs && tracks === last.tracks && heard === last.voices;
    const summary = isAsBefore ? last.summary : summaryOf(inputs, tracks, heard);
    this.#last = { inputs, tracks, voices: heard, summary, roll: rollIn(this.#chain)?.value ?? '' };
    return this.#last;
  }

  /** For every input of the recorder, in reading order: what reaches it. Marks the tracks that are fed by others. */
  #reachOf(changed: Set<string>): readonly Reach[] {
    const { rig } = this.#standing;
    const reach = same(
      rig.inputs.map((input) =>
        this.#keep(this.#reach, input.id, `reach:${input.id}`, changed, () =>
          inputReach(this.#standing, this.#chain, input, this.#selectorOf.get(input.id)),
        ),
      ),
      this.#reached,
    );
    if (reach === this.#reached) return reach;
    this.#reached = reach;
    const feeding = new Map<PartId, Reach[]>();
    for (const at of reach) for (const track of new Set(at.tracks)) push(feeding, track, at);
    for (const { id, mix } of rig.tracks) {
      if (mix) feeding.delete(id);
      const before = this.#feeding.get(id) ?? NONE;
      if (same(feeding.get(id) ?? NONE, before) !== before) changed.add(`feeding:${id}`);
    }
    this.#feeding = feeding;
    return reach;
  }

  #feedingOf(track: PartId): readonly Reach[] {
    this.#chain.note(`feeding:${track}`);
    return this.#feeding.get(track) ?? NONE;
  }

  #read<T>(kept: ReadonlyMap<string, Kept<T>>, id: string, name: string): T | undefined {
    this.#chain.note(name);
    return kept.get(id)?.value;
  }

  /** The answer as it was, or a new one, whose name is then among what has changed. */
  #keep<T>(all: Map<string, Kept<T>>, id: string, name: string, changed: Set<string>, compute: () => T): T {
    const known = all.get(id);
    if (known && !known.reads.some((read) => changed.has(read))) return known.value;
    const made = this.#chain.noting(compute);
    all.set(id, made);
    changed.add(name);
    return made.value;
  }
}

/** The list as it was, where the new one holds the same. */
function same<T>(list: readonly T[], before: readonly T[] | undefined): readonly T[] {
  const isSame = before?.length === list.length && list.every((one, at) => one === before[at]);
  return isSame ? before : list;
}

function push<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = lists.get(key);
  if (list) list.push(value);
  else lists.set(key, [value]);
}
