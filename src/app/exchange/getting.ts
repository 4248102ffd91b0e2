import { Collector, type Progress } from '../../exchange/codes/collector.ts';
import { writeHave } from '../../exchange/codes/have-code.ts';
import { writeSealedHave } from '../../exchange/codes/sealed-have-code.ts';
import { readPiece } from '../../exchange/codes/series.ts';
import { haveOf, nothingHeld } from '../../exchange/have.ts';
import { unpackParcel } from '../../exchange/parcel.ts';
import { readBundle } from '../../exchange/sealed/bundle.ts';
import { lastOfEach } from '../../exchange/sealed/have.ts';
import { writeDayFile } from '../../facts/day-file/day-file.ts';
import type { DayId } from '../../facts/kinds/envelope.ts';
import { fail, ok, type Result } from '../../shared/result.ts';
import type { AppStore } from '../app-store.ts';
import { handOver } from '../import/arrivals.ts';
import { sealedText } from '../sealed/sealed-text.ts';
import { streamPacking } from '../stream-packing.ts';

/** What a phone goes by that nobody named. */
const ANOTHER = 'another phone';

/** What this phone has of a day, as the text of a code; without a day it asks for any. */
export async function haveCode(app: AppStore, day: DayId | null): Promise<string> {
  const { database } = app.parts.journal.state;
  const shared = day === null ? null : await sharedHave(app, day);
  if (shared) return shared;
  return writeHave(day === null ? nothingHeld(database) : haveOf(day, database, await app.heldFacts(day)));
}

/** Of a shared day it tells whose batches it has. Null on a day that this phone has no keys of. */
async function sharedHave(app: AppStore, day: DayId): Promise<string | null> {
  const engine = await app.parts.live?.engine();
  if (!engine || !(await engine.ring.read(day))) return null;
  const { batches } = await engine.shelf.read(day);
  return writeSealedHave({ day, from: app.parts.journal.state.database, last: lastOfEach(batches) });
}

/** Reads the codes that another phone shows, until it has everything. */
export interface Getting {
  /** How much was read with this code; null for any other code. */
  take(text: string): Progress | null;
  readonly isWhole: boolean;
  /**
   * Hands what was read to the import, which shows what it would change. `day` is the one that was asked for; null
   * for any.
   */
  finish(day: DayId | null): Promise<Result<{ readonly entries: number }>>;
}

export function gettingCodes(): Getting {
  const collector = new Collector();
  let bytes: Uint8Array | null = null;
  return {
    take(text) {
      const piece = readPiece(text);
      if (!piece) return null;
      if (collector.take(piece)) bytes = collector.bytes();
      return collector.progress;
    },
    get isWhole() {
      return bytes !== null;
    },
    async finish(day) {
      if (!bytes) return fail({ code: 'codes-damaged' });
      const bundle = readBundle(bytes);
      if (bundle) {
        handOver([new File([sealedText(bundle)], 'Sealed day')], 'read');
        return ok({ entries: bundle.batches.length });
      }
      const parcel = await unpackParcel(streamPacking, bytes);
      if (!parcel.ok) return parcel;
      const { day: theirs, title, sender, facts } = parcel.value;
      if (day !== null && theirs !== day) return fail({ code: 'codes-of-another-day' });
      const file = writeDayFile(theirs, title, facts, sender || ANOTHER);
      handOver([new File([file], title || 'Day')], 'read');
      return ok({ entries: facts.length });
    },
  };
}
