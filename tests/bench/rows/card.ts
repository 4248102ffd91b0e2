import { run as match } from '../reconcile.ts';
import type { Row } from '../row.ts';
import { run as headers } from '../wave-headers.ts';

export async function rows(): Promise<Row[]> {
  const { files, ours, other, ratio: _ratio, blobs, bytesReadPerFile, firstResultMs } = await headers();
  const { takes, recordings, clean, untidy } = await match();
  const wave = (from: string, a: number, b: number): Row => ({
    work: `card: a header of ${files}, from ${from}`,
    ours: a,
    unit: 'ms',
    other: { by: 'music-metadata', value: b },
    ratioBudget: 1,
  });
  return [
    wave('paths', ours, other),
    wave('blobs, as a browser gives them', blobs.ours, blobs.other),
    { work: 'card: bytes read a file', ours: bytesReadPerFile, unit: 'bytes', budget: 65_536 },
    { work: 'card: first result', ours: firstResultMs, unit: 'ms', budget: 1000 },
    {
      work: `card: ${takes} takes matched to ${recordings} recordings`,
      ours: clean.match,
      unit: 'ms',
      budget: 100,
    },
    { work: 'card: the same, clocks apart and half renamed', ours: untidy.match, unit: 'ms', budget: 100 },
  ];
}
