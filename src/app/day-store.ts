import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { CommandResult, Moment } from '../commands/command.ts';
import { namePhone } from '../commands/day/name-phone.ts';
import { actionsOf, redo, undo } from '../commands/line/undo.ts';
import { appendFacts, foldDay } from '../day/fold/fold.ts';
import type { Day } from '../day/model.ts';
import { type ReadsOnly, readsOnly } from '../day/phones/reads-only.ts';
import type { Admitted } from '../facts/day-file/admit.ts';
import type { Fact, UnknownFact } from '../facts/fact.ts';
import { batchOf, type Envelope } from '../facts/kinds/envelope.ts';
import { stampFacts } from '../facts/stamp.ts';
import { unfitToKeep } from '../facts/unfit.ts';
import { type FactId, idSource } from '../shared/ids.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import { type Copy, copyOf, type Kept, outlineOf, sizeOf } from './day-outline.ts';
import type { LivePorts } from './live-ports.ts';
import type { OnlookerDays } from './onlooker-days.ts';
import type { HolderPlace } from './phone-holder.ts';
import type { CardStore, Clock, DayOutline, HoldingPlace, Journal, Neighbours } from './ports.ts';
import { changedSince, hasId, readAll } from './read-stored.ts';
import { clockOf } from './sample-clock.ts';
import { type Saving, savingQueue } from './saving.ts';

export type { Moment };

/** A command as the store runs it, given the day and the moment. */
export type Command = (day: Day, now: Moment) => CommandResult;

/** One open day: its folded facts, its undoable actions, and news from other windows. */
export interface DayStore {
  readonly day: ReadonlySignal<Day>;
  readonly saving: ReadonlySignal<Saving>;
  /** Stored facts that could not be read: kept and reported. */
  readonly damaged: ReadonlySignal<number>;
  /** Entries imported without checks from a damaged file or copy, so any of them may be wrong. */
  readonly unsure: ReadonlySignal<number>;
  /** Whether a copy has left the phone. */
  readonly copy: ReadonlySignal<Copy>;
  /** Another window erased the day, so nothing more can be added. */
  readonly erased: ReadonlySignal<boolean>;
  /** Why this phone may only read the day; null if it may write. */
  readonly readsOnly: ReadonlySignal<ReadsOnly | null>;
  readonly canUndo: ReadonlySignal<boolean>;
  /** The first fact of the action that undo would undo. */
  readonly undoes: ReadonlySignal<FactId | undefined>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** What this day goes by: the phone's clock, but for a sample day. */
  readonly clock: Clock;
  /** Runs a command. Its facts show at once and are saved as soon as the disk has them. */
  run(command: Command): Result<readonly Fact[]>;
  /** Runs commands as one action: each sees the effect of those before it; all succeed or none. */
  runTogether(commands: readonly Command[]): Result<readonly Fact[]>;
  /** Fails with `undo-built-on` if another phone's facts depend on what would be undone, unless forced. */
  undo(how?: { readonly evenIfBuiltOn: boolean }): Result<readonly Fact[]>;
  redo(): Result<readonly Fact[]>;
  /**
   * Adds facts from a day file, or those that a closed window had put aside under the key `left`. Undo skips
   * facts of other phones.
   */
  addForeign(facts: readonly (Fact | UnknownFact)[], stored: readonly Envelope[], left?: string): void;
  /** Applies an import. Rejects if there is no room to repair damaged facts. */
  addAdmitted(admitted: Admitted): Promise<void>;
  newId(): string;
  retry(): void;
  flushed(): Promise<void>;
  /** Reads what other windows have written since. */
  refresh(): Promise<void>;
  /** Records that a copy has left the phone. */
  copied(): Promise<void>;
  outline(): DayOutline;
  /** Moves facts not on the disk yet to storage that outlives this window. */
  putAside(): void;
  /** The day was erased: drops unsaved facts so that they cannot come back. */
  forget(): void;
  close(): void;
}

export interface StoreParts {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly neighbours: Neighbours;
  /** If missing, facts not on the disk are lost when the window closes. */
  readonly holding?: HoldingPlace;
  /** If missing, what was read of cards is gone when the window closes. */
  readonly cards?: CardStore | undefined;
  /** Who holds this phone: said of it on every day it writes to. */
  readonly holder?: HolderPlace;
  /** If missing, no day can be put live. */
  readonly live?: LivePorts;
  /** If missing, this phone looks on nowhere. */
  readonly onlooking?: OnlookerDays;
  /** Five characters for this window, so that two windows never create the same id. */
  readonly window: string;
}

/** Opens a stored day, or starts a new one. */
export async function openDayStore(id: string, parts: StoreParts): Promise<DayStore> {
  const { journal, neighbours } = parts;
  const news: { pending: boolean; hear: () => void } = { pending: false, hear: () => {} };
  // Listens before the first read, so as not to miss what another window writes in between.
  const stop = neighbours.listen((day) => {
    if (day !== id) return;
    news.pending = true;
    news.hear();
  });

  const [stored, outlines] = await Promise.all([journal.read(id), journal.days()]);
  const first = readAll(stored);
  const day = signal(foldDay(id, first.facts));
  const clock = clockOf(() => day.peek(), parts.clock);
  const damaged = signal(first.damaged);
  const ids = idSource(`${journal.state.database}${parts.window}`);
  for (const fact of first.facts) ids.see(fact.id);
  // Put-aside facts may be restored later, so new ids must come after theirs.
  for (const held of parts.holding?.idsOf(id) ?? []) ids.see(held);
  const earlier = outlines.find((outline) => outline.id === id);
  const kept = signal<Kept>({
    at: earlier?.copiedAt,
    facts: earlier?.copiedFacts,
    unsure: earlier?.unsure,
  });
  const erased = signal(false);
  let everSaved = stored.length > 0;

  /** Stored facts, damaged ones too: written back if the browser empties its database under the app. */
  const everything = stored.filter((raw) => hasId(raw));

  const outline = (): DayOutline => outlineOf(day.peek(), kept.peek());
  const queue = savingQueue({
    journal,
    holding: parts.holding,
    onSaved() {
      everSaved = true;
      neighbours.tell(id);
    },
    everything: () => everything,
  });
  const actions = computed(() => actionsOf(day.value, journal.state.database));

  const accept = (facts: readonly (Fact | UnknownFact)[]): void => {
    for (const fact of facts) ids.see(fact.id);
    day.value = appendFacts(day.peek(), facts);
  };

  const whyReads = (now: Day): ReadsOnly | null =>
    readsOnly(now, journal.state.database, parts.onlooking?.has(id) ?? false);

  let aheadTold = clock.now().aheadMs ?? 0;
  const runTogether = (commands: readonly Command[]): Result<readonly Fact[]> => {
    if (erased.peek()) return fail({ code: 'day-erased' });
    if (whyReads(day.peek())) return fail({ code: 'day-reads-only' });
    const { database } = journal.state;
    const now = clock.now();
    const { atMs: at, zone, aheadMs = 0 } = now;
    const seen = seenBy(day.peek(), database);
    const saying = { day: id, at, zone, seen, ahead: aheadMs - aheadTold, nextId: ids.next };
    const facts: Fact[] = [];
    for (const command of commands) {
      const said = command(dayWith(day.peek(), facts), { ...now, database });
      if (!said.ok) return said;
      facts.push(...stampFacts(said.value, { ...saying, batch: facts[0]?.id }));
    }
    const unfit = unfitToKeep(facts);
    if (unfit) return fail(unfit);
    aheadTold = aheadMs;
    const holder = parts.holder?.read();
    const named = holder && namePhone(day.peek(), { ...now, database }, holder);
    // A batch of its own: who holds the phone is no part of what was done.
    if (named?.ok) facts.push(...stampFacts(named.value, { day: id, at, zone, seen, nextId: ids.next }));
    if (facts.length === 0) return ok(facts);
    accept(facts);
    everything.push(...facts);
    queue.add(facts, outline);
    return ok(facts);
  };
  const run = (command: Command): Result<readonly Fact[]> => runTogether([command]);

  /** Replaces facts by id. */
  const takeOver = (mended: readonly Envelope[]): void => {
    if (mended.length === 0) return;
    const byId = new Map(mended.map((fact) => [fact.id, fact]));
    for (const [at, { id }] of everything.entries()) everything[at] = byId.get(id) ?? everything[at]!;
    const { facts, unknown } = day.peek();
    const others = [...facts, ...unknown].filter((fact) => !byId.has(fact.id));
    day.value = foldDay(id, [...others, ...readAll(mended).facts]);
  };

  const addAdmitted = async ({ fresh, mended, unsure }: Admitted): Promise<void> => {
    kept.value = { ...kept.peek(), unsure: [...unsure] };
    if (mended.length > 0) {
      await journal.mend(mended, outline());
      takeOver(mended);
      neighbours.tell(id);
    }
    if (fresh.length > 0) addForeign(readAll(fresh).facts, fresh);
    else if (everSaved) await journal.describe(outline());
  };

  const addForeign: DayStore['addForeign'] = (facts, raw, left) => {
    accept(facts);
    for (const fact of raw) everything.push(fact);
    queue.add(raw, outline, left);
  };

  const forget = (): void => {
    erased.value = true;
    queue.drop();
    // People's names must leave memory too, not just the disk.
    everything.length = 0;
    day.value = foldDay(id, []);
  };

  const refresh = async (): Promise<void> => {
    news.pending = false;
    const [raw, outlines] = await Promise.all([journal.read(id), journal.days()]);
    // The first window to write refills an emptied database, so an empty read means that the day was erased.
    if (raw.length === 0 && everSaved) return forget();
    everSaved ||= raw.length > 0;
    const all = readAll(raw);
    const known = new Set([...day.peek().facts, ...day.peek().unknown].map((fact) => fact.id));
    const fresh = all.facts.filter((fact) => !known.has(fact.id));
    if (fresh.length > 0) accept(fresh);
    // Facts are only added, so news without new ones means that a damaged one was repaired.
    if (fresh.length === 0) takeOver(changedSince(everything, raw));
    const held = new Set(everything.map((fact) => fact.id));
    for (const fact of raw) if (hasId(fact) && !held.has(fact.id)) everything.push(fact);
    damaged.value = all.damaged;
    // What is still being saved is newer than what is stored.
    const { unsure } = outlines.find((one) => one.id === id) ?? {};
    if (queue.saving.peek().waiting === 0) kept.value = { ...kept.peek(), unsure };
  };
  // A busy window sends news with every action; one more read covers all that arrived during this one.
  let looking = false;
  const look = async (): Promise<void> => {
    if (looking) return;
    looking = true;
    try {
      while (news.pending) await refresh();
    } finally {
      looking = false;
    }
  };
  news.hear = () => void look().catch(() => {});
  if (news.pending) news.hear();

  return {
    day,
    saving: queue.saving,
    damaged,
    unsure: computed(() => kept.value.unsure?.length ?? 0),
    copy: computed(() => copyOf(kept.value, sizeOf(day.value))),
    erased,
    readsOnly: computed(() => whyReads(day.value)),
    canUndo: computed(() => actions.value.done.length > 0),
    undoes: computed(() => firstOf(actions.value.done.at(-1)?.facts)),
    canRedo: computed(() => actions.value.undone.length > 0),
    clock,
    run,
    runTogether,
    undo: (how) => run((now) => undo(now, journal.state.database, how)),
    redo: () => run((now) => redo(now, journal.state.database)),
    addForeign,
    addAdmitted,
    newId: () => `e${ids.next()}`,
    retry: queue.retry,
    flushed: queue.flushed,
    refresh,
    async copied() {
      // The day may be erased while a share sheet is open.
      if (erased.peek()) return;
      kept.value = { ...kept.peek(), at: parts.clock.now().atMs, facts: sizeOf(day.peek()) };
      await journal.describe(outline());
    },
    outline,
    putAside: queue.putAside,
    forget,
    close: stop,
  };
}

const firstOf = (facts: readonly Fact[] | undefined): FactId | undefined => facts?.[0] && batchOf(facts[0]);

/** The day with these facts added, folded separately; nothing is recorded. */
const dayWith = (day: Day, facts: readonly Fact[]): Day =>
  facts.length === 0 ? day : foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);

/** The highest counter seen from every other database: what the author of this fact knew of other phones. */
function seenBy(day: Day, database: string): Record<string, number> {
  return Object.fromEntries([...day.highest].filter(([other]) => other !== database));
}
