import { run } from '../report.ts';
import type { Row } from '../row.ts';

export const rows = (): Row[] =>
  run().map(({ name, value, ceiling }) => ({
    work: `report: ${name.replace(/, (ms|bytes)$/, '')}`,
    ours: value,
    unit: name.endsWith('bytes') ? 'bytes' : 'ms',
    budget: ceiling,
  }));
