import { copyRig } from '../commands/day/copy-rig.ts';
import { differingAlong } from '../commands/day/differing-along.ts';
import { type Beside, layRigBeside } from '../commands/day/lay-beside.ts';
import { carryOver } from '../commands/day/start-day.ts';
import type { Day } from '../day/model.ts';
import type { Conflict } from '../day/phones/conflicts.ts';
import { fail, ok, type Problem, type Result } from '../shared/result.ts';
import type { Command } from './day-store.ts';
import type { Agreed, InDoubt } from './in-doubt.ts';
import type { Clock } from './ports.ts';

/** A day including unsaved facts, with counts of unreadable entries and leftover actions. */
export interface WholeDay {
  readonly day: Day;
  readonly damaged: number;
  readonly unsaved: number;
}

/** The next days started in this window, keyed by the day they follow. */
export type Started = Map<string, Promise<StartedDay>>;

interface StartedDay {
  readonly result: Result<string, Problem | InDoubt>;
  /** The number of facts in both days at that moment. */
  readonly sizes: readonly number[];
}

interface NextDayParts {
  readonly readWhole: (id: string) => Promise<WholeDay>;
  readonly start: (command: Command) => Promise<Result<string>>;
  readonly clock: Clock;
  readonly started: Started;
}

/** Starts the next day, or returns the one this window has already started; see `AppStore.startFrom`. */
export async function startNextDay(
  parts: NextDayParts,
  id: string,
  agreed?: Agreed,
): Promise<Result<string, Problem | InDoubt>> {
  const { started } = parts;
  const starting = startAfter(parts, id, started.get(id), agreed);
  started.set(id, starting);
  return (await starting).result;
}

/** A second tap waits for the first, and starts another day only if something has changed since. */
async function startAfter(
  parts: NextDayParts,
  id: string,
  before: Promise<StartedDay> | undefined,
  agreed?: Agreed,
): Promise<StartedDay> {
  const first = await before?.catch(() => undefined);
  if (first?.result.ok) {
    const sizes = await sizesOf(parts, id, first.result.value);
    if (sizes.join() === first.sizes.join()) return first;
  }
  return startNow(parts, id, agreed);
}

async function startNow(parts: NextDayParts, id: string, agreed?: Agreed): Promise<StartedDay> {
  const { readWhole, start, clock } = parts;
  const whole = await readWhole(id);
  if (sizeOf(whole) === 0) return { result: fail({ code: 'not-on-this-day', what: 'day', id }), sizes: [] };
  const doubt = doubtOf(whole, differingAlong(whole.day));
  if (doubt && !agreed?.evenInDoubt) return { result: fail(doubt), sizes: [] };
  const result = await start(() => carryOver(whole.day, clock.now()));
  return { result, sizes: result.ok ? await sizesOf(parts, id, result.value) : [] };
}

/** The rig of a day, in place of the one there is, or beside it. */
export function rigOfDay(whole: WholeDay, agreed?: Agreed, beside?: Beside): Result<Command, InDoubt> {
  const doubt = doubtOf(whole, differingAlong(whole.day, 'rig'));
  if (doubt && !agreed?.evenInDoubt) return fail(doubt);
  return ok((onto) => (beside ? layRigBeside(onto, whole.day, beside) : copyRig(whole.day, onto)));
}

function doubtOf({ day, damaged, unsaved }: WholeDay, differing: readonly Conflict[]): InDoubt | undefined {
  const newer = day.unknown.length;
  if (damaged + newer + unsaved + differing.length === 0) return undefined;
  return { code: 'next-day-in-doubt', day, damaged, newer, unsaved, differing };
}

const sizeOf = ({ day, damaged }: WholeDay): number => day.facts.length + day.unknown.length + damaged;

const sizesOf = async ({ readWhole }: NextDayParts, ...days: readonly string[]): Promise<number[]> =>
  (await Promise.all(days.map(readWhole))).map(sizeOf);
