import { readHave } from '../../exchange/codes/have-code.ts';
import { readSealedHave } from '../../exchange/codes/sealed-have-code.ts';
import { MOST_BYTES, seriesOf } from '../../exchange/codes/series.ts';
import { type Have, lackedBy, nothingHeld } from '../../exchange/have.ts';
import { packParcel } from '../../exchange/parcel.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import type { Offer } from '../sealed/offer.ts';
import { sealedOffer } from '../sealed/sealed-giving.ts';
import { streamPacking } from '../stream-packing.ts';

/** Answers a code that says what another phone has; null for any other code. What is given of a shared day is sealed. */
export async function answerHave(app: AppStore, day: DayId, text: string): Promise<Result<Offer> | null> {
  const sealed = readSealedHave(text);
  const have = readHave(text) ?? (sealed && { ...nothingHeld(sealed.from), day: sealed.day });
  if (!have) return null;
  if (have.day !== null && have.day !== day) return fail({ code: 'codes-of-another-day' });
  return (await sealedOffer(app, day, sealed)) ?? offer(app, day, have);
}

export const offerAll = async (app: AppStore, day: DayId): Promise<Result<Offer>> =>
  (await sealedOffer(app, day, null)) ?? offer(app, day, nothingHeld(''));

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
