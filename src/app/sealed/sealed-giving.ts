import { MOST_BYTES, seriesOf } from '../../exchange/codes/series.ts';
import { bundleBytes } from '../../exchange/sealed/bundle.ts';
import { lackedBatches, type SealedHave } from '../../exchange/sealed/have.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import { sealNew } from '../live/seal-new.ts';
import type { KeptBatch } from '../shelf.ts';
import { besideLive } from './beside-live.ts';
import type { Offer } from './offer.ts';
import { sealedText } from './sealed-text.ts';

/** What this phone can give of a shared day: sealed batches, each of whoever said it. */
interface Sealed {
  readonly name: string;
  readonly batches: readonly KeptBatch[];
  readonly leavesOut: Offer['leavesOut'];
}

/** Null on a day that this phone has no keys of. */
async function sealedBeyond(
  app: AppStore,
  day: DayId,
  last: ReadonlyMap<string, number>,
): Promise<Sealed | 'busy' | null> {
  // Says who holds this phone, if the day does not know.
  (await app.open(day)).runTogether([]);
  const given = await besideLive(app, day, async ({ sealer, book, facts }): Promise<Sealed> => {
    const { isAdmitted, lacksKey } = await sealNew(sealer, book, facts);
    const leavesOut = lacksKey ? 'lacks-key' : isAdmitted ? undefined : 'not-admitted';
    return { name: sealer.day, batches: lackedBatches(last, book.all), leavesOut };
  });
  return given === null || given === 'busy' ? given : given.done;
}

/**
 * What this phone has of a shared day for one that has so much, as codes; all of it for one that did not say. Null on a
 * day that this phone has no keys of.
 */
export async function sealedOffer(
  app: AppStore,
  day: DayId,
  have: SealedHave | null,
): Promise<Result<Offer> | null> {
  const sealed = await sealedBeyond(app, day, have?.last ?? new Map());
  if (sealed === 'busy') return fail({ code: 'live-elsewhere' });
  if (!sealed) return null;
  const { name, batches, leavesOut } = sealed;
  const offer = {
    to: have?.from ?? null,
    entries: batches.reduce((sum, { ids }) => sum + ids.length, 0),
    isSealed: true,
    leavesOut,
  };
  if (batches.length === 0) return ok({ ...offer, series: null });
  const bytes = bundleBytes({ day: name, batches: batches.map((batch) => batch.bytes) });
  if (bytes.length > MOST_BYTES) return fail({ code: 'codes-too-many' });
  return ok({ ...offer, series: seriesOf(bytes) });
}

/** A shared day as a file that only phones that have joined can read; null on a day that this phone has no keys of. */
export async function sealedFile(app: AppStore, day: DayId): Promise<Result<string> | null> {
  const sealed = await sealedBeyond(app, day, new Map());
  if (sealed === 'busy') return fail({ code: 'live-elsewhere' });
  if (!sealed) return null;
  return ok(sealedText({ day: sealed.name, batches: sealed.batches.map((batch) => batch.bytes) }));
}
