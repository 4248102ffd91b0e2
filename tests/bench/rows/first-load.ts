import { ensureBuilt } from '../../../.ci/build.mjs';
import { brotliBytes, firstLoadOf } from '../../browser/first-load.ts';
import { DIST } from '../../browser/harness-server.ts';
import type { Row } from '../row.ts';
import { SPREADSHEET, spreadsheetPage } from '../spreadsheet.ts';

export async function rows(): Promise<Row[]> {
  ensureBuilt();
  const sheet = await spreadsheetPage();
  return [
    {
      work: 'first load: scripts and styles, brotli',
      ours: brotliBytes(DIST, firstLoadOf(DIST)),
      unit: 'bytes',
      other: { by: SPREADSHEET, value: brotliBytes(sheet, firstLoadOf(sheet)) },
      budget: 64_000,
    },
  ];
}
