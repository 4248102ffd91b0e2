import { type ReadonlySignal, signal } from '@preact/signals';
import { foldDay } from '../day/fold/fold.ts';
import type { Header } from '../day/model.ts';
import type { HeldDay, Stands } from '../facts/day-file/admit.ts';
import type { DayFile } from '../facts/day-file/day-file-facts.ts';
import { isReadable } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { storedForm } from '../facts/stored.ts';
import type { FactId } from '../shared/ids.ts';
import { ok, type Problem, type Result } from '../shared/result.ts';
import { type Command, type DayStore, openDayStore, type StoreParts } from './day-store.ts';
import type { FileRead, Imported } from './import-files.ts';
import type { Agreed, InDoubt } from './in-doubt.ts';
import type { Started, WholeDay } from './next-day.ts';
import type { DayOutline } from './ports.ts';
import type { Preview } from './preview.ts';
import { readAll } from './read-stored.ts';
import type { Safekeeping } from './safekeeping.ts';
import { type Unsaved, unsavedActions } from './unsaved.ts';

/** What came of importing a day file. */
export interface ImportedDay {
  readonly day: string;
  readonly fresh: number;
  readonly known: number;
  /** Entries of the file that stay out, because what is here under their ids stands. */
  readonly leftOut: readonly FactId[];
}

/** The days on this phone, and the one that is open. */
export interface AppStore {
  readonly parts: StoreParts;
  readonly safekeeping: Safekeeping;
  readonly days: ReadonlySignal<readonly DayOutline[]>;
  readonly refreshDays: () => Promise<void>;
  /** Opens a day; the one that was open is let go. */
  open(day: string): Promise<DayStore>;
  /** The day that is open, once it has been read. */
  current(): DayStore | undefined;
  /** Whether something is held in memory only, of the open day or of one that was left. */
  isHolding(): boolean;
  /** Puts that where it outlives this window, as far as there is such a place. */
  putAside(): void;
  /** What was held when windows were closed. */
  readonly unsaved: Unsaved;
  /** Starts a day with a command, saves what that says, and gives the id of the day. */
  start(command: Command): Promise<Result<string>>;
  /** The head of a day, for the next one's crew and settings. */
  headOf(day: string): Promise<Header>;
  /**
   * Starts tomorrow from a day: its rig as it stands, its cast, its crew. Said again, while nothing was said of either day
   * since, it gives the same one. Fails with `next-day-in-doubt` unless that is agreed to.
   */
  startFrom(day: string, agreed?: Agreed): Promise<Result<string, Problem | InDoubt>>;
  /**
   * The command that lays another day's rig, as it stood at its end, on the day it is run on. Fails with
   * `next-day-in-doubt` unless that is agreed to.
   */
  rigFrom(day: string, agreed?: Agreed): Promise<Result<Command, Problem | InDoubt>>;
  /** Imports a day file: new facts are added, known ones left, contradictions refused whole. */
  importText(text: string): Promise<Result<ImportedDay>>;
  /** What importing a set of files would do, day by day. Nothing is done. */
  preview(reads: readonly FileRead[]): Promise<readonly Preview[]>;
  /**
   * Imports what was read of any set of day files, and looks at the disk for every entry of them. `stands` says which
   * holds where a file and the phone have different entries under one id; unless it is said, such a file stays out.
   */
  importFiles(reads: readonly FileRead[], stands?: Stands): Promise<Imported>;
  /** A day as the text of a day file. */
  dayFile(day: string): Promise<string>;
  erase(day: string): Promise<void>;
}

/** Newest first by date, then by what was said last. A day without a date has that on which it was spoken of last. */
const newestFirst = (a: DayOutline, b: DayOutline): number => {
  const dateOf = ({ date, lastAt }: DayOutline): string =>
    date || new Date(lastAt).toISOString().slice(0, 10);
  return dateOf(b).localeCompare(dateOf(a)) || b.lastAt - a.lastAt;
};

/** How long a full phone may take to find room before it is told what is not on the disk. */
const DISK_PATIENCE_MS = 10_000;

// Parts that are wanted once a day come when they are wanted, or with the screen that wants them.
export function appStore(
  parts: StoreParts & { readonly newDayId: () => string; readonly safekeeping: Safekeeping },
): AppStore {
  const { journal, clock } = parts;
  const days = signal<readonly DayOutline[]>([]);
  /** Days that are open, or were let go while the phone still refused something of theirs. */
  const stores = new Map<string, Promise<DayStore>>();
  const started: Started = new Map();
  let current: { readonly id: string; readonly store: Promise<DayStore>; opened?: DayStore } | undefined;

  /** An open day may be ahead of the disk. */
  const asOpen = (day: DayOutline): DayOutline => {
    const open = current?.id === day.id ? current.opened?.outline() : undefined;
    return open && open.facts > day.facts ? open : day;
  };

  const refreshDays = async (): Promise<void> => {
    const listed = await journal.days();
    days.value = listed.map(asOpen).sort(newestFirst);
  };

  /** Another store of the day would not know what this one holds, and would say its ids a second time. */
  const letGo = async (id: string, opened: Promise<DayStore>): Promise<void> => {
    const store = await opened.catch(() => undefined);
    await store?.flushed();
    if (current?.store === opened) return;
    store?.close();
    stores.delete(id);
  };

  const open = (id: string): Promise<DayStore> => {
    if (current?.id === id) return current.store;
    if (current) void letGo(current.id, current.store);
    const opening: typeof current = { id, store: stores.get(id) ?? openDayStore(id, parts) };
    stores.set(id, opening.store);
    current = opening;
    return opening.store.then((store) => {
      opening.opened = store;
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
    const { id } = store.outline();
    if (store.saving.peek().state !== 'not-saved') await Promise.race([store.flushed(), delay(500)]);
    await refreshDays().catch(() => {});
    if (!days.peek().some((day) => day.id === id)) days.value = [store.outline(), ...days.peek()];
  };

  /** A day as this window has it, where it has it: with what the phone has not taken yet. */
  const readWhole = async (id: string): Promise<WholeDay> => {
    const store = await stores.get(id)?.catch(() => undefined);
    const count = unsaved.countOf(id);
    if (store) return { day: store.day.peek(), damaged: store.damaged.peek(), unsaved: count };
    const { facts, damaged } = readAll(await journal.read(id));
    return { day: foldDay(id, facts), damaged, unsaved: count };
  };

  /** What is stored of a day, as stored, as far as it can be read. */
  const readStored = async (id: string): Promise<Envelope[]> => (await journal.read(id)).filter(isReadable);

  /** What the phone has of a day, on the disk or still held. */
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
    // What was damaged here may be whole now.
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
    headOf: async (id) => (await readWhole(id)).day.header,
    async startFrom(id, agreed) {
      const { startNextDay } = await import('./next-day.ts');
      return startNextDay({ readWhole, start, clock: parts.clock, started }, id, agreed);
    },
    async rigFrom(id, agreed) {
      const { rigOfDay } = await import('./next-day.ts');
      return rigOfDay(await readWhole(id), agreed);
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
      // What is stored goes out as stored; what the phone has not taken yet goes out too.
      const { stored } = await heldOf(id);
      return writeDayFile(id, `${header.production} ${header.label}`.trim(), stored);
    },
    async erase(id) {
      const store = await stores.get(id);
      store?.forget();
      store?.close();
      stores.delete(id);
      if (current?.id === id) current = undefined;
      await journal.erase(id);
      parts.holding?.forget(id);
      await unsaved.refresh().catch(() => {});
      parts.neighbours.tell(id);
      await refreshDays();
    },
  };
}

const delay = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));
