import type { Day, PartId, TakeId } from '../../day/model.ts';
import type { SettlementChoice } from '../../day/wrap/card-settlement.ts';
import { cutText } from '../log-and-card/plain-key.ts';
import { checkTracks, type TrackCheck } from '../log-and-card/track-names.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';
import { changesSaidLate } from './late-changes.ts';
import { type Round, roundFrom, swapsOf } from './track-swaps.ts';

/** What differs in the same way over several takes in a row: one track, or a round of them. */
interface Run {
  readonly round: Round;
  readonly first: CheckedPair;
  readonly takes: TakeId[];
}

/** Track names in the files against the chain; a run of takes with one difference is reported once. */
export function trackDifferences(checking: Checking): Found[] {
  let open = new Map<string, Run>();
  const runs: Run[] = [];
  for (const pair of checking.pairs) {
    const checks = checkTracks(checking.day, pair.answers, pair.recording, checking.recorder);
    // A file that does not say which channel is which ends no run.
    if (!checks) continue;
    const now = new Map<string, Run>();
    for (const round of differingIn(checking.day, checks)) {
      const key = keyOf(round);
      const known = open.get(key);
      const run = known ?? { round, first: pair, takes: [] };
      run.takes.push(pair.take.id);
      now.set(key, run);
      if (!known) runs.push(run);
    }
    open = now;
  }
  return runs.map((run) => foundIn(checking, run));
}

const keyOf = (round: Round): string =>
  JSON.stringify(
    round.map(({ track, verdict, answer, file }) => [track.id, verdict, answer.name, file?.name]),
  );

function differingIn(day: Day, checks: readonly TrackCheck[]): Round[] {
  const left = new Set(checks.filter(({ verdict }) => verdict !== 'same'));
  const found: Round[] = [];
  for (const check of left) {
    const round = roundFrom(day, check, left);
    for (const one of round) left.delete(one);
    found.push(round);
  }
  return found;
}

function foundIn(checking: Checking, run: Run): Found {
  const { first, round, takes } = run;
  const { take, recording } = first;
  const [{ track, number, answer, file, verdict }, ...others] = round;
  const said = { take: take.id, track: track.id, recording, was: answer.name };
  const detail = { number, takes };
  if (verdict === 'not-recorded') return { code: 'track-not-recorded', ...said, is: null, detail };
  const name = file?.name?.trim() ?? '';
  const settlements = settlementsOf(checking, run, name);
  return others.length > 0
    ? {
        code: 'tracks-swapped',
        ...said,
        ...namesOf(round),
        aspect: others.map((one) => one.track.id).join(' '),
        detail: { ...detail, others: others.map((one) => one.number) },
        settlements,
      }
    : { code: 'track-name-differs', ...said, is: name, detail, settlements };
}

/** Of two, the names of the first say it all; of more, each track's. */
function namesOf(round: Round): { readonly was: string; readonly is: string } {
  const names = round.map(({ answer }) => answer.name);
  const [first = '', ...others] = names;
  return others.length === 1
    ? { was: first, is: others[0]! }
    : { was: names.join(', '), is: [...others, first].join(', ') };
}

/** Changes said late, then an exchange or the file's name. */
function settlementsOf(
  { day, nextTake, recorder }: Checking,
  { first, round, takes }: Run,
  name: string,
): SettlementChoice[] {
  const { take, recording } = first;
  const tracks: PartId[] = round.map(({ track }) => track.id);
  const late = changesSaidLate(day, take.id, tracks, recording, recorder);
  const span = { take: take.id, until: nextTake(takes.at(-1)!) };
  return [
    ...(late ? [{ kind: 'move-changes' as const, changes: late, before: take.id }] : []),
    ...(round.length > 1
      ? swapsOf(day, take.id, round, recording, recorder).map((swap) => ({
          kind: 'swap-tracks' as const,
          swap,
          ...span,
        }))
      : [{ kind: 'name-track' as const, track: round[0].track.id, name: cutText(name, 200), ...span }]),
  ];
}
