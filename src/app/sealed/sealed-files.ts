import { isSameBytes } from '../../exchange/sealed/bytes.ts';
import { writeDayFile } from '../../facts/day-file/day-file.ts';
import { isKnown } from '../../facts/fact.ts';
import type { DayId, Envelope } from '../../facts/kinds/envelope.ts';
import type { FactId } from '../../shared/ids.ts';
import type { AppStore } from '../app-store.ts';
import { type FileRead, readAsFarAsPossible } from '../import-files.ts';
import type { HeldKeys } from '../key-ring.ts';
import { BatchBook } from '../live/book.ts';
import type { DayFacts } from '../live/day-facts.ts';
import { platformParts } from '../live/platform-parts.ts';
import type { SealedProblem } from '../live/refusals.ts';
import { sealedSealer } from '../live/sealed-sealer.ts';
import type { OpenedBatch, Sealer } from '../live/sealer.ts';
import { readAll } from '../read-stored.ts';
import { besideLive } from './beside-live.ts';
import { readSealedText } from './sealed-text.ts';

/**
 * Opens a sealed file, or what was read off a screen, at the door that the log's batches come by: what nobody admitted
 * wrote is not opened. Nothing is kept yet.
 */
export async function readSealedFile(app: AppStore, name: string, text: string): Promise<FileRead> {
  const bundle = readSealedText(text);
  const nothing: FileRead = { name, damage: { problem: { code: 'sealed-nothing' }, lost: 0 } };
  if (!bundle) return nothing;
  const engine = await app.parts.live?.engine();
  const day = await engine?.ring.find(bundle.day);
  const held = day && (await engine?.ring.read(day));
  if (!engine || !day || !held) return { name, damage: { problem: { code: 'sealed-not-joined' }, lost: 0 } };
  const book = await BatchBook.open(engine.shelf, day);
  const refused: SealedProblem['code'][] = [];
  const here = await app.heldFacts(day);
  const sealer = await doorFor(app, day, held, here, book, ({ code }) => refused.push(code));
  const { opened, known, waiting } = await openAll(sealer, book, bundle.batches);
  const facts = [...here.filter(({ id }) => known.has(id)), ...opened.flatMap((batch) => batch.facts)];
  const sealed = {
    refused: refused.filter((code) => code !== 'sealed-replayed'),
    waiting,
    keep: () => keepBatches(app, day, bundle.batches),
  };
  if (facts.length === 0) return { ...nothing, sealed };
  return { ...readAsFarAsPossible(name, writeDayFile(day, name, facts)), sealed };
}

/** A door that is only looked through. */
async function doorFor(
  app: AppStore,
  day: DayId,
  held: HeldKeys,
  here: readonly Envelope[],
  book: BatchBook,
  note: (problem: SealedProblem) => void,
): Promise<Sealer> {
  const facts = readAll(here).facts.filter(isKnown);
  const store = { day: { peek: () => ({ id: day, facts, unknown: [] }) } };
  const { database } = app.parts.journal.state;
  return sealedSealer(platformParts, held, store, database, book, note);
}

/** What the batches open, the entries in those that are here already, and how many wait for what is missing. */
async function openAll(sealer: Sealer, book: BatchBook, batches: readonly Uint8Array[]) {
  const opened: OpenedBatch[] = [];
  const known = new Set<FactId>();
  let waiting = 0;
  for (const bytes of batches) {
    const claimed = sealer.claimed(bytes);
    if (!claimed) continue;
    const kept = book.find(claimed);
    if (kept && isSameBytes(kept.bytes, bytes)) {
      for (const id of kept.ids) known.add(id);
      continue;
    }
    const came = await sealer.open(bytes);
    if (typeof came === 'string') continue;
    if ('waits' in came) {
      waiting += 1;
      continue;
    }
    opened.push(...came.opened);
    waiting -= came.refused.length + came.opened.filter(({ waited }) => waited !== undefined).length;
  }
  return { opened, known, waiting };
}

/** Takes the batches in for good, by the same door, so that this phone can give them on. */
async function keepBatches(app: AppStore, day: DayId, batches: readonly Uint8Array[]): Promise<boolean> {
  const kept = await besideLive(app, day, async ({ sealer, book, facts }) => {
    const { opened } = await openAll(sealer, book, batches);
    for (const batch of opened) await keepOne(batch, book, facts);
    await book.save();
  });
  return kept !== null && kept !== 'busy';
}

async function keepOne(batch: OpenedBatch, book: BatchBook, facts: DayFacts): Promise<void> {
  const added = await facts.add(batch.facts);
  const ids = batch.facts.map(({ id }) => id);
  if (added.ok) book.add(batch, ids, null);
}
