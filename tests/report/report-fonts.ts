import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Fonts } from '../../src/report/pdf/pen.ts';

const face = (weight: string): Uint8Array =>
  new Uint8Array(readFileSync(join(import.meta.dirname, `../../src/report/pdf/fonts/report-${weight}.ttf`)));

/** The two faces of the report, as the app hands them in. */
export const reportFonts: Fonts = { regular: face('regular'), bold: face('bold') };
