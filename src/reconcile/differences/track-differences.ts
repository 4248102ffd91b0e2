import type { Day, PartId, TakeId } from '../../day/model.ts';
import type { SettlementChoice } from '../../day/wrap/card-settlement.ts';
import { cutText } from '../log-and-card/plain-key.ts';
import { areSwapped, checkTracks, type TrackCheck } from '../log-and-card/track-names.ts';
import type { CheckedPair } from './checked-pair.ts';
import type { Checking } from './checking.ts';
import type { Found } from './difference.ts';
import { changesSaidLate } from './late-changes.ts';
import { swapsOf } from './track-swaps.ts';

/** One track that differs, or two that carry each other's voices. */
interface Differing {
  readonly check: TrackCheck;
  readonly other: TrackCheck | null;
}

/** What differs in the same way over several takes in a row. */
interface Run extends Differing {
  readonly first: CheckedPair;
  readonly takes: TakeId[];
}

/** Track names in the files against the chain; a run of takes with one difference is reported once. */
export function trackDifferences(checking: Checking): Found[] {
  let open = new Map<string, Run>();
  const runs: Run[] = [];
  for (const pair of checking.pairs) {
    const checks = checkTracks(checking.day, pair.answers, pair.recording);
    // A file that does not say which channel is which ends no run.
    if (!checks) continue;
    const now = new Map<string, Run>();
    for (const differing of differingIn(checking.day, checks)) {
      const key = keyOf(differing);
      const known = open.get(key);
      const run = known ?? { ...differing, first: pair, takes: [] };
      run.takes.push(pair.take.id);
      now.set(key, run);
      if (!known) runs.push(run);
    }
    open = now;
  }
  return runs.map((run) => foundIn(checking, run));
}

const keyOf = ({ check, other }: Differing): string =>
  JSON.stringify(
    [check, other].map((one) => one && [one.track.id, one.verdict, one.answer.name, one.file?.name]),
  );

function differingIn(day: Day, checks: readonly TrackCheck[]): Differing[] {
  const left = new Set(checks.filter(({ verdict }) => verdict !== 'same'));
  const found: Differing[] = [];
  for (const check of left) {
    left.delete(check);
    const other = [...left].find((one) => areSwapped(day, check, one)) ?? null;
    if (other) left.delete(other);
    found.push({ check, other });
  }
  return found;
}

function foundIn(checking: Checking, run: Run): Found {
  const { first, check, other, takes } = run;
  const { take, recording } = first;
  const { track, number, answer, file, verdict } = check;
  const said = { take: take.id, track: track.id, recording, was: answer.name };
  const detail = { number, takes };
  if (verdict === 'not-recorded') return { code: 'track-not-recorded', ...said, is: null, detail };
  const name = file?.name?.trim() ?? '';
  const settlements = settlementsOf(checking, run, name);
  return other
    ? {
        code: 'tracks-swapped',
        ...said,
        is: other.answer.name,
        aspect: other.track.id,
        detail: { ...detail, other: other.number },
        settlements,
      }
    : { code: 'track-name-differs', ...said, is: name, detail, settlements };
}

/** Changes said late, then an exchange or the file's name. */
function settlementsOf(
  { day, nextTake }: Checking,
  { first, check, other, takes }: Run,
  name: string,
): SettlementChoice[] {
  const { take, recording } = first;
  const tracks: PartId[] = [check, other].flatMap((one) => (one ? [one.track.id] : []));
  const late = changesSaidLate(day, take.id, tracks, recording);
  const span = { take: take.id, until: nextTake(takes.at(-1)!) };
  return [
    ...(late ? [{ kind: 'move-changes' as const, changes: late, before: take.id }] : []),
    ...(other
      ? swapsOf(day, take.id, [check, other], recording).map((swap) => ({
          kind: 'swap-tracks' as const,
          swap,
          ...span,
        }))
      : [{ kind: 'name-track' as const, track: check.track.id, name: cutText(name, 200), ...span }]),
  ];
}
