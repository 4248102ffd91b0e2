import { SUGGESTED_GUARDS } from '../../../src/radio/carrier.ts';
import { cleanPositions } from '../../../src/radio/clean/clean-positions.ts';
import { analyse } from '../../../src/radio/intermodulation/analyse.ts';
import { recheck } from '../../../src/radio/intermodulation/recheck.ts';
import { bruteForce } from '../../radio/brute-force.ts';
import { hitLines, randomCarriers } from '../../radio/sample-carriers.ts';
import { medianMs, type Row } from '../row.ts';

const GUARDS = { ...SUGGESTED_GUARDS, twoToneFifthKhz: 50 };

function analysed(count: number, budget: number | undefined): Row {
  const carriers = randomCarriers(count, count, 138_000, false);
  const whole = analyse(carriers, GUARDS, { listedPerFamily: Number.MAX_SAFE_INTEGER });
  if (!whole.ok) throw new Error(whole.problem.code);
  let expected: string[] = [];
  const plain = medianMs(1, () => {
    expected = bruteForce(carriers, GUARDS);
  });
  if (JSON.stringify(hitLines(whole.value)) !== JSON.stringify(expected)) throw new Error('Different hits');
  return {
    work: `radio: ${count} carriers, ${expected.length} hits (seed ${count})`,
    ours: medianMs(15, () => analyse(carriers, GUARDS)),
    unit: 'ms',
    other: { by: 'brute force', value: plain },
    ...(budget !== undefined && { budget }),
    ratioBudget: 30,
  };
}

export function rows(): Row[] {
  const carriers = randomCarriers(65, 64, 138_000, false);
  const analysis = analyse(carriers, GUARDS);
  if (!analysis.ok) throw new Error(analysis.problem.code);
  let step = 0;
  const moved = medianMs(200, () => {
    step += 1;
    return recheck(analysis.value, { ...carriers[step % 64]!, khz: 470_000 + 25 * step });
  });
  const range = { fromKhz: 470_000, toKhz: 608_000, rasterKhz: 25 };
  const positions = medianMs(5, () => cleanPositions(carriers, GUARDS, [range], []));
  return [
    analysed(64, 10),
    analysed(128, undefined),
    { work: 'radio: one moved carrier of 64 (seed 65)', ours: moved, unit: 'ms', budget: 1 },
    { work: 'radio: 5,521 positions against 64', ours: positions, unit: 'ms', budget: 300 },
  ];
}
