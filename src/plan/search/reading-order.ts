import { type Chains, chainsCost, type Reach, type StageCosts } from '../network/stage-costs.ts';
import { countTracks, INPUT, SOURCE, TRACK } from './voice-matching.ts';

/**
 * The same plan with leads in reading order: what costs the same goes to the first inputs, and the first source to
 * the first of them. Eight leads in a row are plugged without a thought, eight crosswise are not.
 */
export function inReadingOrder(
  costs: StageCosts,
  chains: Chains,
  reached: Reach,
  positions: Int32Array,
): Chains {
  const ends = new Ends(costs, chains, (changed) => chainsCost(costs, changed, reached, positions));
  const voices = ends.inOrder();
  for (const voice of voices) ends.moveForward(voice);
  // Each exchange undoes a crossing, so this ends.
  let isCrossed = voices.length > 1;
  while (isCrossed) {
    isCrossed = false;
    for (const [at, one] of voices.entries())
      for (const other of voices.slice(at + 1)) isCrossed = ends.uncross(one, other) || isCrossed;
  }
  return ends.chains;
}

/** The input and the track of a voice. */
type End = readonly [voice: number, input: number, track: number];

/** Where the chains of a plan end, to be exchanged where that costs nothing. */
class Ends {
  chains: Chains;
  readonly #costs: StageCosts;
  readonly #costOf: (chains: Chains) => number;
  readonly #cost: number;
  /** The inputs with a place, each with the track that it feeds now, in reading order. */
  readonly #inputs: readonly { readonly at: number; readonly place: number; readonly track: number }[];

  constructor(costs: StageCosts, chains: Chains, costOf: (chains: Chains) => number) {
    this.chains = chains;
    this.#costs = costs;
    this.#costOf = costOf;
    this.#cost = costOf(chains);
    const { inputs, tracks } = costs.network;
    this.#inputs = inputs
      .flatMap(({ place, track }, at) => {
        const feeds = tracks.findIndex(({ id }) => id === track);
        return place === undefined || feeds < 0 ? [] : [{ at, place, track: feeds }];
      })
      .sort((a, b) => a.place - b.place);
  }

  /** The recorded voices that share no track, in the order of their sources. */
  inOrder(): number[] {
    const sharing = countTracks(this.chains, this.#costs.tracks);
    const placed = Array.from({ length: this.#costs.voices }, (_value, voice) => {
      const source = this.#costs.network.sources[this.chains[4 * voice + SOURCE]!];
      return { voice, place: typeof source === 'object' ? source.place : undefined };
    });
    return placed
      .filter(({ voice, place }) => place !== undefined && sharing[this.chains[4 * voice + TRACK]!] === 1)
      .sort((a, b) => a.place! - b.place!)
      .map(({ voice }) => voice);
  }

  /** Takes the first input that nobody has, with its track, if that costs no more. */
  moveForward(voice: number): void {
    const here = this.#place(voice);
    this.#inputs.some(
      ({ at, place, track }) =>
        place < here &&
        this.#isFree(INPUT, at) &&
        this.#isFree(TRACK, track) &&
        this.#take([voice, at, track]),
    );
  }

  /** Exchanges the ends of two whose leads cross, if that costs no more. */
  uncross(one: number, other: number): boolean {
    if (this.#place(one) <= this.#place(other)) return false;
    const [first, second] = [this.#endOf(one), this.#endOf(other)];
    return this.#take([one, ...second], [other, ...first]);
  }

  #place(voice: number): number {
    return this.#costs.network.inputs[this.chains[4 * voice + INPUT]!]?.place ?? 0;
  }

  #endOf(voice: number) {
    return [this.chains[4 * voice + INPUT]!, this.chains[4 * voice + TRACK]!] as const;
  }

  #isFree(layer: number, node: number): boolean {
    return this.chains.every((one, at) => at % 4 !== layer || one !== node);
  }

  #take(...ends: readonly End[]): boolean {
    const changed = Int32Array.from(this.chains);
    for (const [voice, input, track] of ends) {
      changed[4 * voice + INPUT] = input;
      changed[4 * voice + TRACK] = track;
    }
    if (this.#costOf(changed) > this.#cost) return false;
    this.chains = changed;
    return true;
  }
}
