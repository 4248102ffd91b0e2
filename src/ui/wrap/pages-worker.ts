import { reportPdf } from '../../report/pdf/report-pdf.ts';
import { sheetPdf } from '../../report/pdf/sheet-pdf.ts';
import { ok, type Result } from '../../shared/result.ts';
import { pageFonts } from './page-fonts.ts';
import { notMade, type Pages, type PagesAsked, type PagesProblem } from './pages-asked.ts';

addEventListener('message', ({ data }: MessageEvent<PagesAsked>) => {
  void write(data).then((made) => postMessage(made));
});

async function write(asked: PagesAsked): Promise<Result<Pages, PagesProblem>> {
  try {
    const fonts = await pageFonts();
    if (asked.what === 'sheet') {
      const { sheet, paper } = asked;
      return ok({ bytes: sheetPdf(sheet, { fonts, paper }), missing: [] });
    }
    const { model, paper, revision, signature } = asked;
    const { bytes, missing } = reportPdf(model, { fonts, paper, revision, signature });
    return ok({ bytes, missing });
  } catch (error) {
    return notMade(error);
  }
}
