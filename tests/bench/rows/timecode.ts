import { ltcDecoder } from '../../../src/ltc/decoder.ts';
import { seededNumbers } from '../../browser/faults-table.ts';
import { decoded, digitsOf } from '../../ltc/decoded.ts';
import { readRecording } from '../../ltc/read-wave.ts';
import { referenceTimecode } from '../reference-timecode.ts';
import type { Row } from '../row.ts';

/** Five hundredths of a core that is six times slower, for each second that is heard. */
const BUDGET_MS = (0.05 * 1000) / 6;
const RUNS = 25;

const secondsOf = (samples: Float32Array): number => samples.length / 48_000;

/** Processor time for a second of sound, in blocks as an audio worklet gets them: the machine may do other things too. */
function msASecond(samples: Float32Array): number {
  const read = (): void => {
    const decoder = ltcDecoder(48_000);
    for (let at = 0; at < samples.length; at += 128) decoder.push(samples.subarray(at, at + 128));
  };
  read();
  const from = process.cpuUsage();
  for (let run = 0; run < RUNS; run += 1) read();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000 / RUNS / secondsOf(samples);
}

export function rows(): Row[] {
  const clean = readRecording('clean-25').samples;
  const reference = referenceTimecode(clean, 1920, 200);
  const ours = decoded({ samples: clean, sampleRate: 48_000 }).map(digitsOf);
  if (reference && reference.times.join() !== ours.join()) throw new Error('Different frames');
  const next = seededNumbers(1);
  const noise = Float32Array.from({ length: 4 * 48_000 }, () => 0.3 * (2 * next() - 1));
  return [
    {
      work: `timecode: processor time for a second of sound at 48 kHz${reference ? '' : ', alone: libltc could not be had here'}`,
      ours: msASecond(clean),
      unit: 'ms',
      ...(reference && { other: { by: 'libltc 1.3.2, compiled', value: reference.ms / secondsOf(clean) } }),
      budget: BUDGET_MS,
    },
    {
      work: 'timecode: the same for a second of noise, in which all speeds are tried',
      ours: msASecond(noise),
      unit: 'ms',
      budget: BUDGET_MS,
    },
  ];
}
