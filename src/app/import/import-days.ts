import type { Stands } from '../../facts/day-file/admit.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import { type FileRead, type Imported, readAsFarAsPossible } from '../import-files.ts';
import type { Preview } from '../preview.ts';
import { isSealedText } from '../sealed/sealed-text.ts';
import { discardShared } from './shared-files.ts';

export type { Dispute, Stands } from '../../facts/day-file/admit.ts';
export { readFact } from '../../facts/fact.ts';
export type { Envelope } from '../../facts/kinds/envelope.ts';

/** Larger than any day, so not worth reading. */
const MOST_BYTES = 64 * 1024 * 1024;

/** Day files and their origin: chosen here, pasted, shared by another app, opened with this one, or read off another phone. */
export type DayFiles =
  | { readonly how: 'chosen' | 'shared' | 'opened' | 'read'; readonly files: readonly File[] }
  | { readonly how: 'pasted'; readonly text: string };

/** Day files that were read but not imported yet. */
export interface DayImport {
  readonly how: DayFiles['how'];
  readonly reads: readonly FileRead[];
  /** What importing them would do, day by day. */
  preview(): Promise<readonly Preview[]>;
  /** `stands`: which to keep where file and phone differ. Fails if every file contradicts the phone. */
  importAll(stands?: Stands): Promise<Result<Imported>>;
  /** Discards what was shared; missing if nothing was. */
  readonly discard?: () => Promise<unknown>;
}

/** The one way in for day files. Fails if none of them can be imported. */
export async function importDays(app: AppStore, brought: DayFiles): Promise<Result<DayImport>> {
  const { how } = brought;
  const read =
    how === 'pasted'
      ? ok([await readText(app, 'What was pasted', brought.text)])
      : await readFiles(app, brought.files);
  if (!read.ok) return read;
  const reads = read.value;
  const [first] = reads;
  // When the user chose several, each file reports its own problem.
  const isTold = how === 'chosen' && reads.length > 1;
  if (first?.damage && !isTold && reads.every(({ file }) => !file)) return fail(first.damage.problem);
  return ok({
    how,
    reads,
    preview: () => app.preview(reads),
    async importAll(stands) {
      const imported = await app.importFiles(reads, stands);
      for (const { sealed } of reads) await sealed?.keep();
      const [refused] = imported.refused;
      if (refused && imported.days.length === 0) return fail(refused.problem);
      if (how === 'shared') await discardShared();
      return ok(imported);
    },
    ...(how === 'shared' && { discard: discardShared }),
  });
}

async function readText(app: AppStore, name: string, text: string): Promise<FileRead> {
  if (!isSealedText(text)) return readAsFarAsPossible(name, text);
  // Only days that were shared need it.
  const { readSealedFile } = await import('../sealed/sealed-files.ts');
  return readSealedFile(app, name, text);
}

async function readFiles(app: AppStore, files: readonly File[]): Promise<Result<readonly FileRead[]>> {
  if (files.some(({ size }) => size > MOST_BYTES)) return fail({ code: 'day-file-too-large' });
  const reads: FileRead[] = [];
  for (const file of files) reads.push(await readText(app, file.name, await file.text()));
  return ok(reads);
}
