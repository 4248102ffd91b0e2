import boldUrl from '../../../report/pdf/fonts/report-bold.ttf?url';
import regularUrl from '../../../report/pdf/fonts/report-regular.ttf?url';
import { reportPdf } from '../../../report/pdf/report-pdf.ts';
import { sheetPdf } from '../../../report/pdf/sheet-pdf.ts';
import { ok, type Result } from '../../../shared/result.ts';
import { notMade, type Pages, type PagesAsked, type PagesProblem } from './pages-asked.ts';
import { systemLetters } from './system-letters.ts';

addEventListener('message', ({ data }: MessageEvent<PagesAsked>) => {
  void write(data).then((made) => postMessage(made));
});

async function write(asked: PagesAsked): Promise<Result<Pages, PagesProblem>> {
  try {
    const fonts = await pageFonts();
    const letters = systemLetters();
    if (asked.what === 'sheet') {
      const { sheet, paper } = asked;
      return ok({ bytes: sheetPdf(sheet, { fonts, letters, paper }), missing: [] });
    }
    const { what: _what, model, ...options } = asked;
    const { bytes, missing } = reportPdf(model, { fonts, letters, ...options });
    return ok({ bytes, missing });
  } catch (error) {
    return notMade(error);
  }
}

/** The fonts of printed pages, from the app's own files, which are available offline. */
async function pageFonts(): Promise<{ readonly regular: Uint8Array; readonly bold: Uint8Array }> {
  const [regular, bold] = await Promise.all([load(regularUrl), load(boldUrl)]);
  return { regular, bold };
}

async function load(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error('A font is not on this phone');
  return new Uint8Array(await response.arrayBuffer());
}
