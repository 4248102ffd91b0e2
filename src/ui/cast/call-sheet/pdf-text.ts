import { GlobalWorkerOptions, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { linesOfPage, type PageText } from '../../../app/commands/call-sheet.ts';

const MOST_PAGES = 40;

interface TextItem {
  readonly str: string;
  readonly transform: readonly number[];
  readonly width: number;
  readonly height: number;
}

/** The text of a PDF, line by line, in the columns of its headings; empty if it is only pictures of text. */
export async function textOfPdf(bytes: Uint8Array): Promise<string> {
  const port = new Worker(new URL('pdfjs-dist/legacy/build/pdf.worker.min.mjs', import.meta.url), {
    type: 'module',
  });
  GlobalWorkerOptions.workerPort = port;
  const task = getDocument({ data: bytes, useSystemFonts: true });
  try {
    const document = await task.promise;
    const lines: string[] = [];
    for (let page = 1; page <= Math.min(MOST_PAGES, document.numPages); page += 1) {
      const { items } = await (await document.getPage(page)).getTextContent();
      lines.push(
        ...linesOfPage(items.flatMap((item) => ('str' in item ? [pieceOf(item as TextItem)] : []))),
        '',
      );
    }
    return lines.join('\n');
  } finally {
    await task.destroy();
    GlobalWorkerOptions.workerPort = null;
    port.terminate();
  }
}

const pieceOf = ({ str, transform, width, height }: TextItem): PageText => ({
  text: str,
  from: transform[4]!,
  to: transform[4]! + width,
  y: transform[5]!,
  height: height || Math.abs(transform[3]!) || 10,
});
