import fullDay from '../../../sample-days/full.txt?url';
import type { AppStore, ImportedDay } from '../../app/app-store.ts';
import { fail, type Result } from '../../shared/result.ts';

/** Opens the sample day that ships with the app: imported the first time, later as it was left. */
export async function openSampleDay(app: AppStore): Promise<Result<ImportedDay>> {
  try {
    const response = await fetch(fullDay);
    if (!response.ok) return fail({ code: 'sample-missing' });
    return app.importText(await response.text());
  } catch {
    return fail({ code: 'sample-missing' });
  }
}
