import { reportPdf } from '../../report/pdf/report-pdf.ts';
import { sheetPdf } from '../../report/pdf/sheet-pdf.ts';
import { pageFonts } from './page-fonts.ts';
import type { PagesAsked, PagesMade } from './pages.ts';

addEventListener('message', ({ data }: MessageEvent<PagesAsked>) => {
  void write(data).then((made) => postMessage(made));
});

async function write(asked: PagesAsked): Promise<PagesMade> {
  try {
    const fonts = await pageFonts();
    if (asked.what === 'sheet') {
      const { sheet, paper } = asked;
      return { bytes: sheetPdf(sheet, { fonts, paper }), missing: [] };
    }
    const { model, paper, revision, signature } = asked;
    const { bytes, missing } = reportPdf(model, { fonts, paper, revision, signature });
    return { bytes, missing };
  } catch (error) {
    return { because: error instanceof Error ? error.message : String(error) };
  }
}
