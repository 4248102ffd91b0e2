import { settleCard } from '../../src/commands/line/settle-card.ts';
import type { Day } from '../../src/day/model.ts';
import type { CardSettlement, SettlementChoice } from '../../src/day/wrap/card-settlement.ts';
import { checkedCard } from '../../src/reconcile/checked-card.ts';
import {
  type Difference,
  openDifferences,
  type Tolerance,
} from '../../src/reconcile/differences/difference.ts';
import { differencesOf } from '../../src/reconcile/differences/differences-of.ts';
import { matchRecordings } from '../../src/reconcile/pairing/match-recordings.ts';
import type { Recording } from '../../src/wave/recording/recordings.ts';
import type { Speaker } from '../day/say.ts';
import { type CardFile, recordCard } from './build-card.ts';

/** The open differences between a day and a card. */
export const openOn = (day: Day, recordings: readonly Recording[], tolerance?: Tolerance): Difference[] =>
  openDifferences(differencesOf(day, matchRecordings(day, recordings), tolerance));

/** What a check of these recordings notes. */
export function checkedNow(day: Day, recordings: readonly Recording[], stopped = false) {
  const match = matchRecordings(day, recordings);
  const files = recordings.reduce((sum, one) => sum + one.files.length, 0);
  return checkedCard(day, match, differencesOf(day, match), { files, stopped });
}

export const checkFiles = async (day: Day, files: readonly CardFile[]): Promise<Difference[]> =>
  openOn(day, await recordCard(files));

/** Every difference in one line, with the take's place in the day. */
export const told = (day: Day, differences: readonly Difference[]): string[] =>
  differences.map(({ code, take, track, was, is }) => {
    const at = take === undefined ? '' : ` at ${[...day.takes.keys()].indexOf(take)}`;
    return `${code}${at}${track === undefined ? '' : ` on ${track}`}: ${JSON.stringify(was)} / ${JSON.stringify(is)}`;
  });

/** What else a difference holds for its sentence. */
export const detailOf = (difference: Difference | undefined): Record<string, unknown> =>
  difference && 'detail' in difference ? { ...difference.detail } : {};

/** A way to settle without the difference it is for. */
export function choiceOf(settlement: CardSettlement | undefined): SettlementChoice | undefined {
  if (!settlement) return undefined;
  const { settles: _, ...choice } = settlement;
  return choice;
}

/** Says a settlement as one action and returns its facts' ids; fails the test where the command refuses. */
export function settle(phone: Speaker, settlement: CardSettlement): string[] {
  const said = settleCard(phone.day(), settlement);
  if (!said.ok) throw new Error(`Not settled: ${JSON.stringify(said.problem)}`);
  return phone.say(...said.value).map(({ id }) => id);
}

/** The way to settle it by what the file says; fails the test where there is none. */
export function byFile({ code, settlements }: Difference): CardSettlement {
  const [first] = settlements;
  if (!first || first.kind === 'keep-log') throw new Error(`Only the log can be kept: ${code}`);
  return first;
}
