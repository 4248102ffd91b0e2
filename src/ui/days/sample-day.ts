import fullDay from '../../../sample-days/full.txt?url';
import type { AppStore, TakenIn } from '../../app/app-store.ts';
import { fail, type Result } from '../../shared/result.ts';

/** Opens the sample day, which comes with the app: taken in the first time, as it was left afterwards. */
export async function openSampleDay(app: AppStore): Promise<Result<TakenIn>> {
  try {
    const response = await fetch(fullDay);
    if (!response.ok) return fail({ code: 'sample-missing' });
    return app.takeIn(await response.text());
  } catch {
    return fail({ code: 'sample-missing' });
  }
}
