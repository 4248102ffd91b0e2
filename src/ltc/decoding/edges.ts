/** Called at each edge: where it is, with fractions, and the peak since the edge before. */
export type OnEdge = (position: number, peak: number) => void;

/** Looks through `count` samples, of which the first is at `first` in the whole of what was heard. */
export type FindEdges = (wave: Float64Array, count: number, first: number) => void;

/** Below this nothing is read: -62 dB against full scale. */
const LEAST = 0.0008;
/** An edge counts when the other side has reached this part of the usual peak; noise does not get there. */
const REACH = 0.35;
/** After this many bits without an edge the code is taken to have grown fainter. */
const PATIENCE_BITS = 2;

/**
 * Finds where a wave changes sides. The position is where it last crossed zero before it got to the other side for
 * good, between two samples.
 */
export function edgeFinder(samplesABit: number, onEdge: OnEdge): FindEdges {
  const patience = Math.ceil(samplesABit * PATIENCE_BITS);
  const fainter = 0.5 ** (1 / samplesABit);
  const kept = { side: 0, before: 0, crossing: 0, peak: 0, usual: LEAST, since: 0 };
  return (wave, count, first) => {
    // In variables of this call: what a closure keeps is a new object each time a fraction is put into it.
    let { side, before, crossing, peak, usual, since } = kept;
    for (let i = 0; i < count; i += 1) {
      const value = wave[i]!;
      if (value > 0 !== before > 0) crossing = first + i - value / (value - before);
      before = value;
      const size = value < 0 ? -value : value;
      since += 1;
      if (since > patience) usual = Math.max(LEAST, usual * fainter);
      const isAcross = value > 0 ? side <= 0 : side >= 0;
      if (!isAcross) {
        if (size > peak) peak = size;
        continue;
      }
      if (size < usual * REACH || size < LEAST * REACH) continue;
      onEdge(side === 0 ? first + i : crossing, peak);
      if (side !== 0) usual = Math.max(LEAST, usual + (peak - usual) / 8);
      side = value > 0 ? 1 : -1;
      peak = size;
      since = 0;
    }
    kept.side = side;
    kept.before = before;
    kept.crossing = crossing;
    kept.peak = peak;
    kept.usual = usual;
    kept.since = since;
  };
}
