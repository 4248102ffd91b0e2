import { Chain } from './chain.ts';
import { chainAt } from './fold.ts';
import { type InputAnswer, inputAnswer } from './input-answers.ts';
import { CHECKPOINT_EVERY, linksAt, rollIn } from './links.ts';
import type { Day, Links, PartId } from './model.ts';
import { inputReach, type Reach, type Standing } from './reach.ts';
import { type Summary, summaryOf } from './summary.ts';
import { type TrackAnswer, trackAnswer } from './track-answers.ts';
import { type VoiceAnswer, voiceAnswer, type Wiring } from './voice-answers.ts';

/** Every answer of the chain at one place on the line. */
export interface ChainAnswers {
  readonly inputs: readonly InputAnswer[];
  readonly tracks: readonly TrackAnswer[];
  readonly voices: readonly VoiceAnswer[];
  readonly summary: Summary;
  /** The sound roll in the recorder; empty where nobody said. */
  readonly roll: string;
}

/** Something computed, with the names of all that it was computed from. */
interface Kept {
  readonly value: unknown;
  readonly reads: ReadonlySet<string>;
}

const NONE: readonly Reach[] = [];

/**
 * Computes answers place after place along a line. An answer comes out anew only where something that it was computed
 * from has changed, so a day of takes costs about as much as its changes, and takes share what they have in common.
 */
export class Answering {
  readonly #standing: Standing;
  readonly #chain: Chain;
  readonly #kept = new Map<string, Kept>();
  #reach: readonly Reach[] | undefined;
  #feeding = new Map<PartId, readonly Reach[]>();
  #last: ChainAnswers | undefined;
  #index: number;
  #number: number;

  /** `index` is the place on the line at which these links hold, and `number` that of the chain there. */
  constructor(standing: Standing, links: Links, index: number, number: number) {
    // Only what an answer may be computed from: a day is more, and would be held as it was.
    this.#standing = { rig: standing.rig, voices: standing.voices };
    this.#chain = new Chain(standing.rig, links);
    this.#index = index;
    this.#number = number;
  }

  /** Goes to another place on the line of this day, whose rig and voices are those it began with. */
  moveTo(day: Day, index: number): void {
    // Another number where it stands: what lay before has been taken back since.
    const isOnWay = index >= this.#index && chainAt(day, this.#index) === this.#number;
    if (!isOnWay || index > this.#index + CHECKPOINT_EVERY) this.#chain.jump(linksAt(day, index));
    else for (const item of day.line.slice(this.#index, index)) this.#chain.pass(item);
    this.#index = index;
    this.#number = chainAt(day, index);
  }

  answers(): ChainAnswers {
    const last = this.#last;
    const chain = this.#chain;
    const standing = this.#standing;
    if (last && chain.changed.size === 0) return last;
    const reach = same(
      standing.rig.inputs.map((input) =>
        this.#keep(`reach:${input.id}`, () => inputReach(standing, chain, input)),
      ),
      this.#reach,
    );
    if (reach !== this.#reach) this.#feed(reach);
    const tracks = same(
      standing.rig.tracks.map((track) =>
        this.#keep(`track:${track.id}`, () => {
          chain.noted.add(`feeding:${track.id}`);
          return trackAnswer(standing, chain, track, this.#feeding.get(track.id) ?? NONE);
        }),
      ),
      last?.tracks,
    );
    const wiring: Wiring = {
      standing,
      chain,
      reachOf: (input) => this.#read(`reach:${input}`),
      trackOf: (track) => this.#read(`track:${track}`),
    };
    const inputs = same(
      reach.map((at, place) => inputAnswer(at, (id) => wiring.trackOf(id)?.state, last?.inputs[place])),
      last?.inputs,
    );
    const voices = same(
      [...standing.voices.values()]
        .filter(({ struck }) => !struck)
        .map((voice) => this.#keep(`voice:${voice.id}`, () => voiceAnswer(wiring, voice))),
      last?.voices,
    );
    const isAsBefore = inputs === last?.inputs && tracks === last.tracks && voices === last.voices;
    const summary = isAsBefore ? last.summary : summaryOf(inputs, tracks, voices);
    chain.changed.clear();
    this.#last = { inputs, tracks, voices, summary, roll: rollIn(chain)?.value ?? '' };
    return this.#last;
  }

  /** Finds what feeds each track, and marks the tracks that are fed by others than before. */
  #feed(reach: readonly Reach[]): void {
    const feeding = new Map<PartId, Reach[]>();
    for (const at of reach) {
      for (const track of new Set(at.tracks)) {
        const list = feeding.get(track);
        if (list) list.push(at);
        else feeding.set(track, [at]);
      }
    }
    for (const { id, mix } of this.#standing.rig.tracks) {
      if (mix) feeding.delete(id);
      const before = this.#feeding.get(id) ?? NONE;
      if (same(feeding.get(id) ?? NONE, before) !== before) this.#chain.changed.add(`feeding:${id}`);
    }
    this.#reach = reach;
    this.#feeding = feeding;
  }

  #read<T>(name: string): T | undefined {
    this.#chain.noted.add(name);
    return this.#kept.get(name)?.value as T | undefined;
  }

  /** What is kept by this name, or computed anew, and then the name is among what has changed. */
  #keep<T>(name: string, compute: () => T): T {
    const { changed } = this.#chain;
    const known = this.#kept.get(name);
    if (known && !some(known.reads, changed)) return known.value as T;
    const reads = new Set<string>();
    const before = this.#chain.noted;
    this.#chain.noted = reads;
    const value = compute();
    this.#chain.noted = before;
    this.#kept.set(name, { value, reads });
    changed.add(name);
    return value;
  }
}

function some(names: ReadonlySet<string>, among: ReadonlySet<string>): boolean {
  for (const name of names) if (among.has(name)) return true;
  return false;
}

/** The list as it was, where the new one holds the same. */
function same<T>(list: readonly T[], before: readonly T[] | undefined): readonly T[] {
  const isSame = before?.length === list.length && list.every((one, at) => one === before[at]);
  return isSame ? before : list;
}
