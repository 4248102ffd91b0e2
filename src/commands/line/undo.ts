import type { Day, Fact } from '../../day/model.ts';
import { takeText } from '../../day/slate.ts';
import type { Draft } from '../../facts/fact.ts';
import { MOST_TARGETS } from '../../facts/kinds/corrected.ts';
import { batchOf } from '../../facts/kinds/envelope.ts';
import { databaseOf, type FactId } from '../../shared/ids.ts';
import { fail, ok } from '../../shared/result.ts';
import type { CommandResult } from '../command.ts';

interface Action {
  readonly facts: readonly Fact[];
  /** The retractions that undid it, while it is undone. */
  readonly undoneBy?: readonly FactId[];
}

interface Actions {
  readonly done: readonly Action[];
  readonly undone: readonly Action[];
}

/**
 * This phone's actions, derived from the journal alone, so that undo survives a reload. Imports are not ours
 * to undo. `database` is this phone's six characters.
 */
export function actionsOf(day: Day, database: string): Actions {
  const known = tellings.get(day);
  if (known?.database === database) return known.actions;
  const actions = told(day, database);
  tellings.set(day, { database, actions });
  return actions;
}

/** Cached, since a day never changes: two buttons and both commands ask for this. */
const tellings = new WeakMap<Day, { readonly database: string; readonly actions: Actions }>();

function told(day: Day, database: string): Actions {
  const done: Action[] = [];
  let undone: Action[] = [];
  for (const facts of batchesOf(day, database)) {
    const [first] = facts;
    const by = first?.kind === 'fact-retracted' ? first.by : 'hand';
    if (by === 'undo') {
      const action = done.pop();
      if (action) undone.push({ facts: action.facts, undoneBy: idsOf(facts) });
    } else if (by === 'redo') {
      const action = undone.pop();
      if (action) done.push({ facts: action.facts });
    } else {
      done.push({ facts });
      undone = [];
    }
  }
  return { done: done[0] && isBeginning(day, done[0]) ? done.slice(1) : done, undone };
}

/**
 * How the day began: its header and whatever was carried over. That is not undoable: it would leave an empty,
 * untitled day. A log started from a card can be undone.
 */
const isBeginning = ({ facts: [first] }: Day, { facts }: Action): boolean =>
  first?.kind === 'day-described' &&
  facts[0]?.id === first.id &&
  facts.every(({ kind }) => kind !== 'take-logged');

/**
 * What undo skips: a sent report cannot be unsent (the list of reports can retract it), and who holds this phone
 * and who may write are said beside the actions.
 */
const NO_STEPS: ReadonlySet<Fact['kind']> = new Set<Fact['kind']>([
  'report-sent',
  'phone-named',
  'writer-admitted',
  'writer-removed',
  'day-passed-on',
]);

function batchesOf(day: Day, database: string): Fact[][] {
  const batches = new Map<FactId, Fact[]>();
  for (const fact of day.facts) {
    if (databaseOf(fact.id) !== database || NO_STEPS.has(fact.kind)) continue;
    const batch = batches.get(batchOf(fact));
    if (batch) batch.push(fact);
    else batches.set(batchOf(fact), [fact]);
  }
  return [...batches.values()];
}

/**
 * Retracts this phone's last action. Fails with `undo-built-on` if it logged a take that another phone has
 * added to since, unless `evenIfBuiltOn`.
 */
export function undo(day: Day, database: string, { evenIfBuiltOn = false } = {}): CommandResult {
  const facts = actionsOf(day, database).done.at(-1)?.facts ?? [];
  if (facts.length === 0) return fail({ code: 'nothing-to-undo' });
  const built = evenIfBuiltOn ? undefined : facts.find((fact) => wordsOfOthers(day, database, fact) > 0);
  const take = built && day.takes.get(built.id);
  if (built && take) {
    const count = wordsOfOthers(day, database, built);
    return fail({ code: 'undo-built-on', take: takeText(take), count });
  }
  return ok(retracting(idsOf(facts), 'undo'));
}

const idsOf = (facts: readonly Fact[]): FactId[] => facts.map(({ id }) => id);

function retracting(ids: readonly FactId[], by: 'undo' | 'redo'): Draft[] {
  const drafts: Draft[] = [];
  for (let from = 0; from < ids.length; from += MOST_TARGETS)
    drafts.push({ kind: 'fact-retracted', targets: ids.slice(from, from + MOST_TARGETS), by });
  return drafts;
}

/** How many facts of other phones concern a take, or are placed before it. */
const wordsOfOthers = (day: Day, database: string, { id, kind }: Fact): number =>
  kind !== 'take-logged'
    ? 0
    : day.facts.filter(
        (fact) =>
          databaseOf(fact.id) !== database &&
          !day.takenBack.has(fact.id) &&
          (fact.before === id || ('take' in fact && fact.take === id)),
      ).length;

/** Restores the action that was undone last. */
export function redo(day: Day, database: string): CommandResult {
  const undoneBy = actionsOf(day, database).undone.at(-1)?.undoneBy;
  if (!undoneBy) return fail({ code: 'nothing-to-redo' });
  return ok(retracting(undoneBy, 'redo'));
}
