import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { CommandResult, Moment } from '../commands/command.ts';
import { actionsOf, redo, undo } from '../commands/line/undo.ts';
import { appendFacts, foldDay } from '../day/fold/fold.ts';
import type { Day } from '../day/model.ts';
import type { Admitted } from '../facts/day-file/admit.ts';
import type { Fact, UnknownFact } from '../facts/fact.ts';
import type { Envelope } from '../facts/kinds/envelope.ts';
import { stampFacts } from '../facts/stamp.ts';
import { unfitToKeep } from '../facts/unfit.ts';
import { idSource } from '../shared/ids.ts';
import { fail, ok, type Result } from '../shared/result.ts';
import { type Copy, copyOf, type Kept, outlineOf, sizeOf } from './day-outline.ts';
import type { Clock, DayOutline, HoldingPlace, Journal, Neighbours } from './ports.ts';
import { changedSince, hasId, readAll } from './read-stored.ts';
import { type Saving, savingQueue } from './saving.ts';

export type { Moment };

/** A command as the store runs it: it sees the day as it stands and the moment it is given. */
export type Command = (day: Day, now: Moment) => CommandResult;

/** One day, open: its facts folded, its actions kept, other windows followed. */
export interface DayStore {
  readonly day: ReadonlySignal<Day>;
  readonly saving: ReadonlySignal<Saving>;
  /** Stored facts that could not be read: kept, not understood, and told. */
  readonly damaged: ReadonlySignal<number>;
  /** Entries that came from a damaged file or copy without checks: any may not say what it said. */
  readonly unsure: ReadonlySignal<number>;
  /** Whether a copy has left the phone. */
  readonly copy: ReadonlySignal<Copy>;
  /** Another window erased the day: nothing more is said of it here. */
  readonly erased: ReadonlySignal<boolean>;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** Runs a command: on success its facts are on the day at once, and saved as soon as the disk has them. */
  run(command: Command): Result<readonly Fact[]>;
  /** Runs commands as one action: each sees the day as those before it leave it, and all are done or none. */
  runTogether(commands: readonly Command[]): Result<readonly Fact[]>;
  /** Fails with `undo-built-on` where another phone built on what would be taken back, unless wanted even so. */
  undo(how?: { readonly evenIfBuiltOn: boolean }): Result<readonly Fact[]>;
  redo(): Result<readonly Fact[]>;
  /** Adds facts from a day file, as read and as stored. They are nobody's action here, so undo leaves them. */
  addForeign(facts: readonly (Fact | UnknownFact)[], stored: readonly Envelope[]): void;
  /** Adds one action that a closed window had put aside under this key. */
  addLeft(facts: readonly (Fact | UnknownFact)[], stored: readonly Envelope[], key: string): void;
  /** Does to the day what a file was found to do; rejects where the phone has no room to mend what is damaged. */
  addAdmitted(admitted: Admitted): Promise<void>;
  /** A new id for a voice or a part of the rig. */
  newId(): string;
  retry(): void;
  flushed(): Promise<void>;
  /** Reads what other windows have written since. */
  refresh(): Promise<void>;
  /** Notes that a copy of the day has left the phone. */
  copied(): Promise<void>;
  outline(): DayOutline;
  /** Puts what is not on the disk yet where it outlives this window. */
  putAside(): void;
  /** The day was erased: nothing that is held of it may come back. */
  forget(): void;
  close(): void;
}

export interface StoreParts {
  readonly journal: Journal;
  readonly clock: Clock;
  readonly neighbours: Neighbours;
  /** Missing where there is no such place: then whatever is not on the disk goes with the window. */
  readonly holding?: HoldingPlace;
  /** Five characters for this window, so that two windows never write one id. */
  readonly window: string;
}

/** Opens a day that is in the journal, or starts one that is not yet. */
export async function openDayStore(id: string, parts: StoreParts): Promise<DayStore> {
  const { journal, clock, neighbours } = parts;
  const news: { pending: boolean; hear: () => void } = { pending: false, hear: () => {} };
  // Listening starts before the first read: what another window says in between must not be missed.
  const stop = neighbours.listen((day) => {
    if (day !== id) return;
    news.pending = true;
    news.hear();
  });

  const [stored, outlines] = await Promise.all([journal.read(id), journal.days()]);
  const first = readAll(stored);
  const day = signal(foldDay(id, first.facts));
  const damaged = signal(first.damaged);
  const ids = idSource(`${journal.state.database}${parts.window}`);
  for (const fact of first.facts) ids.see(fact.id);
  // What may be restored later was said before whatever is said now.
  for (const held of parts.holding?.idsOf(id) ?? []) ids.see(held);
  const earlier = outlines.find((outline) => outline.id === id);
  const kept = signal<Kept>({
    at: earlier?.copiedAt,
    facts: earlier?.copiedFacts,
    unsure: earlier?.unsure,
  });
  const erased = signal(false);
  let everSaved = stored.length > 0;

  /** As stored, damaged ones included: what goes back if the device empties its database under us. */
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

  let aheadTold = clock.now().aheadMs ?? 0;
  const runTogether = (commands: readonly Command[]): Result<readonly Fact[]> => {
    if (erased.peek()) return fail({ code: 'day-erased' });
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
    accept(facts);
    everything.push(...facts);
    queue.add(facts, outline);
    return ok(facts);
  };
  const run = (command: Command): Result<readonly Fact[]> => runTogether([command]);

  /** Puts facts in the place of those under their ids. */
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

  const addSaid = (facts: readonly (Fact | UnknownFact)[], raw: readonly Envelope[], left?: string): void => {
    accept(facts);
    for (const fact of raw) everything.push(fact);
    queue.add(raw, outline, left);
  };
  const addForeign: DayStore['addForeign'] = (facts, raw) => addSaid(facts, raw);

  const forget = (): void => {
    erased.value = true;
    queue.drop();
    // The names of people leave the memory too, not only the disk.
    everything.length = 0;
    day.value = foldDay(id, []);
  };

  const refresh = async (): Promise<void> => {
    news.pending = false;
    const [raw, outlines] = await Promise.all([journal.read(id), journal.days()]);
    // An emptied database is filled again by whoever writes first, so nothing at all means that the day was erased.
    if (raw.length === 0 && everSaved) return forget();
    everSaved ||= raw.length > 0;
    const all = readAll(raw);
    const known = new Set([...day.peek().facts, ...day.peek().unknown].map((fact) => fact.id));
    const fresh = all.facts.filter((fact) => !known.has(fact.id));
    if (fresh.length > 0) accept(fresh);
    // Facts are only ever added, so somebody told of something else: a damaged one was mended.
    if (fresh.length === 0) takeOver(changedSince(everything, raw));
    const held = new Set(everything.map((fact) => fact.id));
    for (const fact of raw) if (hasId(fact) && !held.has(fact.id)) everything.push(fact);
    damaged.value = all.damaged;
    // What is still on its way to the disk is newer than what stands there.
    const { unsure } = outlines.find((one) => one.id === id) ?? {};
    if (queue.saving.peek().waiting === 0) kept.value = { ...kept.peek(), unsure };
  };
  // A busy neighbour tells of every action; however many it told of meanwhile, one more look is enough.
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
    canUndo: computed(() => actions.value.done.length > 0),
    canRedo: computed(() => actions.value.undone.length > 0),
    run,
    runTogether,
    undo: (how) => run((now) => undo(now, journal.state.database, how)),
    redo: () => run((now) => redo(now, journal.state.database)),
    addForeign,
    addLeft: addSaid,
    addAdmitted,
    newId: () => `e${ids.next()}`,
    retry: queue.retry,
    flushed: queue.flushed,
    refresh,
    async copied() {
      // A share sheet may be open for longer than its day is there.
      if (erased.peek()) return;
      kept.value = { ...kept.peek(), at: clock.now().atMs, facts: sizeOf(day.peek()) };
      await journal.describe(outline());
    },
    outline,
    putAside: queue.putAside,
    forget,
    close: stop,
  };
}

/** The day as it would be with these facts, folded beside it: nothing is said yet. */
const dayWith = (day: Day, facts: readonly Fact[]): Day =>
  facts.length === 0 ? day : foldDay(day.id, [...day.facts, ...day.unknown, ...facts]);

/** The highest counter known of every database but our own: what this fact's speaker knew of other phones. */
function seenBy(day: Day, database: string): Record<string, number> {
  return Object.fromEntries([...day.highest].filter(([other]) => other !== database));
}
