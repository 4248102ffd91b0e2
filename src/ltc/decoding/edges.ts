/** Called at each edge: where it is, with fractions, and the peak since the edge before. */
export type OnEdge = (position: number, peak: number) => void;

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
export function edgeFinder(samplesABit: number, onEdge: OnEdge): (wave: Float64Array, first: number) => void {
  let [side, before, crossing, peak, usual, since] = [0, 0, 0, 0, LEAST, 0];
  const patience = Math.ceil(samplesABit * PATIENCE_BITS);
  const fainter = 0.5 ** (1 / samplesABit);
  return (wave, first) => {
    for (let i = 0; i < wave.length; i += 1) {
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
  };
}
