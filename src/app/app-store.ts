import type { ReadonlySignal } from '@preact/signals';
import type { Beside } from '../commands/day/lay-beside.ts';
import { foldDay } from '../day/fold/fold.ts';
import type { Header } from '../day/model.ts';
import { headerNow } from '../day/settings/settings.ts';
import type { HeldDay, Stands } from '../facts/day-file/admit.ts';
import type { DayFile } from '../facts/day-file/day-file-facts.ts';
import { isReadable } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { storedForm } from '../facts/stored.ts';
import type { FactId } from '../shared/ids.ts';
import { ok, type Problem, type Result } from '../shared/result.ts';
import { dayList } from './day-list.ts';
import { type Command, type DayStore, openDayStore, type StoreParts } from './day-store.ts';
import { tellErased } from './erased.ts';
import type { FileRead, Imported } from './import-files.ts';
import type { Agreed, InDoubt } from './in-doubt.ts';
import type { Started, WholeDay } from './next-day.ts';
import type { DayOutline } from './ports.ts';
import type { Preview } from './preview.ts';
import { readAll } from './read-stored.ts';
import type { Safekeeping } from './safekeeping.ts';
import { type Unsaved, unsavedActions } from './unsaved.ts';

/** The outcome of importing a day file. */
export interface ImportedDay {
  readonly day: string;
  readonly fresh: number;
  readonly known: number;
  /** Entries of the file that were skipped because the phone keeps its own under the same ids. */
  readonly leftOut: readonly FactId[];
}

/** The days on this phone, and the open one. */
export interface AppStore {
  readonly parts: StoreParts;
  readonly safekeeping: Safekeeping;
  /** Right at once for what this window says and imports; `refreshDays` asks the disk what others did. */
  readonly days: ReadonlySignal<readonly DayOutline[]>;
  readonly refreshDays: () => Promise<void>;
  /** Opens a day and closes the one that was open. */
  open(day: string): Promise<DayStore>;
  /** The open day, once it has been read. */
  current(): DayStore | undefined;
  /** Whether any action, of the open day or an earlier one, is in memory only. */
  isHolding(): boolean;
  /** Moves such actions to storage that outlives this window, if there is any. */
  putAside(): void;
  /** Actions left behind by windows that were closed. */
  readonly unsaved: Unsaved;
  /** Starts a day with a command, saves it, and returns its id. */
  start(command: Command): Promise<Result<string>>;
  /** The header of a day, as defaults for the next one. */
  headOf(day: string): Promise<Header>;
  /**
   * Starts the next day with this one's rig, cast and crew. Calling it again before either day changes
   * returns the same new day. Fails with `next-day-in-doubt` unless `agreed`.
   */
  startFrom(day: string, agreed?: Agreed): Promise<Result<string, Problem | InDoubt>>;
  /** The command that copies another day's rig as of wrap. Fails with `next-day-in-doubt` unless `agreed`. */
  rigFrom(day: string, agreed?: Agreed, beside?: Beside): Promise<Result<Command, Problem | InDoubt>>;
  /** Imports a day file: adds new facts, skips known ones, refuses it whole if it contradicts the phone. */
  importText(text: string): Promise<Result<ImportedDay>>;
  /** What importing these files would do, day by day. Changes nothing. */
  preview(reads: readonly FileRead[]): Promise<readonly Preview[]>;
  /**
   * Imports any set of day files and checks the disk for every entry. Where a file and the phone differ under
   * one id, `stands` says which to keep; without it that file is refused.
   */
  importFiles(reads: readonly FileRead[], stands?: Stands): Promise<Imported>;
  dayFile(day: string): Promise<string>;
  /** Every readable fact of a day exactly as stored, and those not on the disk yet. */
  heldFacts(day: string): Promise<readonly Envelope[]>;
  erase(day: string): Promise<void>;
}

/** How long a full phone may take to find room before the user is told what is not on the disk. */
const DISK_PATIENCE_MS = 10_000;

// Code needed once a day is loaded on demand.
export function appStore(
  parts: StoreParts & { readonly newDayId: () => string; readonly safekeeping: Safekeeping },
): AppStore {
  const { journal, clock } = parts;
  const { days, listed, follow, leave } = dayList();
  /** Open days, and closed ones with facts that the phone has not accepted yet. */
  const stores = new Map<string, Promise<DayStore>>();
  const started: Started = new Map();
  let current: { readonly id: string; readonly store: Promise<DayStore>; opened?: DayStore } | undefined;

  const refreshDays = async (): Promise<void> => {
    listed.value = await journal.days();
  };

  /** A second store of the same day would not know what this one holds, and would reuse its ids. */
  const letGo = async (id: string, opened: Promise<DayStore>): Promise<void> => {
    const store = await opened.catch(() => undefined);
    await store?.flushed();
    if (current?.store === opened) return;
    store?.close();
    stores.delete(id);
    await refreshDays().catch(() => {});
    if (store) leave(store);
  };

  const open = (id: string): Promise<DayStore> => {
    if (current?.id === id) return current.store;
    if (current) void letGo(current.id, current.store);
    const opening: typeof current = { id, store: stores.get(id) ?? openDayStore(id, parts) };
    stores.set(id, opening.store);
    current = opening;
    return opening.store.then((store) => {
      opening.opened = store;
      follow(store);
      return store;
    });
  };

  const start = async (command: Command): Promise<Result<string>> => {
    const id = parts.newDayId();
    const store = await open(id);
    const result = store.run(command);
    if (!result.ok) return result;
    await refreshDaysWhen(store);
    return ok(id);
  };

  const refreshDaysWhen = async (store: DayStore): Promise<void> => {
    if (store.saving.peek().state !== 'not-saved') await Promise.race([store.flushed(), delay(500)]);
    await refreshDays().catch(() => {});
  };

  /** The day as this window has it, including facts not on the disk yet. */
  const readWhole = async (id: string): Promise<WholeDay> => {
    const store = await stores.get(id)?.catch(() => undefined);
    const count = unsaved.countOf(id);
    if (store) return { day: store.day.peek(), damaged: store.damaged.peek(), unsaved: count };
    const { facts, damaged } = readAll(await journal.read(id));
    return { day: foldDay(id, facts), damaged, unsaved: count };
  };

  /** Everything readable that is stored of a day. */
  const readStored = async (id: string): Promise<Envelope[]> => (await journal.read(id)).filter(isReadable);

  /** Everything the phone has of a day, on the disk or in memory. */
  const heldOf = async (id: string): Promise<HeldDay> => {
    const [stored, outlines] = await Promise.all([readStored(id), journal.days()]);
    const store = await stores.get(id);
    const { facts = [], unknown = [] } = store?.day.peek() ?? {};
    const kept = new Set(stored.map((fact) => fact.id));
    const held = [...facts, ...unknown].filter((fact) => !kept.has(fact.id)).map(storedForm);
    const { unsure } = store?.outline() ?? outlines.find((outline) => outline.id === id) ?? {};
    return { stored: [...stored, ...held], unsure: new Set(unsure) };
  };

  const unsaved = unsavedActions({
    holding: parts.holding,
    open,
    onDisk: readStored,
    onDiskOrHeld: async (day) => (await heldOf(day)).stored,
  });

  const merge = async (file: DayFile, stands?: Stands): Promise<Result<ImportedDay>> => {
    const { admit } = await import('../facts/day-file/admit.ts');
    const admitted = admit(await heldOf(file.day), file, clock.now().atMs, stands);
    if (!admitted.ok) return admitted;
    const { fresh, mended, same, leftOut } = admitted.value;
    const store = await open(file.day);
    await store.addAdmitted(admitted.value);
    await refreshDaysWhen(store);
    return ok({ day: file.day, fresh: fresh.length + mended.length, known: same, leftOut });
  };

  const mergeAndWait = async (file: DayFile, stands?: Stands): Promise<Result<ImportedDay>> => {
    const merged = await merge(file, stands);
    if (!merged.ok) return merged;
    const store = await open(file.day);
    await Promise.race([store.flushed(), delay(DISK_PATIENCE_MS)]);
    // The import may have repaired what was damaged here.
    await store.refresh();
    await refreshDays().catch(() => {});
    return merged;
  };

  return {
    parts,
    safekeeping: parts.safekeeping,
    days,
    refreshDays,
    open,
    current: () => current?.opened,
    isHolding: () => stores.size > 1 || (current?.opened?.saving.peek().waiting ?? 0) > 0,
    putAside() {
      for (const store of stores.values()) store.then((opened) => opened.putAside()).catch(() => {});
    },
    unsaved,
    start,
    headOf: async (id) => headerNow((await readWhole(id)).day),
    async startFrom(id, agreed) {
      const { startNextDay } = await import('./next-day.ts');
      return startNextDay({ readWhole, start, clock: parts.clock, started }, id, agreed);
    },
    async rigFrom(id, agreed, beside) {
      const { rigOfDay } = await import('./next-day.ts');
      return rigOfDay(await readWhole(id), agreed, beside);
    },
    async importText(text) {
      const { readDayFile } = await import('../facts/day-file/day-file.ts');
      const file = readDayFile(text);
      return file.ok ? merge(file.value) : file;
    },
    async preview(reads) {
      const { previewOf } = await import('./preview.ts');
      return previewOf(reads, heldOf, clock.now().atMs);
    },
    async importFiles(reads, stands) {
      const { importFiles } = await import('./import-files.ts');
      const phone = {
        merge: (file: DayFile) => mergeAndWait(file, stands),
        read: (day: string) => journal.read(day),
      };
      return importFiles(phone, reads);
    },
    async dayFile(id) {
      const { writeDayFile } = await import('../facts/day-file/day-file.ts');
      const store = await open(id);
      await Promise.race([store.flushed(), delay(500)]);
      const { header } = store.day.peek();
      // Exports facts exactly as stored, plus those not on the disk yet.
      const { stored } = await heldOf(id);
      const title = `${header.production} ${header.label}`.trim();
      return writeDayFile(id, title, stored, parts.holder?.read()?.name);
    },
    heldFacts: async (id) => (await heldOf(id)).stored,
    async erase(id) {
      const store = await stores.get(id);
      store?.forget();
      store?.close();
      stores.delete(id);
      if (current?.id === id) current = undefined;
      await journal.erase(id);
      parts.holding?.forget(id);
      parts.onlooking?.keep(id, false);
      tellErased(id);
      await parts.cards?.forget(id).catch(() => {});
      await parts.live?.forget(id).catch(() => {});
      await unsaved.refresh().catch(() => {});
      parts.neighbours.tell(id);
      await refreshDays();
      if (store) leave(store);
    },
  };
}

const delay = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
