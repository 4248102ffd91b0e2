import { fail, ok, type Result } from '../../../shared/result.ts';

const LARGEST = 20_000_000;

/** The text of a chosen file; a PDF is read by a reader that loads only then. */
export async function textOfFile(file: File): Promise<Result<string>> {
  if (file.size > LARGEST) return fail({ code: 'sheet-too-large', most: LARGEST / 1_000_000 });
  try {
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (!isPdf(bytes)) return ok(decoded(bytes));
    const { textOfPdf } = await import('./pdf-text.ts');
    const text = await textOfPdf(bytes);
    return text.trim() === '' ? fail({ code: 'pdf-without-text' }) : ok(text);
  } catch {
    return fail({ code: 'sheet-unread', name: file.name });
  }
}

const isPdf = (bytes: Uint8Array): boolean =>
  new TextDecoder('latin1').decode(bytes.subarray(0, 1024)).includes('%PDF-');

/** UTF-8, or UTF-16 by its mark, or what older spreadsheets write. */
function decoded(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
