import { readHave } from '../../exchange/codes/have-code.ts';
import { MOST_BYTES, type Series, seriesOf } from '../../exchange/codes/series.ts';
import { type Have, lackedBy, nothingHeld } from '../../exchange/have.ts';
import { packParcel } from '../../exchange/parcel.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import { streamPacking } from './stream-packing.ts';

/** What this phone has for another. */
export interface Offer {
  /** The other phone's database; null if it did not say. */
  readonly to: string | null;
  readonly entries: number;
  /** Null if the other phone has everything that is here. */
  readonly series: Series | null;
}

/** Answers a code that says what another phone has; null for any other code. */
export async function answerHave(app: AppStore, day: DayId, text: string): Promise<Result<Offer> | null> {
  const have = readHave(text);
  if (!have) return null;
  if (have.day !== null && have.day !== day) return fail({ code: 'codes-of-another-day' });
  return offer(app, day, have);
}

export const offerAll = (app: AppStore, day: DayId): Promise<Result<Offer>> =>
  offer(app, day, nothingHeld(''));

async function offer(app: AppStore, day: DayId, have: Have): Promise<Result<Offer>> {
  const store = await app.open(day);
  const { header } = store.day.peek();
  // Says who holds this phone, if the day does not know.
  store.runTogether([]);
  const facts = lackedBy(have, await app.heldFacts(day));
  const to = have.from || null;
  if (facts.length === 0) return ok({ to, entries: 0, series: null });
  const title = `${header.production} ${header.label}`.trim();
  const { name = '' } = app.parts.holder?.read() ?? {};
  const bytes = await packParcel(streamPacking, { day, title, sender: name, facts });
  if (bytes.length > MOST_BYTES) return fail({ code: 'codes-too-many' });
  return ok({ to, entries: facts.length, series: seriesOf(bytes) });
}
